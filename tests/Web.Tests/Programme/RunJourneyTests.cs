using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Toepan.Web.Tests.Support;

namespace Toepan.Web.Tests.Programme;

/// <summary>One run from its plan to its approval, and a dummy that fails its check after that; each step by the role whose business it is, in a real browser.</summary>
public sealed class RunJourneyTests(Site site)
{
    private const string Test = "FO-0021";
    private const string Vehicle = "tarnbrook-fellside-2030";
    private static readonly string[] Parts = ["conduct", "data", "structure", "film"];

    [Fact]
    public async Task Run_FromPlanToApprovalAndAFailedCheck_WalksThroughItsStates()
    {
        var manager = await Staff.Join(site, "journey-manager", "manager");
        var engineer = await Staff.Join(site, "journey-engineer", "engineer");
        var reviewer = await Staff.Join(site, "journey-reviewer", "reviewer");

        await Plan(manager);
        await ExpectState(manager, "planned");
        await Receive(engineer);
        await ExpectState(manager, "received");
        await Prepare(engineer);
        await ExpectState(manager, "prepared");
        await Report(engineer);
        await ExpectState(manager, "run");
        await Upload(engineer);
        await ExpectState(manager, "rated");

        var dummy = await AssignDummy(engineer);

        await ExpectWaiting(engineer, Test, "Review the run", waits: false);
        await ExpectWaiting(reviewer, Test, "Review the run", waits: true);
        await Sign(reviewer);
        await ExpectWaiting(reviewer, Test, "Approve the rating", waits: false);
        await ExpectWaiting(manager, Test, "Approve the rating", waits: true);
        await Approve(manager);
        await ExpectState(manager, "approved");
        await ExpectWaiting(manager, Test, "Approve the rating", waits: false);

        await FailHead(engineer, dummy);
        await ExpectState(manager, "in review");
        await ExpectWaiting(reviewer, Test, "Decide about a concern", waits: true);
        await AcceptConcern(reviewer);
        await ExpectState(manager, "approved");
    }

    private static async Task Plan(IPage manager)
    {
        await manager.GotoAsync("/vehicles/new");
        await manager.GetByLabel("Key", new() { Exact = true }).FillAsync(Vehicle);
        await manager.GetByLabel("Class", new() { Exact = true }).SelectOptionAsync("crew-cab-pickup");
        await manager.GetByLabel("Make", new() { Exact = true }).FillAsync("Tarnbrook");
        await manager.GetByLabel("Model", new() { Exact = true }).FillAsync("Fellside");
        await Press(manager, "Keep");
        await manager.WaitForURLAsync($"**/vehicles/{Vehicle}");
        await manager.GotoAsync($"/plan/new?vehicle={Vehicle}");
        await manager.GetByLabel("Test code").FillAsync(Test);
        await manager.GetByLabel("Planned for").FillAsync("2031-06-03");
        await Press(manager, "Plan it");
        await manager.WaitForURLAsync($"**/tests/{Test}/preparation");
    }

    private static async Task Receive(IPage engineer)
    {
        await engineer.GotoAsync($"/vehicles/{Vehicle}/specimens/new");
        await engineer.GetByLabel("For the run").SelectOptionAsync(Test);
        await engineer.GetByLabel("Serial").FillAsync("TBF29000000004711");
        await engineer.GetByLabel("Received on").FillAsync(Today);
        await Press(engineer, "Keep");
        await engineer.WaitForURLAsync($"**/vehicles/{Vehicle}#specimens");
    }

    private static async Task Prepare(IPage engineer)
    {
        await engineer.GotoAsync($"/tests/{Test}/preparation");
        await Press(engineer, "Sign the preparation");
        await Assertions.Expect(engineer.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();

        foreach (var field in await engineer.Locator("form.form .field :is(input, textarea)").AllAsync())
        {
            await field.FillAsync(await Record(field));
        }

        await Press(engineer, "Record");
        await Assertions.Expect(engineer.Locator("section:has(#recorded) table")).ToContainTextAsync("noted for barrier-batch");
        await Press(engineer, "Sign the preparation");
        await Assertions.Expect(engineer.Locator("main")).ToContainTextAsync("signed off by journey-engineer");
    }

    /// <summary>Something inside the bounds of each preparation item of the procedure.</summary>
    private static async Task<string> Record(ILocator field) => await field.GetAttributeAsync("name") switch
    {
        "soak-log" => "2031-06-02T18:00 21.3\n2031-06-03T06:00 21.4",
        "barrier-strength" => "0.325",
        "energy-store" => "90",
        var name => await field.GetAttributeAsync("inputmode") == "decimal" ? "250" : $"noted for {name}",
    };

    private static async Task Report(IPage engineer)
    {
        await engineer.GetByLabel("Made on", new() { Exact = true }).FillAsync(Today);
        await Press(engineer, "Say that it was made");
        await Assertions.Expect(engineer.Locator("section:has(#steps) .state")).ToHaveTextAsync("run");
    }

    private static async Task Upload(IPage engineer)
    {
        await engineer.GotoAsync("/packages/new");
        await engineer.GetByLabel("Package", new() { Exact = true }).SetInputFilesAsync(
            new FilePayload { Name = $"{Test}.zip", MimeType = "application/zip", Buffer = DemoPackage.Zip(Test) });
        await Press(engineer, "Upload");
        await engineer.GetByRole(AriaRole.Link, new() { Name = $"Open {Test}" }).ClickAsync();
        await engineer.GotoAsync($"/tests/{Test}/review");
        await Assertions.Expect(engineer.Locator("main").GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^(Sign|Send back|Approve)") })).ToHaveCountAsync(0);
    }

    /// <summary>Adds a dummy in date and says that the driver of the run was it; the address of its page.</summary>
    private static async Task<string> AssignDummy(IPage engineer)
    {
        await engineer.GotoAsync("/equipment/new");
        await engineer.GetByLabel("Kind").SelectOptionAsync("Dummy");
        await engineer.GetByLabel("Serial").FillAsync("J-117");
        await engineer.GetByLabel("What it is").FillAsync("Average-man dummy");
        await Press(engineer, "Keep");
        await engineer.WaitForURLAsync(new Regex("/equipment/[0-9]+$"));
        var address = engineer.Url;
        await engineer.GetByLabel("Done on").FillAsync("2031-01-10");
        await engineer.GetByLabel("Holds until").FillAsync("2031-12-31");
        await engineer.GetByLabel("Certificate").FillAsync("C-2031-88");
        await Press(engineer, "Record the calibration");
        await Assertions.Expect(engineer.Locator("table")).ToContainTextAsync("C-2031-88");
        await engineer.GotoAsync($"/tests/{Test}/equipment");
        await engineer.GetByLabel("Equipment", new() { Exact = true }).SelectOptionAsync(address.Split('/')[^1]);
        await engineer.GetByLabel("Seat of a dummy").SelectOptionAsync("1");
        await Press(engineer, "The run used it");
        await Assertions.Expect(engineer.Locator("table")).ToContainTextAsync("J-117");
        return address;
    }

    private static async Task FailHead(IPage engineer, string dummy)
    {
        await engineer.GotoAsync(dummy);
        await engineer.GetByLabel("Day of the check").FillAsync("2031-06-04");
        await engineer.GetByLabel("Part").SelectOptionAsync("Head");
        await engineer.GetByLabel("Outcome").SelectOptionAsync("no");
        await engineer.GetByLabel("What was found").FillAsync("Drop test 8 % over its corridor");
        await Press(engineer, "Record the check");
        await Assertions.Expect(engineer.Locator("section:has(#checks-title) table")).ToContainTextAsync("failed");
    }

    private static async Task AcceptConcern(IPage reviewer)
    {
        await reviewer.GotoAsync($"/tests/{Test}");
        await Assertions.Expect(reviewer.Locator("#measures tr", new() { HasText = "head.hic15" }).First).ToContainTextAsync("in doubt");
        await reviewer.GotoAsync($"/tests/{Test}/review");
        await Assertions.Expect(reviewer.Locator("section:has(#approve-title)")).ToContainTextAsync("does not hold");
        var concerns = reviewer.Locator("section:has(#concerns-title)");
        await Assertions.Expect(concerns).ToContainTextAsync("the head of dummy J-117 in seat 1 failed its check");
        await concerns.GetByRole(AriaRole.Textbox).FillAsync("The head passed again unchanged the same afternoon; the first drop was misaligned");
        await Press(reviewer, "Accept the concern");
        await Assertions.Expect(concerns).ToContainTextAsync("the first drop was misaligned");
    }

    private async Task Sign(IPage reviewer)
    {
        await reviewer.GotoAsync($"/tests/{Test}/review");
        foreach (var part in Parts)
        {
            var section = reviewer.Locator($"section:has(#{part})");
            await Assertions.Expect(section.Locator("li").First).ToBeVisibleAsync();
            await section.GetByLabel("Note").FillAsync($"Looked at the {part}");
            await section.GetByRole(AriaRole.Button, new() { Name = $"Sign {part}" }).ClickAsync();
            await Assertions.Expect(section).ToContainTextAsync("journey-reviewer");
            await ExpectState(await site.OpenSignedIn(), "in review");
        }

        await Assertions.Expect(reviewer.GetByRole(AriaRole.Button, new() { Name = "Approve the rating" })).ToHaveCountAsync(0);
    }

    private static async Task Approve(IPage manager)
    {
        await manager.GotoAsync($"/tests/{Test}/review");
        await Press(manager, "Approve the rating");
        await Assertions.Expect(manager.Locator("section:has(#approve-title)")).ToContainTextAsync("journey-manager");
    }

    /// <summary>The state word of the vehicle's row on the board.</summary>
    private static async Task ExpectState(IPage page, string state)
    {
        await page.GotoAsync("/?class=crew-cab-pickup");
        var row = page.Locator("table.board tbody tr", new() { Has = page.GetByRole(AriaRole.Link, new() { Name = "Tarnbrook Fellside", Exact = true }) });
        await Assertions.Expect(row.Locator(".state")).ToHaveTextAsync(state);
    }

    /// <summary>Whether the person's board says that something of the run waits for them.</summary>
    private static async Task ExpectWaiting(IPage page, string test, string what, bool waits)
    {
        await page.GotoAsync("/");
        var line = page.Locator(".needs li", new() { HasText = what }).Filter(new() { Has = page.GetByRole(AriaRole.Link, new() { Name = test }) });
        await Assertions.Expect(line).ToHaveCountAsync(waits ? 1 : 0);
    }

    private static Task Press(IPage page, string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();

    private static string Today => DateTimeOffset.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
