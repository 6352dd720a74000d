using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Web.Sheets;

/// <summary>
/// A released sheet as a schema.org Dataset. Never as a Review or a Rating: machines would draw stars from those. Identifiers stay: the slug and the
/// version's number.
/// </summary>
public static class SheetDataset
{
    public static Dictionary<string, object?> Of(PublicSheet sheet)
    {
        var (shown, signed) = (sheet.Newest, sheet.Newest.Sheet.Signed);
        var withdrawn = shown.Sheet.Kind == ReleaseKind.Withdrawal;
        return new()
        {
            ["@context"] = "https://schema.org",
            ["@type"] = "Dataset",
            ["@id"] = $"/sheets/{sheet.Slug}/v/{shown.Number}",
            ["identifier"] = $"{sheet.Slug}/v/{shown.Number}",
            ["name"] = $"{signed.Sheet.Title}: frontal offset crash test {signed.Test}",
            ["description"] = withdrawn ? $"Withdrawn. {shown.Sheet.Why}" : $"{Level(signed.Sheet.Level)}. {signed.Sheet.Because}",
            ["version"] = shown.Number,
            ["datePublished"] = shown.From.UtcDateTime,
            ["creativeWorkStatus"] = withdrawn ? "withdrawn" : "published",
            ["isAccessibleForFree"] = true,
            ["variableMeasured"] = withdrawn ? [] : signed.Variables.Select(variable => new Dictionary<string, object?>
            {
                ["@type"] = "PropertyValue", ["propertyID"] = variable.Code, ["name"] = variable.Code, ["value"] = variable.Value, ["unitText"] = variable.Unit,
            }).ToArray(),
        };
    }

    private static string Level(ProtectionLevel? level) => level is { } known ? $"{known.Word()} protection" : "not rated";
}
