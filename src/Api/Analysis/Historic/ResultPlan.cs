using Toepan.Api.Programme;
using Toepan.Api.Programme.Tables;
using Toepan.Domain.Analysis.Historic;
using Toepan.Domain.Packages;

namespace Toepan.Api.Analysis.Historic;

/// <summary>What the programme already knows, as far as historic results touch it.</summary>
/// <param name="Vehicles">Known vehicles the file names.</param>
/// <param name="Classes">Class keys.</param>
/// <param name="Procedures">Procedure keys, the historic ones included.</param>
/// <param name="Stored">Tests of the file that count already as summaries → their digests.</param>
/// <param name="FullRuns">Tests of the file that exist as runs with channels.</param>
internal sealed record KnownResults(
    IReadOnlyDictionary<string, VehicleRow> Vehicles, IReadOnlySet<string> Classes, IReadOnlySet<string> Procedures,
    IReadOnlyDictionary<string, string> Stored, IReadOnlySet<string> FullRuns);

/// <summary>A file of historic results held against the programme: what it brings, what it makes known, what stands against it.</summary>
internal sealed class ResultPlan
{
    private const int MostNamed = 50;
    private const int MostAlike = 20;
    private readonly List<Problem> problems = [];
    private readonly Dictionary<string, int> alike = [];

    public ResultPlan(HistoricReading reading, KnownResults known)
    {
        New = [.. reading.Runs.Where(run => !known.Stored.ContainsKey(run.Test) && !known.FullRuns.Contains(run.Test))];
        Unchanged = reading.Runs.Count(run => known.Stored.TryGetValue(run.Test, out var digest) && digest == run.Digest);
        Full = [.. reading.Runs.Where(run => known.FullRuns.Contains(run.Test)).Select(run => run.Test)];
        Different = [.. reading.Runs.Where(run => known.Stored.TryGetValue(run.Test, out var digest) && digest != run.Digest).Select(run => run.Test)];
        Vehicles = [.. New.GroupBy(run => run.Vehicle, StringComparer.Ordinal).Where(group => !known.Vehicles.ContainsKey(group.Key)).Select(NewVehicle)];
        Classes = [.. Vehicles.Select(vehicle => vehicle.ClassKey).Where(key => key.Length > 0 && !known.Classes.Contains(key)).Distinct().Order(StringComparer.Ordinal)];
        Procedures = [.. New.Select(run => run.Procedure).Where(key => !known.Procedures.Contains(key)).Distinct().Order(StringComparer.Ordinal)];
        var classless = Vehicles.Where(vehicle => vehicle.ClassKey.Length == 0).Select(vehicle => vehicle.Key).ToHashSet();
        foreach (var run in reading.Runs)
        {
            Compare(run, known.Vehicles.GetValueOrDefault(run.Vehicle), classless);
        }

        Problems = [.. reading.Problems, .. problems, .. alike.Where(pair => pair.Value > MostAlike).Select(More)];
    }

    /// <summary>Runs to store.</summary>
    public IReadOnlyList<HistoricRun> New { get; }

    public int Unchanged { get; }

    /// <summary>Vehicles to create, without a time.</summary>
    public IReadOnlyList<VehicleRow> Vehicles { get; }

    public IReadOnlyList<string> Classes { get; }

    public IReadOnlyList<string> Procedures { get; }

    public IReadOnlyList<Problem> Problems { get; }

    private IReadOnlyList<string> Full { get; }

    private IReadOnlyList<string> Different { get; }

    /// <summary>Why nothing of it can be taken, or null.</summary>
    public Failure? Refusal() => problems.Exists(problem => problem.Severity == ProblemSeverity.Error)
        ? new Failure(FailureKind.Unreadable, "The results cannot be taken", "A row contradicts the programme, so none was taken.") { Problems = Problems }
        : Full.Count > 0 ? Conflict("Runs with channels exist", "exist as runs with channels", Full)
        : Different.Count > 0 ? Conflict("Other results are stored", "are stored with other content; withdraw or replace their batch", Different)
        : null;

    private static Failure Conflict(string title, string what, IReadOnlyList<string> tests) => new(
        FailureKind.Conflict, title,
        $"{tests.Count} {(tests.Count == 1 ? "test" : "tests")} of the file {what}: {string.Join(", ", tests.Take(MostNamed))}{(tests.Count > MostNamed ? ", …" : "")}. None was taken.")
    {
        Members = new Dictionary<string, object?> { ["tests"] = tests },
    };

    private static VehicleRow NewVehicle(IGrouping<string, HistoricRun> runs) => new()
    {
        Key = runs.Key,
        ClassKey = runs.Select(run => run.Class).FirstOrDefault(key => key is not null) ?? "",
        Make = runs.Select(run => run.Make).FirstOrDefault(make => make is not null),
        Model = runs.Select(run => run.Model).FirstOrDefault(model => model is not null),
        ModelYearFrom = runs.Min(run => run.ModelYear),
        ModelYearTo = runs.Max(run => run.ModelYear),
    };

    private void Compare(HistoricRun run, VehicleRow? vehicle, HashSet<string> classless)
    {
        if (vehicle is null)
        {
            if (classless.Contains(run.Vehicle))
            {
                Tell(ProblemSeverity.Error, HistoricProblems.Missing, run, HistoricColumns.Class, $"the class is empty, and the programme does not know vehicle '{run.Vehicle}'", "", "a class key");
            }

            return;
        }

        if (run.Class is { } key && key != vehicle.ClassKey)
        {
            Tell(ProblemSeverity.Error, HistoricProblems.VehicleClass, run, HistoricColumns.Class, $"class is '{key}', but the programme has vehicle '{run.Vehicle}' in class '{vehicle.ClassKey}'", key, vehicle.ClassKey);
        }

        if ((run.Make is { } make && make != vehicle.Make) || (run.Model is { } model && model != vehicle.Model))
        {
            var (written, stored) = ($"{run.Make} {run.Model}".Trim(), RunIndex.Name(vehicle).Title);
            Tell(ProblemSeverity.Warning, HistoricProblems.VehicleName, run, HistoricColumns.Make, $"vehicle '{run.Vehicle}' is '{written}', but the programme has it as '{stored}', which stays", written, stored);
        }
    }

    private void Tell(ProblemSeverity severity, string code, HistoricRun run, string column, string what, string value, string limit)
    {
        alike[code] = alike.GetValueOrDefault(code) + 1;
        if (alike[code] <= MostAlike)
        {
            problems.Add(new Problem(severity, code, $"Line {run.Line}: {what}.", HistoricFile.Name, run.Line, null, value, limit, column));
        }
    }

    private static Problem More(KeyValuePair<string, int> kind) =>
        new(ProblemSeverity.Note, ProblemCodes.MoreAlike, $"{kind.Value - MostAlike} more problems of the kind {kind.Key}.", HistoricFile.Name);
}
