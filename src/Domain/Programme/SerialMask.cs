namespace Toepan.Domain.Programme;

/// <summary>A serial number that names one vehicle, and with it possibly an owner, is kept only in part.</summary>
public static class SerialMask
{
    /// <summary>Characters kept at the end.</summary>
    public const int Kept = 4;

    private const char Mask = '•';

    /// <summary>
    /// Every letter and digit but the last four becomes •; of a serial of eight or fewer only the last half stays. What is masked already stays as it
    /// is. Null and blank give null.
    /// </summary>
    public static string? Of(string? serial)
    {
        if (string.IsNullOrWhiteSpace(serial))
        {
            return null;
        }

        var characters = serial.Trim().ToCharArray();
        var telling = characters.Count(char.IsLetterOrDigit);
        var total = characters.Count(character => char.IsLetterOrDigit(character) || character == Mask);
        var hidden = telling - Math.Min(Kept, total / 2);
        for (var i = 0; i < characters.Length && hidden > 0; i++)
        {
            if (char.IsLetterOrDigit(characters[i]))
            {
                characters[i] = Mask;
                hidden--;
            }
        }

        return new string(characters);
    }
}
