using Toepan.Domain.Packages;

namespace Toepan.Domain.Tests.Packages.Malformed;

/// <summary>A package with something wrong, and every problem but notes that reading must give.</summary>
/// <param name="Name">What is wrong, in words; unique.</param>
/// <param name="Zip">Makes the archive.</param>
/// <param name="Readable">Whether there is a package all the same.</param>
/// <param name="Problems">Each as <c>severity code</c> or <c>severity code file</c> or <c>severity code file:line</c>; severity E or W.</param>
internal sealed record MalformedCase(string Name, Func<byte[]> Zip, bool Readable, string[] Problems)
{
    /// <summary>Limits to read under; the published ones unless a case would only be slow under them.</summary>
    public PackageLimits Limits { get; init; } = PackageLimits.Default;

    /// <summary>Unreadable because of a change to the sample.</summary>
    public static MalformedCase Refused(string name, Func<SamplePackage, SamplePackage> change, params string[] problems) =>
        new(name, () => change(new SamplePackage()).Zip(), Readable: false, problems);

    /// <summary>Readable in spite of a change to the sample.</summary>
    public static MalformedCase Kept(string name, Func<SamplePackage, SamplePackage> change, params string[] problems) =>
        new(name, () => change(new SamplePackage()).Zip(), Readable: true, problems);

    /// <summary>Unreadable for what the archive itself is.</summary>
    public static MalformedCase Archive(string name, Func<byte[]> zip, params string[] problems) => new(name, zip, Readable: false, problems);

    /// <summary>A problem in the notation of <see cref="Problems"/>.</summary>
    public static string Describe(Problem problem)
    {
        var place = problem.File is null ? "" : problem.Line is null ? $" {problem.File}" : $" {problem.File}:{problem.Line}";
        return $"{problem.Severity.ToString()[0]} {problem.Code}{place}";
    }
}
