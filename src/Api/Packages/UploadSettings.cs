using Toepan.Domain.Packages;

namespace Toepan.Api.Packages;

/// <summary>What an upload may cost and where it waits while it is received. Section <c>Uploads</c> of the configuration.</summary>
public sealed class UploadSettings
{
    public const string Section = "Uploads";

    /// <summary>Limits of the reader; <see cref="PackageLimits.MaxBytes"/> is enforced while receiving.</summary>
    public PackageLimits Limits { get; set; } = PackageLimits.Default;

    /// <summary>Folder of temporary files.</summary>
    public string Directory { get; set; } = Path.Combine(Path.GetTempPath(), "toepan-uploads");
}
