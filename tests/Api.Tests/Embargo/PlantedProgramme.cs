using Toepan.Api.Security;
using Toepan.Support;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A service whose whole programme is unreleased and full of marks, brought through the same routes as anyone's.</summary>
public sealed class PlantedProgramme(PostgresFixture postgres) : IAsyncLifetime
{
    private Ground ground = null!;

    public ApiHost Api => ground.Api;

    internal Marks Marks => ground.Marks;

    /// <summary>What no response may hold, whoever asks.</summary>
    internal IReadOnlyCollection<string> Secrets => ground.Secrets;

    /// <summary>Route parameters by the word before them and their own, with a value of the planted data and an unknown one.</summary>
    internal IReadOnlyDictionary<string, RouteValue> Values => ground.Values;

    /// <summary>The planted data as query parameters that pages and routes take, and the same with unknown values.</summary>
    internal RouteValue Query { get; private set; } = new("", "");

    public async ValueTask InitializeAsync()
    {
        ground = new Ground(await ApiHost.Start(postgres), Marks.Chosen());
        using var administrator = await Api.Machine(Role.Administrator);
        using var lab = await ground.Machine(administrator, Marks.In("machine"), Enum.GetValues<Role>());
        await RunPlanter.Plant(ground, lab, administrator);
        await ProgrammePlanter.Plant(ground, lab);
        await SchemePlanter.Plant(ground, lab);
        await PeoplePlanter.Plant(ground, administrator);
        await EmbargoedRows.Plant(Api.Connections, Marks);
        await ReleasePlanter.Plant(Api.Connections, Marks, Values["vehicles/key"].Real);
        NameOtherValues();
        FindQuery();
        ground.Secrets.AddRange(await PeoplePlanter.Secrets(Api));
    }

    public async ValueTask DisposeAsync()
    {
        if (ground is not null)
        {
            await Api.DisposeAsync();
        }
    }

    private void NameOtherValues()
    {
        ground.Values["/path"] = RouteValue.Of(Marks.In("photo") + ".jpg");
        ground.Values["openapi/documentName"] = new("v1", "v9");
        ground.Values["sheets/slug"] = ground.Values["releases/slug"] = RouteValue.Of(Marks.In("slug"));
        ground.Values["releases/vehicle"] = Values["vehicles/key"];
        ground.Values["schemes/key"] = RouteValue.Of("offset-frontal-1");
        ground.Values["recomputations/id"] = RouteValue.OfNumber(1);
        ground.Values["methods/edition"] = ground.Values["editions/edition"] = new("1", "9");
        ground.Values["v/n"] = ground.Values["v/version"] = new("1", "9");
    }

    /// <summary>Parameters by the names that pages and routes read; whoever does not know one passes over it.</summary>
    private void FindQuery()
    {
        RouteValue[] values = [Values["tests/test"], RouteValue.Of(Marks.Test(2)), Values["vehicles/key"], Values["classes/class"], Values["attachments/id"]];
        Query = new(Text(value => value.Real), Text(value => value.Unknown));

        string Text(Func<RouteValue, string> choose)
        {
            var of = Array.ConvertAll(values, value => choose(value));
            return $"?test={of[0]}&tests={of[0]},{of[1]}&runs={of[0]}&vehicle={of[2]}&class={of[3]}&attachment={of[4]}&film={of[4]}&x=head.hic15&measure=head.hic15&return=/tests/{of[0]}";
        }
    }
}
