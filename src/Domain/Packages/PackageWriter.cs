using Toepan.Domain.Packages.Archive;
using Toepan.Domain.Packages.Writing;

namespace Toepan.Domain.Packages;

/// <summary>
/// A <see cref="TestPackage"/> → zip in the package format, whose reading gives the same package (attachments aside). Every sample reads back to
/// the same bits. Channels of a wide CSV become ISO/TS 13499 files. Line ends in header values become blanks.
/// </summary>
public static class PackageWriter
{
    /// <summary>Writes the zip, entries in a fixed order with fixed timestamps, so equal packages give equal bytes.</summary>
    /// <param name="attachment">Opens the bytes of an attachment by its path, or null to leave attachments out.</param>
    public static void Write(Stream destination, TestPackage package, Func<Attachment, Stream>? attachment = null)
    {
        var test = package.Programme.Test;
        var channels = ChannelNames.Of(package);
        using var zip = new ZipWriter(destination, package.TopFolder);
        zip.Add(PackageLayout.ProgrammeName, ManifestWriter.Bytes(package.Programme));
        zip.Add($"{test}.mme", HeaderFilesWriter.TestHeader(package));
        zip.Add($"{PackageLayout.ChannelFolder}/{test}.chn", HeaderFilesWriter.Index(package, channels));
        foreach (var (channel, file, _) in channels)
        {
            zip.Add(file, ChannelFileWriter.Bytes(channel, code => package.Channels.Any(other => other.Code == code)));
        }

        AddRows(zip, PackageLayout.PointsName, package.Points, SidecarWriter.Points);
        AddRows(zip, PackageLayout.ClearancesName, package.Clearances, SidecarWriter.Clearances);
        AddRows(zip, PackageLayout.FindingsName, package.Findings, SidecarWriter.Findings);
        AddRows(zip, PackageLayout.FilmsName, package.Films, SidecarWriter.Films);
        foreach (var kept in attachment is null ? [] : package.Attachments)
        {
            using var content = attachment!(kept);
            zip.Add(kept.Path, content);
        }
    }

    private static void AddRows<T>(ZipWriter zip, string name, IReadOnlyList<T> rows, Func<IEnumerable<T>, byte[]> write)
    {
        if (rows.Count > 0)
        {
            zip.Add(name, write(rows));
        }
    }
}
