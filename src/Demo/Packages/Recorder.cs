using Toepan.Demo.Crash;
using Toepan.Demo.Scenario;
using Toepan.Domain.Packages;

namespace Toepan.Demo.Packages;

/// <summary>A true signal → the channel a data recorder would have stored: pre-trigger, offset, noise, resolution, defects.</summary>
/// <param name="random">Seeded; the only source of randomness.</param>
/// <param name="stride">Model steps a sample.</param>
public sealed class Recorder(Random random, int stride)
{
    private const double PreTriggerS = 0.060;
    private const int Bits = 16;

    /// <summary>Records one signal as channel <paramref name="number"/> of a run, or null where it was not recorded at all.</summary>
    public RecordedChannel? Record(TrueSignal signal, double stepS, int number, string test, IReadOnlyList<Defect> defects)
    {
        var own = defects.Where(defect => signal.Code.StartsWith(defect.CodeStart, StringComparison.Ordinal)).ToList();
        if (own.Any(defect => defect.Kind == DefectKind.Missing))
        {
            return null;
        }

        var interval = stepS * stride;
        var samples = own.Aggregate(Sampled(signal, interval), (values, defect) => Spoil(values, defect, interval));
        var amplitude = own.Any(defect => defect.Kind == DefectKind.Clipped) ? samples.Max(Math.Abs) : signal.AmplitudeClass;
        return new RecordedChannel
        {
            Code = signal.Code,
            File = $"Channel/{test}.{number:D3}",
            Number = number,
            Unit = Unit(signal.Unit),
            FirstSampleS = -PreTriggerS,
            IntervalS = interval,
            Samples = samples,
            AmplitudeClass = amplitude,
            HeaderFilterClass = "P",
            StatedCount = samples.Length,
            Header = Header(signal, interval, samples.Length, amplitude),
        };
    }

    private double[] Sampled(TrueSignal signal, double intervalS)
    {
        var before = (int)Math.Round(PreTriggerS / intervalS);
        var after = signal.Values.Length / stride;
        var resolution = 2 * signal.AmplitudeClass / (1 << Bits);
        var offset = (random.NextDouble() - 0.5) * 0.004 * signal.AmplitudeClass;
        var noise = (0.0012 * signal.Values.Max(Math.Abs)) + (0.9 * resolution);
        var samples = new double[before + after];
        for (var i = 0; i < samples.Length; i++)
        {
            var truth = i < before ? 0 : signal.Values[(i - before) * stride];
            samples[i] = Math.Round((truth + offset + (noise * Gaussian())) / resolution) * resolution;
            samples[i] = double.Round(samples[i], 6);
        }

        return samples;
    }

    private static double[] Spoil(double[] samples, Defect defect, double intervalS)
    {
        var limit = samples.Max(Math.Abs) * defect.Level;
        return defect.Kind switch
        {
            DefectKind.Dead => [.. samples.Select(_ => samples[0])],
            DefectKind.Reversed => [.. samples.Select(value => -value)],
            DefectKind.Clipped => [.. samples.Select(value => double.Round(Math.Clamp(value, -limit, limit), 6))],
            DefectKind.Ends => samples[..(int)((PreTriggerS + defect.Level) / intervalS)],
            _ => samples,
        };
    }

    private static List<HeaderEntry> Header(TrueSignal signal, double intervalS, int count, double amplitude)
    {
        (string Key, string Value)[] lines =
        [
            ("Test object number", "1"),
            ("Name of the channel", signal.Code),
            ("Channel code", signal.Code),
            ("Unit", Unit(signal.Unit)),
            ("Channel frequency class", "P"),
            ("Channel amplitude class", Text(amplitude)),
            ("Transducer type", "NOVALUE"),
            ("Sampling interval", Text(intervalS)),
            ("Time of first sample", Text(-PreTriggerS)),
            ("Number of samples", Text(count)),
            ("Reference channel", "implicit"),
        ];
        return [.. lines.Select((line, index) => new HeaderEntry(line.Key, line.Value, index + 1))];
    }

    private static string Unit(string unit) => unit == "N·m" ? "Nm" : unit;

    private static string Text(double value) => value.ToString("R", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Standard normal by Box and Muller.</summary>
    private double Gaussian() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
