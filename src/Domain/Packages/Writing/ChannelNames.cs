using System.Globalization;
using Toepan.Domain.Packages.Archive;

namespace Toepan.Domain.Packages.Writing;

/// <summary>Gives every channel a file name and number of its own: its recorded ones where they are good and free.</summary>
internal static class ChannelNames
{
    private const string Folder = "Channel/";

    public static IReadOnlyList<(RecordedChannel Channel, string File, int Number)> Of(TestPackage package)
    {
        var taken = new HashSet<string>();
        var free = package.Channels.Select(channel => channel.Number).DefaultIfEmpty().Max() + 1;
        var named = new List<(RecordedChannel, string, int)>();
        foreach (var channel in package.Channels)
        {
            var number = Math.Max(0, channel.Number);
            var file = NumberOf(channel.File) == number ? channel.File : Name(package, number);
            while (!taken.Add(EntryNames.Key(file)))
            {
                number = free++;
                file = Name(package, number);
            }

            named.Add((channel, file, number));
        }

        return named;
    }

    private static string Name(TestPackage package, int number) =>
        $"{Folder}{package.Programme.Test}.{number.ToString("D3", CultureInfo.InvariantCulture)}";

    private static int? NumberOf(string file) =>
        file.StartsWith(Folder, StringComparison.OrdinalIgnoreCase) && !file.AsSpan(Folder.Length).Contains('/')
        && int.TryParse(Path.GetExtension(file.AsSpan()).TrimStart('.'), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;
}
