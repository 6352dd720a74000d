namespace Toepan.Api.Packages.Attachments;

/// <summary>Limits of attachments. Section <c>Attachments</c> of the configuration.</summary>
public sealed class AttachmentSettings
{
    public const string Section = "Attachments";

    /// <summary>Most bytes of one file that is attached.</summary>
    public long MaxBytes { get; set; } = 2L << 30;

    /// <summary>Most bytes of a picture that is decoded, for a thumbnail or a public copy.</summary>
    public long MaxPictureBytes { get; set; } = 100L << 20;

    /// <summary>Most pixels a picture may claim to be decoded: what bounds the memory a picture can take (4 bytes each).</summary>
    public long MaxPixels { get; set; } = 60_000_000;
}
