using System.Globalization;
using System.Text;

namespace Toepan.Api.Channels;

/// <summary>Samples as text/csv: a header line <c>time [s],CODE [unit]</c>, then a line a sample; invariant culture, shortest round-trip digits.</summary>
internal static class SampleCsv
{
    public static string Write(ChannelSamples samples)
    {
        var text = new StringBuilder(samples.Count * 24).Append("time [s],").Append(Quoted($"{samples.Code} [{samples.Unit}]")).Append('\n');
        for (var i = 0; i < samples.Count; i++)
        {
            var time = samples.Times?[i] ?? Instants.Of(samples.FromS + (i * samples.IntervalS));
            text.Append(time.ToString("R", CultureInfo.InvariantCulture)).Append(',');
            if (double.IsFinite(samples.Values[i]))
            {
                text.Append(samples.Values[i].ToString("R", CultureInfo.InvariantCulture));
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    private static string Quoted(string field) =>
        field.AsSpan().IndexOfAny("\",\r\n") < 0 ? field : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
