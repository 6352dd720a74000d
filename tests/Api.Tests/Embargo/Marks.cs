using System.Globalization;
using System.Text;

namespace Toepan.Api.Tests.Embargo;

/// <summary>
/// Words that stand nowhere but in planted data, made from one seed: one stem for laboratory data, one for what administrators and managers alone may
/// see, and test codes. Consonants only, so no word of a page or a file holds one by chance.
/// </summary>
internal sealed class Marks
{
    public const string SeedVariable = "TOEPAN_EMBARGO_SEED";
    private const string Letters = "bcdfghjkmpqrtvwxz";
    private const int StemLength = 11;

    private Marks(int seed)
    {
        var random = new Random(seed);
        Stem = Word(random);
        Restricted = Word(random);
        Prefix = Stem[..4].ToUpperInvariant();
        FirstNumber = random.Next(100_000, 900_000);
    }

    public string Stem { get; }

    /// <summary>In invitations and tokens.</summary>
    public string Restricted { get; }

    /// <summary>First letters of every planted test code.</summary>
    public string Prefix { get; }

    private int FirstNumber { get; }

    /// <summary>Seed 1, or the one the environment names.</summary>
    public static Marks Chosen() => new(int.TryParse(Environment.GetEnvironmentVariable(SeedVariable), CultureInfo.InvariantCulture, out var seed) ? seed : 1);

    /// <summary>A mark that says what it is planted in; fits keys, names and texts.</summary>
    public string In(string what) => $"{Stem}-{what}";

    /// <summary>The nth planted test code.</summary>
    public string Test(int number) => string.Create(CultureInfo.InvariantCulture, $"{Prefix}-{FirstNumber + number}");

    /// <summary>Everything a response must not hold: stem and test codes, as they are, in hexadecimal, in base 64 at each alignment, and in UTF-16.</summary>
    public IEnumerable<string> Needles() => Forms(Stem).Concat(Forms($"{Prefix}-{FirstNumber / 1000}"));

    public static IEnumerable<string> Forms(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        yield return text;
        yield return Convert.ToHexString(bytes);
        yield return string.Join('\0', text.ToCharArray());
        for (var shift = 0; shift < 3; shift++)
        {
            // The letters that do not depend on what stands before and after.
            var whole = Convert.ToBase64String([.. new byte[shift], .. bytes]);
            yield return whole[(shift == 0 ? 0 : 4)..^4];
        }
    }

    private static string Word(Random random) => string.Concat(Enumerable.Range(0, StemLength).Select(_ => Letters[random.Next(Letters.Length)]));
}
