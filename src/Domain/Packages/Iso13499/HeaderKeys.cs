namespace Toepan.Domain.Packages.Iso13499;

/// <summary>Descriptors of ISO/TS 13499 headers that mean something to this version (edition 1.6, from memory). All others are kept.</summary>
internal static class HeaderKeys
{
    public const string TestReference = "Laboratory test ref. number";
    public const string NumberOfChannels = "Number of channels";
    public const string NameOfChannel = "Name of channel";
    public const string ChannelName = "Name of the channel";
    public const string ChannelCode = "Channel code";
    public const string Unit = "Unit";
    public const string FilterClass = "Channel frequency class";
    public const string AmplitudeClass = "Channel amplitude class";
    public const string Interval = "Sampling interval";
    public const string FirstSample = "Time of first sample";
    public const string Count = "Number of samples";
    public const string Reference = "Reference channel";
    public const string ReferenceName = "Reference channel name";

    /// <summary>Value of <see cref="Reference"/> where another channel holds the times.</summary>
    public const string Explicit = "explicit";

    /// <summary>Channel keys that must not stand twice with different values.</summary>
    public static IReadOnlyList<string> Single { get; } =
        [ChannelCode, Unit, FilterClass, AmplitudeClass, Interval, FirstSample, Count, Reference, ReferenceName];
}
