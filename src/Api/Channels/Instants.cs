namespace Toepan.Api.Channels;

/// <summary>Times as the contract writes them: to the picosecond, so that start + i · interval reads 0.0003 and not 0.00030000000000000697.</summary>
internal static class Instants
{
    private const int Decimals = 12;

    public static double Of(double seconds) => Math.Round(seconds, Decimals) + 0.0;
}
