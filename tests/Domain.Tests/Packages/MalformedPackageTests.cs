using System.Diagnostics;
using System.Reflection;
using Toepan.Domain.Packages;
using Toepan.Domain.Tests.Packages.Malformed;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>Every malformed package names its problems, file and line, quickly, and nothing else but notes.</summary>
public sealed class MalformedPackageTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private static readonly Dictionary<string, MalformedCase> Cases =
        MalformedArchives.All().Concat(MalformedProgrammes.All()).Concat(MalformedChannels.All()).Concat(MalformedSidecars.All()).ToDictionary(item => item.Name);

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Read_MalformedPackage_NamesItsProblems(string name)
    {
        var malformed = Cases[name];
        var zip = malformed.Zip();
        var watch = Stopwatch.StartNew();
        var reading = SamplePackage.Read(zip, malformed.Limits);
        Assert.True(watch.Elapsed < Patience, $"{name} took {watch.Elapsed}");
        Assert.Equal(
            malformed.Problems.Order(StringComparer.Ordinal),
            reading.Problems.Where(problem => problem.Severity != ProblemSeverity.Note).Select(MalformedCase.Describe).Order(StringComparer.Ordinal));
        Assert.Equal(malformed.Readable, reading.Package is not null);
        Assert.All(reading.Problems, problem => Assert.NotEmpty(problem.Message));
    }

    [Fact]
    public void Table_Cases_AreAtLeastAHundredAndCoverEveryCode()
    {
        Assert.True(Cases.Count >= 100, $"{Cases.Count} cases");
        var expected = Cases.Values.SelectMany(item => item.Problems).Select(problem => problem.Split(' ')[1]).ToHashSet();
        var codes = typeof(ProblemCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (string)field.GetRawConstantValue()!);
        Assert.Equal(NotesAndRest, codes.Where(code => !expected.Contains(code)).Order(StringComparer.Ordinal));
    }

    // Notes, and what only other tests can provoke: an archive over 512 MiB, the collapse of many problems into one.
    private static readonly string[] NotesAndRest =
    [
        ProblemCodes.CodeCase, ProblemCodes.TestDiffers, ProblemCodes.IgnoredEntry, ProblemCodes.MoreAlike, ProblemCodes.TooManyBytes, ProblemCodes.UnknownEntry, ProblemCodes.NameCase,
    ];
}
