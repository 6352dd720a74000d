namespace Toepan.Domain.Packages;

/// <summary>A <see cref="TestPackage"/> → zip in the package format, whose reading gives the same package (attachments aside).</summary>
public static class PackageWriter
{
    /// <summary>Writes the zip, entries in a fixed order with fixed timestamps, so equal packages give equal bytes.</summary>
    /// <param name="attachment">Opens the bytes of an attachment by its path, or null to leave attachments out.</param>
    public static void Write(Stream destination, TestPackage package, Func<Attachment, Stream>? attachment = null) =>
        throw new NotImplementedException();
}
