namespace Toepan.Domain.Packages;

/// <summary>One header line of an ISO/TS 13499 file, kept in order; keys this version does not know are kept too.</summary>
public sealed record HeaderEntry(string Key, string Value, int Line);

/// <summary>
/// One channel as the laboratory recorded it: header, samples in the recorded unit, nothing corrected. Missing or non-numeric
/// samples are NaN. Interpretation (fitness, conversion, bias, filtering) is the Channels stage's.
/// </summary>
public sealed record RecordedChannel
{
    /// <summary>Upper-case channel code; 16 characters when well formed, else as written.</summary>
    public required string Code { get; init; }

    /// <summary>Entry name in the package, without top folder.</summary>
    public required string File { get; init; }

    /// <summary>Number in the index (001 → 1), from the file extension or the column.</summary>
    public required int Number { get; init; }

    /// <summary>Unit as written.</summary>
    public required string Unit { get; init; }

    /// <summary>Time of the first sample, s; null when not given or unreadable.</summary>
    public required double? FirstSampleS { get; init; }

    /// <summary>Sampling interval, s; null when not given, not positive or not uniform.</summary>
    public required double? IntervalS { get; init; }

    /// <summary>Samples as recorded; NaN where missing or not a number.</summary>
    public required ReadOnlyMemory<double> Samples { get; init; }

    /// <summary>Channel amplitude class in the recorded unit, or null.</summary>
    public double? AmplitudeClass { get; init; }

    /// <summary>Channel frequency class as written in the header, or null.</summary>
    public string? HeaderFilterClass { get; init; }

    /// <summary>Sample count the header states, or null.</summary>
    public int? StatedCount { get; init; }

    /// <summary>Index of the first sample that is not a finite number, or null.</summary>
    public int? FirstBadSample { get; init; }

    /// <summary>Line of the first sample, for messages that point into the file; 0 where there is none.</summary>
    public int FirstSampleLine { get; init; }

    /// <summary>Why the reader already knows the channel cannot be used (no interval, explicit times not uniform, …), or null.</summary>
    public string? UnfitReason { get; init; }

    /// <summary>Every header line, in order.</summary>
    public IReadOnlyList<HeaderEntry> Header { get; init; } = [];
}
