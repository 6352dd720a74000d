using System.Text.Json;
using System.Text.Json.Serialization;

namespace Toepan.Domain.Programme;

/// <summary>JSON → <see cref="ProcedureEdition"/>. camelCase members; an unknown or missing one is an error, so that a misspelt tolerance cannot vanish.</summary>
public static class ProcedureReader
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        ReadCommentHandling = JsonCommentHandling.Skip,
        Converters = { new JsonStringEnumConverter<DummyType>() },
    };

    /// <exception cref="JsonException">The document is not a procedure edition; the message names path and line.</exception>
    public static ProcedureEdition Read(Stream json)
    {
        var edition = JsonSerializer.Deserialize<ProcedureEdition>(json, Options)
            ?? throw new JsonException("The procedure document is null.");
        foreach (var item in edition.Conduct.Where(item => item.Lower > item.Upper))
        {
            throw new JsonException($"The bounds of {item.Item} are the wrong way round.");
        }

        foreach (var item in edition.Preparation.Where(item => item.Lower > item.Upper))
        {
            throw new JsonException($"The bounds of {item.Item} are the wrong way round.");
        }

        return edition;
    }
}
