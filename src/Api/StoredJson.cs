using System.Text.Json;
using System.Text.Json.Serialization;

namespace Toepan.Api;

/// <summary>JSON as jsonb columns hold it: doubles in their shortest round-trip form, enums by name, NaN and infinities by name.</summary>
public static class StoredJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter(), new StoredTextJson() },
    };

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    /// <exception cref="JsonException">The column does not hold a <typeparamref name="T"/>.</exception>
    public static T Read<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, Options) ?? throw new JsonException($"A stored {typeof(T).Name} is null.");
}
