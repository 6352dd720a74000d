namespace Toepan.Web.Charts;

/// <summary>Tones of things drawn in a row: the first navy, then teal, ochre, plum.</summary>
public static class Tones
{
    private static readonly Tone[] Order = [Tone.Navy, Tone.Teal, Tone.Ochre, Tone.Plum];

    public static Tone At(int index) => Order[index % Order.Length];

    /// <summary>CSS class of colour and dash.</summary>
    public static string Class(int index) => $"tone-{At(index).ToString().ToLowerInvariant()}";
}
