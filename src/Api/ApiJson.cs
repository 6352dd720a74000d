using System.Text.Json;
using System.Text.Json.Serialization;
using Toepan.Domain.Programme;

namespace Toepan.Api;

/// <summary>JSON of the contract: camelCase, enums as words, doubles in their shortest round-trip form.</summary>
public static class ApiJson
{
    public static void Configure(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.Converters.Add(new JsonStringEnumConverter<DummyType>());
        options.Converters.Add(new JsonStringEnumConverter(WordNaming.Instance, allowIntegerValues: false));
    }
}
