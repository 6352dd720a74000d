using Toepan.Domain.Packages;

namespace Toepan.Domain.Analysis.Historic;

/// <summary>Runs of one vehicle name one class, make and model, or leave them out.</summary>
internal static class VehicleAgreement
{
    public static void Check(IReadOnlyList<HistoricRun> runs, ProblemList problems)
    {
        foreach (var vehicle in runs.GroupBy(run => run.Vehicle, StringComparer.Ordinal))
        {
            Check(vehicle, HistoricColumns.Class, run => run.Class, problems);
            Check(vehicle, HistoricColumns.Make, run => run.Make, problems);
            Check(vehicle, HistoricColumns.Model, run => run.Model, problems);
        }
    }

    private static void Check(IEnumerable<HistoricRun> runs, string column, Func<HistoricRun, string?> read, ProblemList problems)
    {
        HistoricRun? first = null;
        foreach (var run in runs.Where(run => read(run) is not null))
        {
            first ??= run;
            if (read(run) != read(first))
            {
                problems.Reject(
                    HistoricProblems.Disagrees,
                    $"Line {run.Line}: {column} of vehicle '{run.Vehicle}' is '{ProblemList.Show(read(run)!)}', but '{ProblemList.Show(read(first)!)}' on line {first.Line}.",
                    new Place(HistoricFile.Name, run.Line, Column: column), read(run), read(first));
            }
        }
    }
}
