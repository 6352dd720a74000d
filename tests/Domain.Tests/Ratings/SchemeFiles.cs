using System.Text;
using Toepan.Domain.Ratings;

namespace Toepan.Domain.Tests.Ratings;

/// <summary>The scheme documents of the tests, found from the test's own folder upwards.</summary>
internal static class SchemeFiles
{
    public static string Folder { get; } = Path.Combine(Root(), "tests", "reference", "schemes");

    /// <summary>The independent scheme: other regions, measures, bounds and percentages.</summary>
    public static string Independent { get; } = Path.Combine(Folder, "trunk-and-limbs-1.yaml");

    /// <summary>The carried scheme's document.</summary>
    public static string Carried { get; } = Path.Combine(Root(), "src", "Domain", "Ratings", "Data", "offset-frontal-1.json");

    public static SchemeReading Read(string text, string file) => SchemeReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), file);

    public static Scheme ReadFile(string path)
    {
        var reading = Read(File.ReadAllText(path), Path.GetFileName(path));
        return reading.Scheme ?? throw new InvalidOperationException(string.Join('\n', reading.Problems.Select(problem => $"{problem.Line}: {problem.Message}")));
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Program.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
