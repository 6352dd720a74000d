using Toepan.Domain.Packages.Archive;

namespace Toepan.Domain.Packages;

/// <summary>
/// Opens attachments of an archive that <see cref="PackageReader"/> accepted, by the names the reader gave them (top folder, name encoding and
/// all).
/// </summary>
public sealed class PackageAttachments
{
    // The limits of the day it was accepted are not today's.
    private static readonly PackageLimits NoLimits =
        new() { MaxBytes = long.MaxValue, MaxEntries = int.MaxValue, MaxExpandedBytes = long.MaxValue, MaxRatio = double.MaxValue };

    private readonly Stream zip;
    private readonly Dictionary<string, ZipEntry> entries;

    /// <param name="zip">Seekable stream over the whole archive; it stays the caller's.</param>
    /// <exception cref="InvalidDataException">The archive is not one that was accepted.</exception>
    public PackageAttachments(Stream zip)
    {
        this.zip = zip;
        var problems = new ProblemList();
        var layout = new ZipDirectory(zip, NoLimits, problems).Read() is { } files ? PackageLayout.Of(files, problems) : null;
        entries = layout?.Attachments.ToDictionary(entry => entry.Name, StringComparer.Ordinal)
            ?? throw new InvalidDataException(problems.ToList()[0].Message);
    }

    /// <summary>The expanded bytes of an attachment, to be read forward before the next is opened.</summary>
    /// <exception cref="KeyNotFoundException">The archive has no such attachment.</exception>
    public Stream Open(Attachment attachment) => EntryExpander.Open(zip, entries[attachment.Path]);
}
