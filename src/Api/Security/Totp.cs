using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Toepan.Api.Security;

/// <summary>
/// Time-based one-time passwords: RFC 6238 with HMAC-SHA-1, T0 = 0 and a step of 30 s, over the truncation of RFC 4226, section 5.3. What
/// every authenticator app makes.
/// </summary>
public static class Totp
{
    /// <summary>160 bits, RFC 4226, section 4, R6.</summary>
    public const int KeyBytes = 20;
    public const int Digits = 6;
    private const int StepSeconds = 30;

    /// <summary>Steps a clock may be off either way: RFC 6238, section 5.2, recommends at most one for the way through the network.</summary>
    private const int Drift = 1;

    public static long StepAt(DateTimeOffset at) => Math.DivRem(at.ToUnixTimeSeconds(), StepSeconds).Quotient;

    /// <param name="key">Shared key.</param>
    /// <param name="step">Number of the time step.</param>
    /// <param name="digits">6 to 8.</param>
    public static string Code(ReadOnlySpan<byte> key, long step, int digits = Digits)
    {
        Span<byte> counter = stackalloc byte[sizeof(long)];
        BinaryPrimitives.WriteInt64BigEndian(counter, step);
        Span<byte> mac = stackalloc byte[HMACSHA1.HashSizeInBytes];
#pragma warning disable CA5350 // RFC 6238 asks for HMAC-SHA-1 and apps know nothing else; HMAC does not rest on collision resistance.
        HMACSHA1.HashData(key, counter, mac);
#pragma warning restore CA5350
        var offset = mac[^1] & 0x0F;
        var number = BinaryPrimitives.ReadInt32BigEndian(mac[offset..]) & 0x7FFF_FFFF;
        return (number % (long)Math.Pow(10, digits)).ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
    }

    /// <summary>The time step whose code it is, within the drift around now; null where it is none.</summary>
    public static long? Match(ReadOnlySpan<byte> key, string code, DateTimeOffset now)
    {
        long? found = null;
        var given = Encoding.UTF8.GetBytes(code);
        var present = StepAt(now);
        for (var step = present - Drift; step <= present + Drift; step++)
        {
            if (CryptographicOperations.FixedTimeEquals(given, Encoding.UTF8.GetBytes(Code(key, step))))
            {
                found = step;
            }
        }

        return found;
    }

    /// <summary>What the QR code says: the otpauth address every app reads (a common practice that no standard fixes).</summary>
    public static string Address(string issuer, string account, ReadOnlySpan<byte> key)
    {
        var (service, person) = (Uri.EscapeDataString(issuer), Uri.EscapeDataString(account));
        return $"otpauth://totp/{service}:{person}?secret={Base32.Encode(key)}&issuer={service}&algorithm=SHA1&digits=6&period=30";
    }
}
