using System.Globalization;

namespace Toepan.Domain.Packages;

/// <summary>Counts what reading has already taken of the limits that hold for a whole package.</summary>
internal sealed class ReadingBudget(PackageLimits limits, ProblemList problems)
{
    private int headerLines;
    private long headerBytes;
    private long samples;
    private long channelBytes;

    public PackageLimits Limits => limits;

    /// <summary>True once a limit was broken: nothing more is read.</summary>
    public bool Broken { get; private set; }

    /// <summary>False, and the package is refused, where a line is longer than allowed.</summary>
    public bool TakeLine(int bytes, Place place) =>
        bytes <= limits.MaxLine || Refuse(ProblemCodes.LineTooLong, $"A line has {bytes} bytes; {limits.MaxLine} are allowed.", place, bytes, limits.MaxLine);

    public bool TakeHeaderLine(int bytes, Place place)
    {
        headerLines++;
        headerBytes += bytes;
        return TakeLine(bytes, place)
            && (headerLines <= limits.MaxHeaderLines || Refuse(ProblemCodes.TooMuchHeader, $"The package has more than {limits.MaxHeaderLines} header lines.", place, headerLines, limits.MaxHeaderLines))
            && (headerBytes <= limits.MaxHeaderBytes || Refuse(ProblemCodes.TooMuchHeader, $"The header lines have more than {limits.MaxHeaderBytes} bytes.", place, headerBytes, limits.MaxHeaderBytes));
    }

    /// <summary>Room for the samples of one more channel.</summary>
    public bool TakeSamples(int count, Place place)
    {
        samples += count;
        return (count <= limits.MaxSamples || Refuse(ProblemCodes.TooManySamples, $"The channel has more than {limits.MaxSamples} samples.", place, count, limits.MaxSamples))
            && (samples <= limits.MaxTotalSamples || Refuse(ProblemCodes.TooManySamples, $"The channels have more than {limits.MaxTotalSamples} samples together.", place, samples, limits.MaxTotalSamples));
    }

    public bool TakeChannelBytes(long bytes, Place place)
    {
        channelBytes += bytes;
        return channelBytes <= limits.MaxChannelBytes
            || Refuse(ProblemCodes.FileTooLong, $"The channel files have more than {limits.MaxChannelBytes} bytes together.", place, channelBytes, limits.MaxChannelBytes);
    }

    public bool TakeChannels(int count, Place place) =>
        count <= limits.MaxChannels || Refuse(ProblemCodes.TooManyChannels, $"The package has {count} channels; {limits.MaxChannels} are allowed.", place, count, limits.MaxChannels);

    private bool Refuse(string code, string message, Place place, long value, long limit)
    {
        Broken = true;
        problems.Reject(code, message, place, value.ToString(CultureInfo.InvariantCulture), limit.ToString(CultureInfo.InvariantCulture));
        return false;
    }
}
