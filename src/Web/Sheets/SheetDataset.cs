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
        var (shown, signed) = (sheet.Newest, sheet.Newest.Sheet.Document);
        var withdrawn = shown.Sheet.Kind == ReleaseKind.Withdrawal;
        return new()
        {
            ["@context"] = "https://schema.org",
            ["@type"] = "Dataset",
            ["@id"] = $"/sheets/{sheet.Slug}/v/{shown.Number}",
            ["identifier"] = $"{sheet.Slug}/v/{shown.Number}",
            ["name"] = $"{signed.Vehicle.Name}: frontal offset crash test {signed.Test}",
            ["description"] = withdrawn ? $"Withdrawn. {shown.Sheet.Why}" : $"{Level(signed.Overall)}. {signed.In("en").Because.Text}",
            ["version"] = shown.Number,
            ["datePublished"] = shown.From.UtcDateTime,
            ["creativeWorkStatus"] = withdrawn ? "withdrawn" : "published",
            ["isAccessibleForFree"] = true,
            ["variableMeasured"] = withdrawn ? [] : signed.Figures.Where(figure => figure is { Code: not null, Value: not null }).Select(variable => new Dictionary<string, object?>
            {
                ["@type"] = "PropertyValue", ["propertyID"] = variable.Code, ["name"] = variable.Name, ["value"] = variable.Value, ["unitText"] = variable.Unit,
            }).ToArray(),
        };
    }

    private static string Level(ProtectionLevel? level) => level is { } known ? $"{known.Word()} protection" : "not rated";
}
