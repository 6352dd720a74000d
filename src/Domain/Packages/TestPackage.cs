namespace Toepan.Domain.Packages;

/// <summary>A file the package carries along: photograph, film, document, or one this version does not know.</summary>
/// <param name="Path">Entry name without top folder.</param>
/// <param name="Length">Expanded size, bytes.</param>
/// <param name="Sha256">Lower-case hex SHA-256 of the expanded bytes; null where it was not read from an archive.</param>
public sealed record Attachment(string Path, long Length, string? Sha256 = null);

/// <summary>Everything one uploaded package says, read and validated, nothing computed yet.</summary>
public sealed record TestPackage
{
    public required ProgrammeDocument Programme { get; init; }

    /// <summary>Lines of the .mme test header, in order.</summary>
    public required IReadOnlyList<HeaderEntry> TestHeader { get; init; }

    /// <summary>Lines of the .chn channel index, in order; empty where there is none.</summary>
    public IReadOnlyList<HeaderEntry> IndexHeader { get; init; } = [];

    /// <summary>Channels by number.</summary>
    public required IReadOnlyList<RecordedChannel> Channels { get; init; }

    /// <summary>Rows of Static/points.csv; empty when the file is absent.</summary>
    public required IReadOnlyList<StructuralPoint> Points { get; init; }

    /// <summary>Rows of Static/clearances.csv.</summary>
    public required IReadOnlyList<Clearance> Clearances { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Rows of Movie/films.csv: how fast films were recorded and where contact is in them.</summary>
    public IReadOnlyList<FilmTiming> Films { get; init; } = [];

    public required IReadOnlyList<Attachment> Attachments { get; init; }

    /// <summary>Top folder inside the zip, or null.</summary>
    public string? TopFolder { get; init; }

    /// <summary>
    /// Lower-case hex SHA-256 over the sorted (entry name without top folder, entry length, SHA-256 of the entry's bytes) rows: equal when
    /// only the zip differs.
    /// </summary>
    public required string ContentSha256 { get; init; }
}

/// <summary>What reading came to: a package unless <see cref="Problems"/> made it unreadable, and the problems either way.</summary>
public sealed record PackageReading(TestPackage? Package, IReadOnlyList<Problem> Problems);
