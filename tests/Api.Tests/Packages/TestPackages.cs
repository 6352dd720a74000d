using System.IO.Compression;
using Toepan.Demo.Packages;
using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;

namespace Toepan.Api.Tests.Packages;

/// <summary>Packages of the demo scenario, and changed copies of them.</summary>
internal static class TestPackages
{
    private const int Seed = 1;
    private const string ProgrammeFile = "programme.json";

    /// <summary>A valid run, every region rated.</summary>
    public static byte[] Whole { get; } = Zip(2);

    /// <summary>Another vehicle's run.</summary>
    public static byte[] Other { get; } = Zip(3);

    /// <summary>The run of a number, FO-0001 to FO-0030.</summary>
    public static byte[] Zip(int number) => Zip(PackageBuilder.Build(NorthmoorProgramme.Runs.Single(run => run.Number == number), Seed));

    public static byte[] Zip(TestPackage package)
    {
        using var zip = new MemoryStream();
        PackageWriter.Write(zip, package);
        return zip.ToArray();
    }

    /// <summary>The same entries under a top folder, stored instead of packed: other bytes, same content.</summary>
    public static byte[] Repacked(byte[] zip) => Rewritten(zip, (_, bytes) => bytes, "FO folder/");

    /// <summary>The same run with another laboratory in programme.json: other content.</summary>
    public static byte[] Reworded(byte[] zip) => WithProgramme(zip, text => text.Replace("Hall 2", "Hall 3", StringComparison.Ordinal));

    /// <summary>The same run under another test code.</summary>
    public static byte[] Renamed(byte[] zip, string from, string to) => WithProgramme(zip, text => text.Replace($"\"{from}\"", $"\"{to}\"", StringComparison.Ordinal));

    public static byte[] WithProgramme(byte[] zip, Func<string, string> change) => Rewritten(
        zip, (name, bytes) => name == ProgrammeFile ? System.Text.Encoding.UTF8.GetBytes(change(System.Text.Encoding.UTF8.GetString(bytes))) : bytes, "");

    private static byte[] Rewritten(byte[] zip, Func<string, byte[], byte[]> change, string folder)
    {
        using var target = new MemoryStream();
        using (var source = new ZipArchive(new MemoryStream(zip)))
        using (var archive = new ZipArchive(target, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in source.Entries)
            {
                using var bytes = new MemoryStream();
                using (var read = entry.Open())
                {
                    read.CopyTo(bytes);
                }

                using var write = archive.CreateEntry(folder + entry.FullName, CompressionLevel.Fastest).Open();
                write.Write(change(entry.FullName, bytes.ToArray()));
            }
        }

        return target.ToArray();
    }
}
