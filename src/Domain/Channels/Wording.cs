using System.Globalization;

namespace Toepan.Domain.Channels;

/// <summary>Figures inside sentences about channels: invariant culture, six significant digits.</summary>
internal static class Wording
{
    public static string Figure(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    /// <summary>A time in s, written in ms.</summary>
    public static string Ms(double seconds) => (seconds * 1000).ToString("0.###", CultureInfo.InvariantCulture) + " ms";
}
