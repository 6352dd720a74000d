namespace Toepan.Api.Packages;

/// <summary>The JSON Schema of programme.json, as its file in this folder has it.</summary>
internal static class ProgrammeSchema
{
    /// <summary>UTF-8 text.</summary>
    public static byte[] Utf8 { get; } = Load();

    private static byte[] Load()
    {
        using var stream = typeof(ProgrammeSchema).Assembly.GetManifestResourceStream("Toepan.Api.Packages.programme.schema.json")
            ?? throw new InvalidOperationException("The schema of programme.json is not in the program.");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
