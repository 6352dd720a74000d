using System.Text.Json;
using System.Text.Json.Nodes;

namespace Toepan.Api.Tests.Packages;

/// <summary>Ratings as text, to be compared.</summary>
internal static class RatingText
{
    /// <summary>Everything the rating says, the hashes of measures and scheme included, but the package and the reduction it names and the findings' hash, which holds their lines.</summary>
    public static string WithoutInputs(this JsonElement rating)
    {
        var node = JsonNode.Parse(rating.GetRawText())!.AsObject();
        Assert.True(node["inputs"]!.AsObject().Remove("package"));
        Assert.True(node["inputs"]!.AsObject().Remove("findings"));
        Assert.True(node.Remove("reduction"));
        return node.ToJsonString();
    }
}
