using System.Globalization;
using Toepan.Demo.Commands;

const string Usage = """
    Usage:
      generate --out DIR [--seed N]                      write the demo programme's packages as zips
      load --url URL --token-file FILE [--seed N]        upload them to a running service
      results [--count N] [--seed N] [--out FILE]        write summary results as CSV, for POST /api/v1/results
    """;
const int DefaultSeed = 1;

string? Option(string name) => Array.IndexOf(args, name) is >= 0 and var at && at + 1 < args.Length ? args[at + 1] : null;

if (!int.TryParse(Option("--seed") ?? DefaultSeed.ToString(CultureInfo.InvariantCulture), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var seed))
{
    Console.Error.WriteLine("--seed takes a whole number.");
    return 2;
}

switch (args.FirstOrDefault())
{
    case "generate" when Option("--out") is { } directory:
        return GenerateCommand.Run(directory, seed);
    case "results" when int.TryParse(Option("--count") ?? "10000", NumberStyles.None, CultureInfo.InvariantCulture, out var count):
        return ResultsCommand.Run(count, seed, Option("--out"));
    case "load" when Option("--token-file") is { } file && Uri.TryCreate(Option("--url"), UriKind.Absolute, out var url):
        return await LoadCommand.RunAsync(url, file, seed);
    default:
        Console.Error.WriteLine(Usage);
        return 2;
}
