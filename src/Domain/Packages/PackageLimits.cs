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

    /// <summary>Longest text line accepted, characters.</summary>
    public int MaxLine { get; init; } = 65_536;
}
