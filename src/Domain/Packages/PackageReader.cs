namespace Toepan.Domain.Packages;

/// <summary>What the programme knows when a package arrives: a package may not name another procedure or class.</summary>
/// <param name="Procedures">Known procedure keys.</param>
/// <param name="Classes">Known vehicle class keys.</param>
public sealed record KnownProgramme(IReadOnlySet<string> Procedures, IReadOnlySet<string> Classes);

/// <summary>Bytes → <see cref="TestPackage"/>, and problems with file and line.</summary>
public static class PackageReader
{
    /// <summary>Reads one zip. Never throws for what a file can contain; throws only when cancelled or when the stream itself fails.</summary>
    /// <param name="zip">Seekable stream over the whole archive.</param>
    public static PackageReading Read(Stream zip, KnownProgramme known, PackageLimits limits, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
