namespace Toepan.Support;

/// <summary>Temporary folders of tests.</summary>
public static class TestFolders
{
    /// <summary>A new folder that the cluster's user may pass through, as a service's data folder must be.</summary>
    public static DirectoryInfo Create()
    {
        var folder = Directory.CreateTempSubdirectory("toepan-test-");
        LetOthersThrough(folder);
        return folder;
    }

    public static void LetOthersThrough(DirectoryInfo folder) => folder.UnixFileMode |= UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;
}
