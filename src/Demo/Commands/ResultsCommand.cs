using System.Text;
using Toepan.Demo.Results;

namespace Toepan.Demo.Commands;

/// <summary><c>results --count N --seed S [--out FILE]</c>: summary results for <c>POST /api/v1/results</c>, to a file or to standard output.</summary>
public static class ResultsCommand
{
    public const int MostRows = 20_000;

    public static int Run(int count, int seed, string? path)
    {
        if (count is < 1 or > MostRows)
        {
            Console.Error.WriteLine($"--count takes 1 to {MostRows}, as many as the route takes at once.");
            return 2;
        }

        using var stream = path is null ? Console.OpenStandardOutput() : File.Create(path);
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        new SummaryGenerator(count, seed).Write(writer);
        return 0;
    }
}
