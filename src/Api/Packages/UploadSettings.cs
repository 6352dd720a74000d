namespace Toepan.Api.Packages;

/// <summary>Where an upload waits while it is received. Section <c>Uploads</c> of the configuration.</summary>
public sealed class UploadSettings
{
    public const string Section = "Uploads";

    /// <summary>Folder of temporary files.</summary>
    public string Directory { get; set; } = Path.Combine(Path.GetTempPath(), "toepan-uploads");
}
