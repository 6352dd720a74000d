using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;

namespace Toepan.Demo.Packages;

/// <summary>A run of the scenario as the zip its laboratory uploads: with photographs of some runs, and a film of the first.</summary>
public static class RunZip
{
    private const string FilmName = "onboard-left.webm";
    private const double FramesPerSecond = 1000;
    private const double ContactFrame = 20;

    private static readonly Dictionary<string, (byte, byte, byte)> Photographed = new(StringComparer.Ordinal)
    {
        ["FO-0001"] = (92, 124, 150), ["FO-0004"] = (176, 160, 122), ["FO-0011"] = (142, 96, 112), ["FO-0022"] = (110, 120, 104),
    };

    /// <summary>Writes the zip. The same seed and run give the same bytes.</summary>
    public static void Write(Stream destination, DemoRun run, int seed)
    {
        var package = PackageBuilder.Build(run, seed);
        var files = Files(run).ToDictionary(file => file.Name, file => file.Bytes, StringComparer.Ordinal);
        package = package with
        {
            Attachments = [.. files.Select(file => new Attachment(file.Key, file.Value.Length))],
            Films = files.ContainsKey($"Movie/{FilmName}") ? [new FilmTiming(FilmName, "onboard-left", FramesPerSecond, ContactFrame, null, 0)] : [],
        };
        PackageWriter.Write(destination, package, attachment => new MemoryStream(files[attachment.Path]));
    }

    private static IEnumerable<(string Name, byte[] Bytes)> Files(DemoRun run)
    {
        if (!Photographed.TryGetValue(run.Test, out var paint))
        {
            yield break;
        }

        if (run.Number == 1)
        {
            yield return ($"Movie/{FilmName}", Film());
        }

        yield return ("Photo/2-left-after.png", Photograph.FromTheSide(paint, CrushMm(run)));
        yield return ("Photo/1-left-before.png", Photograph.FromTheSide(paint, 0));
    }

    // A weaker structure is shortened more.
    private static double CrushMm(DemoRun run) => 520 + (180 * (run.Vehicle.Build.Structure - 1));

    private static byte[] Film()
    {
        using var resource = typeof(RunZip).Assembly.GetManifestResourceStream("Toepan.Demo.Data." + FilmName)!;
        using var bytes = new MemoryStream();
        resource.CopyTo(bytes);
        return bytes.ToArray();
    }
}
