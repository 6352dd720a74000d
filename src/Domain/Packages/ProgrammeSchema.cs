namespace Toepan.Domain.Packages;

/// <summary>The JSON Schema (draft 2020-12) of programme.json, as served to those who write packages. It agrees with what the reader accepts.</summary>
public static class ProgrammeSchema
{
    /// <summary>The schema's text, UTF-8.</summary>
    public static string Text { get; } = Read();

    private static string Read()
    {
        using var reader = new StreamReader(PackageResources.Open("programme.schema.json"));
        return reader.ReadToEnd();
    }
}
