using Toepan.Domain.Packages.Archive;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>All channels of a package: the numbered ISO/TS 13499 files, then the wide CSV files, then their explicit times.</summary>
internal sealed class ChannelsReader(PackageLayout layout, EntryExpander expander, ReadingBudget budget, ProblemList problems)
{
    /// <summary>Channels by number; null where the archive or a limit makes the package unreadable.</summary>
    /// <param name="indexHeader">Lines of the .chn index, or null where there is none or it cannot be read.</param>
    public IReadOnlyList<RecordedChannel>? Read(IReadOnlyList<HeaderEntry>? indexHeader)
    {
        if (expander.Broken || budget.Broken || !budget.TakeChannels(layout.ChannelFiles.Count + layout.WideFiles.Count, default))
        {
            return null;
        }

        var channels = new List<RecordedChannel>();
        if (!ReadNumbered(channels, Index(indexHeader)) || !ReadWide(channels))
        {
            return null;
        }

        TellDuplicates(channels);
        return [.. new ExplicitTimes(channels, problems).Resolve().OrderBy(channel => channel.Number)];
    }

    private ChannelIndex? Index(IReadOnlyList<HeaderEntry>? header)
    {
        if (layout.Index is null || header is null)
        {
            return null;
        }

        var index = ChannelIndex.Of(header, layout.Index.Name, problems);
        index.Compare(header, [.. layout.ChannelFiles.Select(pair => pair.Number)], problems);
        return index;
    }

    private bool ReadNumbered(List<RecordedChannel> channels, ChannelIndex? index)
    {
        var reader = new ChannelFileReader(budget, problems);
        foreach (var (entry, number) in layout.ChannelFiles)
        {
            if (Expand(entry) is not { } bytes || reader.Read(bytes, entry.Name, number, index?[number]) is not { } channel)
            {
                return false;
            }

            channels.Add(channel);
        }

        return true;
    }

    private bool ReadWide(List<RecordedChannel> channels)
    {
        var reader = new WideCsvReader(budget, problems);
        foreach (var entry in layout.WideFiles)
        {
            var last = channels.Count == 0 ? 0 : channels.Max(channel => channel.Number);
            if (Expand(entry) is not { } bytes || reader.Read(bytes, entry.Name, last + 1, channels.Count) is not { } more)
            {
                return false;
            }

            channels.AddRange(more);
        }

        return true;
    }

    private ReadOnlyMemory<byte>? Expand(ZipEntry entry) =>
        !expander.Broken && !budget.Broken && budget.TakeChannelBytes(entry.Bytes, new Place(entry.Name)) ? expander.Read(entry, budget.Limits.MaxChannelFileBytes) : null;

    private void TellDuplicates(List<RecordedChannel> channels)
    {
        var codes = new Dictionary<string, RecordedChannel>();
        var numbers = new Dictionary<int, RecordedChannel>();
        foreach (var channel in channels)
        {
            var place = new Place(channel.File, null, channel.Code);
            if (channel.Code.Length > 0 && !codes.TryAdd(channel.Code, channel))
            {
                problems.Warn(ProblemCodes.DuplicateCode, $"The code {ProblemList.Show(channel.Code)} is also that of {codes[channel.Code].File}.", place, channel.Code);
            }

            if (!numbers.TryAdd(channel.Number, channel))
            {
                problems.Warn(ProblemCodes.DuplicateNumber, $"Channel number {channel.Number} is also that of {numbers[channel.Number].File}.", place, $"{channel.Number}");
            }
        }
    }
}
