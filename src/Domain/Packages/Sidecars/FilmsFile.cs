using System.Globalization;
using Toepan.Domain.Packages.Archive;

namespace Toepan.Domain.Packages.Sidecars;

/// <summary>Movie/films.csv: frame rate and time zero of the package's films.</summary>
public static class FilmsFile
{
    private const string RateColumn = "frames_per_second";
    private const string ZeroColumn = "time_zero_frame";
    private const string PlaybackColumn = "playback_frames_per_second";

    public static string[] Required { get; } = ["file", RateColumn, ZeroColumn];

    public static string[] Optional { get; } = ["camera", PlaybackColumn];

    /// <summary>Every film once, in order; of a file given twice the first row counts. A file the package does not hold is kept and warned about.</summary>
    internal static IReadOnlyList<FilmTiming> Read(CsvTable table, IReadOnlyList<ZipEntry> attachments)
    {
        var films = new Dictionary<string, FilmTiming>(StringComparer.OrdinalIgnoreCase);
        foreach (var row in table.Rows())
        {
            if (Timing(row, table.Problems) is not { } film)
            {
                continue;
            }

            if (!films.TryAdd(film.File, film))
            {
                table.Problems.Warn(ProblemCodes.FilmTwice, $"The film '{ProblemList.Show(film.File)}' is there twice; line {films[film.File].Line} is used.", row.Place, film.File);
            }
            else if (!attachments.Any(entry => IsOf(film, entry.Name)))
            {
                table.Problems.Warn(ProblemCodes.FilmUnknown, $"The film '{ProblemList.Show(film.File)}' is not in the package; its times are kept.", row.Place, film.File);
            }
        }

        return [.. films.Values];
    }

    /// <summary>Whether a row is about an entry: its name within Movie/, or the whole name, without regard to case.</summary>
    public static bool IsOf(FilmTiming film, string entry) =>
        entry.Equals(film.File, StringComparison.OrdinalIgnoreCase) || entry.Equals($"{PackageLayout.FilmFolder}/{film.File}", StringComparison.OrdinalIgnoreCase);

    private static FilmTiming? Timing(CsvRow row, ProblemList problems)
    {
        var file = row.Text("file").Replace('\\', '/');
        if (file.Length is 0 or > CsvRow.LongestName)
        {
            problems.Reject(ProblemCodes.CsvValue, $"The file is {(file.Length == 0 ? "blank" : $"longer than {CsvRow.LongestName} characters")}.", row.Place, file, $"1 to {CsvRow.LongestName} characters");
            return null;
        }

        var rated = Rate(row, problems, RateColumn, needed: true, out var rate);
        var zeroed = row.TryNumber(ZeroColumn, out var zero);
        var played = Rate(row, problems, PlaybackColumn, needed: false, out var playback);
        if (zeroed && zero is null)
        {
            problems.Reject(ProblemCodes.CsvNumber, $"The {ZeroColumn} is blank; the frame of contact is needed.", row.Place, "", "a number");
        }

        var camera = row.Text("camera");
        return rated && played && zero is { } frame ? new(file, camera.Length == 0 ? null : camera, rate!.Value, frame, playback, row.Line) : null;
    }

    private static bool Rate(CsvRow row, ProblemList problems, string column, bool needed, out double? rate)
    {
        if (!row.TryNumber(column, out rate))
        {
            return false;
        }

        if (rate is > 0 and <= FilmTiming.FastestFramesPerSecond || (rate is null && !needed))
        {
            return true;
        }

        var shown = rate?.ToString("R", CultureInfo.InvariantCulture) ?? "";
        problems.Reject(
            ProblemCodes.CsvNumber, $"The {column} is {(shown.Length == 0 ? "blank" : shown)}; it lies above 0 and up to {FilmTiming.FastestFramesPerSecond.ToString("R", CultureInfo.InvariantCulture)}.",
            row.Place, shown, "0");
        return false;
    }
}
