using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;

namespace Toepan.Demo.Commands;

/// <summary><c>generate --out DIR --seed N</c>: writes one zip a run and <c>twins.csv</c>.</summary>
public static class GenerateCommand
{
    public static int Run(string directory, int seed)
    {
        Directory.CreateDirectory(directory);
        foreach (var run in NorthmoorProgramme.Runs)
        {
            var path = Path.Combine(directory, $"{run.Test}.zip");
            using (var file = File.Create(path))
            {
                RunZip.Write(file, run, seed);
            }

            Console.WriteLine($"{run.Test}  {run.Vehicle.Make} {run.Vehicle.Model}  {new FileInfo(path).Length / 1024} kB");
        }

        File.WriteAllLines(Path.Combine(directory, "twins.csv"),
            Fleet.Twins.Select(pair => $"{pair.Twin.Key},{pair.Of.Key},\"{pair.Evidence}\"").Prepend("twin,of,evidence"));
        return 0;
    }
}
