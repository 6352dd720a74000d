using System.Text;

namespace Toepan.Api.Tests.Embargo;

/// <summary>Marked plans, questions and results of earlier years.</summary>
internal static class ProgrammePlanter
{
    public static async Task Plant(Ground ground, HttpClient lab)
    {
        var marks = ground.Marks;
        await Ground.Create(lab, "/api/v1/plan", new { test = marks.Test(3), vehicle = marks.In("planned"), procedure = "offset-frontal-64", date = "2031-09-01" });
        await Ground.Create(lab, $"/api/v1/tests/{marks.Test(3)}/preparation", new { items = new Dictionary<string, string> { ["barrier-batch"] = marks.In("batch") }, version = 0 });
        await Ground.Create(lab, "/api/v1/questions", new { name = marks.In("question"), address = $"/explore?x=head.hic15&view=groups&class={marks.In("class")}" });
        // The walk removes the last of them, as a role may: one stays to be looked for.
        await Ground.Create(lab, "/api/v1/questions", new { name = marks.In("removed"), address = $"/explore?x=head.hic15&view=groups&class={marks.In("class")}" });
        await Summary(marks, lab, marks.Test(8));
        ground.Values["batches/id"] = await ground.Number("SELECT max(id) FROM lab.result_batch");
        await Ground.Create(lab, $"/api/v1/results/batches/{ground.Values["batches/id"].Real}/withdrawal", new { reason = marks.In("withdrawal") });
        await Summary(marks, lab, marks.Test(9));
        ground.Values["batches/id"] = await ground.Number("SELECT max(id) FROM lab.result_batch");
        ground.Values["questions/id"] = await ground.Number("SELECT max(id) FROM lab.saved_question");
        ground.Values["plan/test"] = RouteValue.Of(marks.Test(3));
        ground.Values["procedures/key"] = RouteValue.Of("offset-frontal-64");
        ground.Values["procedures/key/edition"] = new("1", "9");
    }

    private static async Task Summary(Marks marks, HttpClient lab, string test) => await Ground.Send(
        lab, "/api/v1/results",
        Encoding.UTF8.GetBytes(
            "test,vehicle,make,model,class,modelYear,procedure,date,position,dummy,testMassKg,head.hic15\n"
            + $"{test},{marks.In("historic")},{marks.In("make")},{marks.In("model")},{marks.In("class")},2025,offset-frontal-64,2025-03-01,1,H3,1800,321.5\n"),
        "text/csv");
}
