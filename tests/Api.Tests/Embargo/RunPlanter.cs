using System.Globalization;
using Toepan.Api.Security;

namespace Toepan.Api.Tests.Embargo;

/// <summary>Marked vehicles and runs, and all that is decided, attached and signed about a run.</summary>
internal static class RunPlanter
{
    public static async Task Plant(Ground ground, HttpClient lab, HttpClient administrator)
    {
        await PlantVehicles(ground.Marks, lab);
        await PlantRuns(ground, lab);
        await PlantDecisions(ground, lab);
        await PlantEquipment(ground, lab);
        await PlantAttachments(ground, lab);
        await PlantReviews(ground, lab, administrator);
        ground.Values["tests/test"] = ground.Values["preview/test"] = RouteValue.Of(ground.Marks.Test(1));
        ground.Values["vehicles/key"] = RouteValue.Of(ground.Marks.In("vehicle"));
        ground.Values["classes/class"] = RouteValue.Of(ground.Marks.In("class"));
    }

    private static async Task PlantVehicles(Marks marks, HttpClient lab)
    {
        await Ground.Create(lab, "/api/v1/classes", new { key = marks.In("class"), title = marks.In("class-title") });
        await Ground.Create(lab, "/api/v1/vehicles", new
        {
            vehicle = marks.In("planned"), make = marks.In("make"), model = marks.In("model"), @class = marks.In("class"), kerbMassKg = 1700,
            restraintEquipment = marks.In("restraint"),
        });
    }

    private static async Task PlantRuns(Ground ground, HttpClient lab)
    {
        var marks = ground.Marks;
        await Ground.Upload(lab, PlantedPackage.Zip(marks, 2, marks.Test(1)));
        await Ground.Upload(lab, PlantedPackage.Zip(marks, 19, marks.Test(2)));
        var vehicle = $"/api/v1/vehicles/{marks.In("vehicle")}";
        await Ground.Create(lab, $"{vehicle}/twins", new { vehicle = marks.In("twin"), make = marks.In("make"), model = marks.In("model"), evidence = marks.In("evidence") });
        await Ground.Create(lab, $"/api/v1/vehicles/{marks.In("planned")}/carry-over", new { from = marks.In("vehicle"), reason = marks.In("reason"), evidence = marks.In("evidence") });
        await Ground.Create(lab, $"{vehicle}/specimens", new
        {
            test = marks.Test(1), serial = "TEST0000000000017", options = marks.In("options"), purchasedFrom = marks.In("dealer"), purchaseReference = marks.In("invoice"),
        });
        ground.Values["specimens/id"] = ground.Values["specimens/specimen"] = await ground.Number("SELECT max(id) FROM lab.specimen");
    }

    private static async Task PlantDecisions(Ground ground, HttpClient lab)
    {
        var (marks, run) = (ground.Marks, $"/api/v1/tests/{ground.Marks.Test(1)}");
        await Ground.Create(lab, $"{run}/findings", new
        {
            timeMs = 71, camera = marks.In("camera"), kind = "floor-buckled", region = "structure", severity = "note", note = marks.In("note"), reason = marks.In("reason"),
        });
        var channels = (await Ground.Read(lab, $"{run}/channels")).EnumerateArray().Select(channel => channel.GetProperty("code").GetString()!).ToArray();
        await Ground.Create(lab, $"{run}/flags", new { channel = channels[^1], kind = "unfit", reason = marks.In("flag") });
        ground.Values["flags/flag"] = await ground.Number("SELECT max(id) FROM lab.channel_flag");
        await Ground.Create(lab, $"{run}/flags/{ground.Values["flags/flag"].Real}/withdrawal", new { reason = marks.In("withdrawal") });
        await Ground.Create(lab, $"/api/v1/tests/{marks.Test(2)}/repeat-decisions", new
        {
            trigger = "conduct outside", choice = "repeat", evidence = marks.In("evidence"), options = marks.In("options"), measuresSeen = true,
        });
        await Ground.Read(lab, $"{run}/measures");
        ground.Values["channels/code"] = RouteValue.Of(channels[0]);
        ground.Values["findings/finding"] = ground.Values["findings/id"] = RouteValue.Of((await Ground.Read(lab, $"{run}/findings"))[0].GetProperty("id").ToString());
    }

    /// <summary>A dummy with its calibration, a check, and the run it sat in.</summary>
    private static async Task PlantEquipment(Ground ground, HttpClient lab)
    {
        var marks = ground.Marks;
        await Ground.Create(lab, "/api/v1/equipment", new { kind = "dummy", serial = marks.In("serial"), title = marks.In("dummy"), range = marks.In("range"), note = marks.In("remark") });
        ground.Values["equipment/id"] = await ground.Number("SELECT max(id) FROM lab.equipment");
        var id = long.Parse(ground.Values["equipment/id"].Real, CultureInfo.InvariantCulture);
        await Ground.Create(lab, $"/api/v1/equipment/{id}/calibrations", new { on = "2031-01-10", dueOn = "2032-01-10", certificate = marks.In("certificate") });
        await Ground.Create(lab, $"/api/v1/tests/{marks.Test(2)}/equipment", new { equipment = id, position = 1 });
        await Ground.Create(lab, $"/api/v1/equipment/{id}/checks", new { part = "neck", passed = true, on = "2031-02-01", note = marks.In("check") });
    }

    /// <summary>A photograph for the sheet and a film, attached after the run.</summary>
    private static async Task PlantAttachments(Ground ground, HttpClient lab)
    {
        var marks = ground.Marks;
        var photograph = await Attach("jpg", "image/jpeg", PlantedPhotograph.With(marks.In("later-exif")));
        await Ground.Change(lab, $"/api/v1/attachments/{photograph}/sheet", new { alternativeText = marks.In("alternative"), version = 1 });
        var film = await Attach("mp4", "video/mp4", PlantedPackage.Film(marks.In("later-film")));
        await Ground.Change(lab, $"/api/v1/attachments/{film}/film-times", new { framesPerSecond = 1000, timeZeroFrame = 12, reason = marks.In("reason"), version = 0 });
        ground.Values["attachments/id"] = RouteValue.OfNumber(photograph);

        async Task<long> Attach(string extension, string mediaType, byte[] bytes) => (await Ground.Send(
            lab, $"/api/v1/tests/{marks.Test(1)}/attachments?name={marks.In("attached")}.{extension}&caption={marks.In("caption")}&camera={marks.In("camera")}", bytes, mediaType))
            .GetProperty("id").GetInt64();
    }

    /// <summary>By another than the uploader; one act stays, one is taken back.</summary>
    private static async Task PlantReviews(Ground ground, HttpClient lab, HttpClient administrator)
    {
        var marks = ground.Marks;
        using var reviewer = await ground.Machine(administrator, marks.In("reviewer"), [Role.Reviewer, Role.Engineer]);
        var reviews = $"/api/v1/tests/{marks.Test(1)}/reviews";
        var rating = (await Ground.Read(lab, reviews)).GetProperty("ratingId");
        await Ground.Create(reviewer, reviews, new { kind = "sign", part = "conduct", note = marks.In("signed"), ratingId = rating });
        ground.Values["reviews/act"] = ground.Values["review/act"] = await ground.Number("SELECT max(id) FROM lab.review_act");
        await Ground.Create(reviewer, reviews, new { kind = "send back", part = "data", note = marks.In("sent-back"), ratingId = rating });
        var last = await ground.Number("SELECT max(id) FROM lab.review_act");
        await Ground.Create(reviewer, $"{reviews}/{last.Real}/withdrawal", new { reason = marks.In("taken-back") });
    }
}
