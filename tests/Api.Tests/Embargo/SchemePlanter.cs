using Toepan.Api.Tests.Ratings;
using Toepan.Api.Tests.Store;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A marked scheme, adopted, and the work that followed.</summary>
internal static class SchemePlanter
{
    public static async Task Plant(Ground ground, HttpClient lab)
    {
        var (marks, key) = (ground.Marks, $"{ground.Marks.Stem}-2");
        await lab.Bring(SchemeClient.Document(key, ("\"title\": \"Offset frontal, edition 1\"", $"\"title\": \"{marks.In("scheme")}\"")));
        var work = (await Ground.Create(lab, $"/api/v1/schemes/{key}/adopt", new { confirm = key, reason = marks.In("adopted") })).GetProperty("id").GetInt64();
        await lab.WaitFor(work, "finished");

        // One method edition alone cannot be promoted over another, so its row is written past the routes.
        await Sql.Execute(
            ground.Api.Connections.Owner,
            $"INSERT INTO lab.method_promotion (edition, recomputation_id, reason, at, by) VALUES ('1', {work}, '{marks.In("promoted")}', now(), '{marks.In("person")}')");
        await Sql.Execute(
            ground.Api.Connections.Owner,
            $"INSERT INTO lab.recomputation_event (recomputation_id, event, at, by) VALUES ({work}, 'Finished', now(), '{marks.In("person")}')");
        ground.Values["schemes/key"] = RouteValue.Of(key);
        ground.Values["recomputations/id"] = RouteValue.OfNumber(work);
        ground.Values["methods/edition"] = ground.Values["editions/edition"] = new("1", "9");
    }
}
