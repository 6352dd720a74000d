using System.Text;

namespace Toepan.Api.Security;

/// <summary>Base 32 of RFC 4648, section 6, without padding: what people copy by hand.</summary>
public static class Base32
{
    private const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
    private const int BitsPerCharacter = 5;
    private const int BitsPerByte = 8;

    public static string Encode(ReadOnlySpan<byte> bytes)
    {
        var text = new StringBuilder();
        var (buffer, bits) = (0, 0);
        foreach (var one in bytes)
        {
            buffer = ((buffer << BitsPerByte) | one) & 0xFFFF;
            for (bits += BitsPerByte; bits >= BitsPerCharacter; bits -= BitsPerCharacter)
            {
                text.Append(Alphabet[(buffer >> (bits - BitsPerCharacter)) & 0x1F]);
            }
        }

        if (bits > 0)
        {
            text.Append(Alphabet[(buffer << (BitsPerCharacter - bits)) & 0x1F]);
        }

        return text.ToString();
    }
}
