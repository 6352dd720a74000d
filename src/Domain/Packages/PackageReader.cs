using Toepan.Domain.Packages.Archive;

namespace Toepan.Domain.Packages;

/// <summary>What the programme knows when a package arrives: a package may not name another procedure or class.</summary>
/// <param name="Procedures">Known procedure keys.</param>
/// <param name="Classes">Known vehicle class keys.</param>
public sealed record KnownProgramme(IReadOnlySet<string> Procedures, IReadOnlySet<string> Classes);

/// <summary>
/// Bytes → <see cref="TestPackage"/>, and problems with file and line. Nothing is extracted to disk; memory and time are bounded by the
/// limits, whatever the bytes are. An error of one channel leaves the package readable; an error of the archive, of programme.json, of the
/// test header or of a sidecar does not.
/// </summary>
public static class PackageReader
{
    /// <summary>Reads one zip. Never throws for what a file can contain; throws only when cancelled or when the stream itself fails.</summary>
    /// <param name="zip">Seekable stream over the whole archive.</param>
    public static PackageReading Read(Stream zip, KnownProgramme known, PackageLimits limits, CancellationToken cancellation = default)
    {
        var problems = new ProblemList();
        var package = new ZipDirectory(zip, limits, problems).Read() is { } files && PackageLayout.Of(files, problems) is { } layout
            ? new PackageParts(layout, new EntryExpander(zip, limits, problems, cancellation), new ReadingBudget(limits, problems), problems).Read(known)
            : null;
        return new PackageReading(problems.Rejected ? null : package, problems.ToList());
    }
}
