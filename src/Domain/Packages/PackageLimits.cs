namespace Toepan.Domain.Packages;

/// <summary>What a package may cost to read. Defaults are the published limits of the upload route.</summary>
public sealed record PackageLimits
{
    public static PackageLimits Default { get; } = new();

    public long MaxBytes { get; init; } = 512L << 20;
    public int MaxEntries { get; init; } = 5_000;
    public long MaxExpandedBytes { get; init; } = 4L << 30;

    /// <summary>Expanded over packed size, of the whole archive.</summary>
    public double MaxRatio { get; init; } = 200;
    public int MaxChannels { get; init; } = 2_000;
    public int MaxSamples { get; init; } = 2_000_000;

    /// <summary>Longest text line accepted, bytes.</summary>
    public int MaxLine { get; init; } = 65_536;

    /// <summary>Samples of all channels together: what bounds the memory a package can take (16 million are 128 MB).</summary>
    public long MaxTotalSamples { get; init; } = 16_000_000;

    /// <summary>Largest file with samples, bytes.</summary>
    public int MaxChannelFileBytes { get; init; } = 96 << 20;

    /// <summary>All files with samples together, bytes: what bounds the time a package can take.</summary>
    public long MaxChannelBytes { get; init; } = 512L << 20;

    /// <summary>Largest of programme.json, the .mme, the .chn and each sidecar, bytes.</summary>
    public int MaxTextFileBytes { get; init; } = 8 << 20;

    /// <summary>Header lines kept, of all files together.</summary>
    public int MaxHeaderLines { get; init; } = 250_000;

    /// <summary>Bytes of header lines kept, of all files together.</summary>
    public long MaxHeaderBytes { get; init; } = 32L << 20;

    /// <summary>Rows of one sidecar.</summary>
    public int MaxRows { get; init; } = 20_000;
}
