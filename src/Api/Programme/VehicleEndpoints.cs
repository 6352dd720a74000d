using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Security;

namespace Toepan.Api.Programme;

/// <summary>Changing vehicles and specimens; the vehicle list and the calendar as files.</summary>
internal static class VehicleEndpoints
{
    private const string CalendarType = "text/calendar";
    private static readonly Role[] Keepers = [Role.Engineer, Role.Manager, Role.Administrator];

    public static void MapVehicles(this IEndpointRouteBuilder app)
    {
        var group = app.MapApiGroup("", "Programme");

        group.MapPost("/vehicles", AddVehicle).RequireRoles(Role.Manager, Role.Administrator).OrConflict().Describe(
            "addVehicle", "Add a vehicle", "Managers and administrators.");
        group.MapPut("/vehicles/{key}", ChangeVehicle).RequireRoles(Role.Manager, Role.Administrator).OrNotFound().OrConflict().Describe(
            "changeVehicle", "Change a vehicle",
            "Managers and administrators. Gives every value and the version last read; 409 where somebody changed the vehicle since, and nothing is overwritten.");
        group.MapPost("/vehicles/{key}/carry-over", CarryOver).RequireRoles(Role.Manager, Role.Administrator).OrNotFound().OrConflict().Describe(
            "carryOver", "Carry a rating over", "Managers and administrators. A recorded decision, with reason and evidence, that an earlier vehicle's rating holds for this one.");
        group.MapGet("/vehicles/{key}/specimens", ListSpecimens).OrNotFound().Describe("listSpecimens", "Specimens of a vehicle", "Serials are kept masked only.");
        group.MapPost("/vehicles/{key}/specimens", AddSpecimen).RequireRoles(Keepers).OrNotFound().OrConflict().Describe(
            "addSpecimen", "Add a specimen", "Engineers, managers and administrators. The serial is masked before it is stored.");
        group.MapGet("/specimens/{id:long}", GetSpecimen).OrNotFound().Describe("getSpecimen", "One specimen", "A specimen with its version.");
        group.MapPut("/specimens/{id:long}", ChangeSpecimen).RequireRoles(Keepers).OrNotFound().OrConflict().Describe(
            "changeSpecimen", "Change a specimen", "Gives every value and the version last read; 409 where somebody changed it since.");
        group.MapGet("/vehicles/export", Export).Produces(StatusCodes.Status200OK, contentType: MediaTypes.Csv).Describe(
            "exportVehicles", "The vehicle list as a file", "CSV, or a spreadsheet with format=xlsx; formula-like text is neutralised. The import reads it back.");
        group.MapPost("/vehicles/import", Import).RequireRoles(Role.Manager, Role.Administrator).OrConflict()
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge).ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .Accepts<byte[]>(MediaTypes.Csv, VehicleListService.Spreadsheet).Describe(
                "importVehicles", "Import the vehicle list",
                "Body: CSV or a spreadsheet. With dryRun=true it only says what would change, row by row, and a digest; a later import that names the digest is refused where something else would change. All rows or none. A column left out leaves its values, an empty cell clears one.");
        group.MapGet("/board/calendar.ics", Calendar).Produces(StatusCodes.Status200OK, contentType: CalendarType).Describe(
            "getCalendar", "Planned runs as a calendar", "iCalendar, an all-day entry for each planned run; for all classes or one. Signed in by cookie or bearer token: no token in the address.");
    }

    /// <summary>That a route answers 409 where something stands against it.</summary>
    internal static RouteHandlerBuilder OrConflict(this RouteHandlerBuilder route) => route.ProducesProblem(StatusCodes.Status409Conflict);

    private static async Task<Results<Created<VehicleDetailJson>, ProblemHttpResult>> AddVehicle(
        Viewer viewer, VehicleEditor editor, VehicleChangeJson body, CancellationToken cancellation) =>
        (await editor.Add(viewer, body.Vehicle ?? "", body.ToFacts(), cancellation))
            .AnswerCreated(added => $"/api/v1/vehicles/{Uri.EscapeDataString(added.Vehicle.Name.Key)}", VehicleDetailJson.Of);

    private static async Task<Results<Ok<VehicleDetailJson>, ProblemHttpResult>> ChangeVehicle(
        Viewer viewer, VehicleEditor editor, string key, VehicleChangeJson body, CancellationToken cancellation) =>
        body.Version is { } version
            ? (await editor.Change(viewer, key, body.ToFacts(), version, cancellation)).Answer(VehicleDetailJson.Of)
            : Failure.BadRequest("'version' is missing: the one last read.").ToProblem();

    private static async Task<Results<Created<CarryOverJson>, ProblemHttpResult>> CarryOver(
        Viewer viewer, CarryOverService carrying, string key, NewCarryOverJson body, CancellationToken cancellation) =>
        (await carrying.Decide(viewer, key, body.From ?? "", body.Reason ?? "", body.Evidence ?? "", cancellation))
            .AnswerCreated(_ => $"/api/v1/vehicles/{Uri.EscapeDataString(key)}", CarryOverJson.Of);

    private static async Task<Results<Ok<SpecimenJson[]>, ProblemHttpResult>> ListSpecimens(
        Viewer viewer, SpecimenService specimens, string key, CancellationToken cancellation) =>
        (await specimens.List(viewer, key, cancellation)).Answer(list => list.Select(SpecimenJson.Of).ToArray());

    private static async Task<Results<Created<SpecimenJson>, ProblemHttpResult>> AddSpecimen(
        Viewer viewer, SpecimenService specimens, string key, SpecimenChangeJson body, CancellationToken cancellation) =>
        (await specimens.Add(viewer, key, body.ToFacts(), cancellation)).AnswerCreated(added => $"/api/v1/specimens/{added.Id}", SpecimenJson.Of);

    private static async Task<Results<Ok<SpecimenJson>, ProblemHttpResult>> GetSpecimen(
        Viewer viewer, SpecimenService specimens, long id, CancellationToken cancellation) =>
        (await specimens.Get(viewer, id, cancellation)).Answer(SpecimenJson.Of);

    private static async Task<Results<Ok<SpecimenJson>, ProblemHttpResult>> ChangeSpecimen(
        Viewer viewer, SpecimenService specimens, long id, SpecimenChangeJson body, CancellationToken cancellation) =>
        body.Version is { } version
            ? (await specimens.Change(viewer, id, body.ToFacts(), version, cancellation)).Answer(SpecimenJson.Of)
            : Failure.BadRequest("'version' is missing: the one last read.").ToProblem();

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> Export(
        Viewer viewer, VehicleListService lists, string? @class, string? format, CancellationToken cancellation)
    {
        var outcome = await lists.Export(viewer, @class, format == "xlsx", cancellation);
        return outcome.Value is { } file ? TypedResults.File(file.Bytes, file.MediaType, file.Name) : outcome.Failure!.ToProblem();
    }

    private static async Task<Results<Ok<VehicleImport>, ProblemHttpResult>> Import(
        Viewer viewer, VehicleListService lists, HttpRequest request, bool? dryRun, string? digest, CancellationToken cancellation)
    {
        var spreadsheet = request.ContentType?.StartsWith(VehicleListService.Spreadsheet, StringComparison.OrdinalIgnoreCase) == true;
        if (!spreadsheet && request.ContentType?.StartsWith(MediaTypes.Csv, StringComparison.OrdinalIgnoreCase) != true)
        {
            return TypedResults.Problem($"The body is {MediaTypes.Csv} or {VehicleListService.Spreadsheet}.", statusCode: StatusCodes.Status415UnsupportedMediaType, title: "Unsupported media type");
        }

        var bytes = await Body(request, cancellation);
        return (await lists.Import(viewer, new IncomingList(bytes, spreadsheet, dryRun ?? false, digest), cancellation)).Answer();
    }

    private static async Task<Results<ContentHttpResult, ProblemHttpResult>> Calendar(
        Viewer viewer, CalendarService calendars, string? @class, CancellationToken cancellation)
    {
        var outcome = await calendars.Feed(viewer, @class, cancellation);
        return outcome.Value is { } text ? TypedResults.Content(text, CalendarType, System.Text.Encoding.UTF8) : outcome.Failure!.ToProblem();
    }

    // One byte more than the limit is enough to know that there is more.
    private static async Task<byte[]> Body(HttpRequest request, CancellationToken cancellation)
    {
        using var buffer = new MemoryStream();
        var chunk = new byte[81920];
        int read;
        while (buffer.Length <= VehicleListService.LargestFile && (read = await request.Body.ReadAsync(chunk, cancellation)) > 0)
        {
            buffer.Write(chunk, 0, read);
        }

        return buffer.ToArray();
    }
}
