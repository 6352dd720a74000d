namespace Toepan.Domain.Ratings;

/// <summary>The JSON Schema (draft 2020-12) of a scheme document, for JSON and YAML alike. It agrees with what the reader accepts.</summary>
public static class SchemeSchema
{
    private const string Resource = "Ratings/scheme.schema.json";

    /// <summary>The schema's text.</summary>
    public static string Text { get; } = Read();

    private static string Read()
    {
        using var stream = typeof(SchemeSchema).Assembly.GetManifestResourceStream(Resource) ?? throw new InvalidOperationException($"The assembly holds no {Resource}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
