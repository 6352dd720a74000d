using System.Globalization;
using Toepan.Domain.Packages.Iso13499;

namespace Toepan.Domain.Packages.Writing;

/// <summary>The .mme test header and the .chn channel index: as they were read, or made where there were none.</summary>
internal static class HeaderFilesWriter
{
    private const string FormatEdition = "1.6";

    public static byte[] TestHeader(TestPackage package)
    {
        var programme = package.Programme;
        IEnumerable<HeaderEntry> header = package.TestHeader.Count > 0 ? package.TestHeader :
        [
            new("Data format edition number", FormatEdition, 0),
            new("Laboratory name", programme.Laboratory ?? HeaderText.NoValue, 0),
            new(HeaderKeys.TestReference, programme.Test, 0),
            new("Date of the test", programme.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), 0),
            new("Type of the test", programme.Procedure, 0),
            new("Name of test object 1", $"{programme.Vehicle.Make} {programme.Vehicle.Model}".Trim() is { Length: > 0 } name ? name : HeaderText.NoValue, 0),
        ];
        return TextBytes.Of(HeaderWriter.Lines(header));
    }

    public static byte[] Index(TestPackage package, IReadOnlyList<(RecordedChannel Channel, string File, int Number)> channels)
    {
        var count = channels.Count.ToString(CultureInfo.InvariantCulture);
        if (package.IndexHeader.Count == 0)
        {
            return TextBytes.Of(HeaderWriter.Lines(
            [
                new("Instrumentation standard", HeaderText.NoValue, 0),
                new(HeaderKeys.NumberOfChannels, count, 0),
                .. channels.Select(Line),
            ]));
        }

        // A file the recorded index did not name stays unnamed: its reader is told the same again. Files that are new get their lines.
        var index = package.IndexHeader.ToList();
        var added = channels.Where(channel => channel.File != channel.Channel.File && !index.Exists(entry => ChannelIndex.NumberOf(entry.Key) == channel.Number)).ToList();
        if (added.Count > 0)
        {
            index = HeaderWriter.Set(index, HeaderKeys.NumberOfChannels, count);
            index.AddRange(added.Select(Line));
        }

        return TextBytes.Of(HeaderWriter.Lines(index));
    }

    private static HeaderEntry Line((RecordedChannel Channel, string File, int Number) channel)
    {
        var name = HeaderText.FindValue(channel.Channel.Header, HeaderKeys.ChannelName)?.Value ?? channel.Channel.Code;
        return new($"{HeaderKeys.NameOfChannel} {channel.Number.ToString("D3", CultureInfo.InvariantCulture)}", $"{channel.Channel.Code} / {name}", 0);
    }
}
