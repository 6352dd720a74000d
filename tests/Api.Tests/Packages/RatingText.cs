using System.Text.Json;
using System.Text.Json.Nodes;

namespace Toepan.Api.Tests.Packages;

/// <summary>Ratings as text, to be compared.</summary>
internal static class RatingText
{
    /// <summary>Everything the rating says but what it was made from: package, reduction and findings by their hashes and numbers, which differ between two uploads.</summary>
    public static string WithoutInputs(this JsonElement rating)
    {
        var node = JsonNode.Parse(rating.GetRawText())!.AsObject();
        Assert.True(node.Remove("inputs"));
        Assert.True(node.Remove("reduction"));
        return node.ToJsonString();
    }
}
