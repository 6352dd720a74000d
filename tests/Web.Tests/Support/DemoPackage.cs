using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;

namespace Toepan.Web.Tests.Support;

/// <summary>Packages of the demo programme as zips.</summary>
public static class DemoPackage
{
    public const int Seed = 1;

    public static byte[] Zip(string test, int seed = Seed)
    {
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, PackageBuilder.Build(NorthmoorProgramme.Runs.Single(run => run.Test == test), seed));
        return zip.ToArray();
    }
}
