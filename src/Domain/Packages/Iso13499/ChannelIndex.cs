using System.Globalization;

namespace Toepan.Domain.Packages.Iso13499;

/// <summary>One line of the index: which code a channel file holds.</summary>
internal sealed record IndexEntry(int Number, string Code, int Line);

/// <summary>The .chn channel index: lines <c>Name of channel 001 : 11HEAD0000H3ACXA / free text</c>.</summary>
internal sealed class ChannelIndex
{
    private readonly Dictionary<int, IndexEntry> byNumber = [];

    private ChannelIndex(string file) => File = file;

    public string File { get; }

    public IndexEntry? this[int number] => byNumber.GetValueOrDefault(number);

    /// <summary>Takes the index lines out of a .chn header; a number named twice keeps its first line.</summary>
    public static ChannelIndex Of(IReadOnlyList<HeaderEntry> header, string file, ProblemList problems)
    {
        var index = new ChannelIndex(file);
        foreach (var entry in header)
        {
            if (NumberOf(entry.Key) is { } number && HeaderText.HasValue(entry.Value))
            {
                var code = ChannelFacts.CodeText(entry.Value.Split('/', 2)[0]);
                if (!index.byNumber.TryAdd(number, new IndexEntry(number, code, entry.Line)))
                {
                    problems.Warn(ProblemCodes.IndexDuplicate, $"The index names channel {number} twice; the first line is used.", new Place(file, entry.Line), entry.Value);
                }
            }
        }

        return index;
    }

    /// <summary>Holds the index against the files that are there.</summary>
    public void Compare(IReadOnlyList<HeaderEntry> header, IReadOnlyCollection<int> files, ProblemList problems)
    {
        var place = new Place(File);
        foreach (var entry in byNumber.Values.Where(entry => !files.Contains(entry.Number)))
        {
            problems.Warn(ProblemCodes.IndexLacksFile, $"The index names channel {entry.Number}, but there is no such file.", place.At(entry.Line), entry.Code);
        }

        foreach (var number in files.Where(number => !byNumber.ContainsKey(number)).Distinct())
        {
            problems.Warn(ProblemCodes.IndexLacksChannel, $"The index does not name channel {number}; its file is read all the same.", place, number.ToString(CultureInfo.InvariantCulture));
        }

        if (HeaderText.FindValue(header, HeaderKeys.NumberOfChannels) is { } stated
            && !(int.TryParse(stated.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count == files.Count))
        {
            problems.Warn(
                ProblemCodes.IndexCount, $"The index states {ProblemList.Show(stated.Value)} channels; {files.Count} files are there and are read.",
                place.At(stated.Line), stated.Value, files.Count.ToString(CultureInfo.InvariantCulture));
        }
    }

    /// <summary><c>Name of channel 001</c> → 1; null for other keys.</summary>
    public static int? NumberOf(string key)
    {
        var cut = key.LastIndexOf(' ');
        return cut > 0 && HeaderText.SameKey(key[..cut], HeaderKeys.NameOfChannel)
            && int.TryParse(key.AsSpan(cut + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;
    }
}
