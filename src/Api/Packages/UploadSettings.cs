namespace Toepan.Api.Packages;

/// <summary>Where an upload waits while it is received. Section <c>Uploads</c> of the configuration.</summary>
public sealed class UploadSettings
{
    public const string Section = "Uploads";

    /// <summary>Section of the limits of a package: the members of <see cref="Domain.Packages.PackageLimits"/>.</summary>
    public const string LimitsSection = "Packages";

    /// <summary>Folder of temporary files.</summary>
    public string Directory { get; set; } = Path.Combine(Path.GetTempPath(), "toepan-uploads");
}
