using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Toepan.Api.Security;

/// <summary>The secret of a bearer token: 256 random bits in base64url behind a prefix by which scanners of leaked text know it.</summary>
public static class TokenSecret
{
    public const string Prefix = "toepan_";
    private const int Bytes = 32;

    public static string New() => Prefix + NewText();

    /// <summary>The random part alone: the secret of a link.</summary>
    public static string NewText() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>SHA-256 of the secret's text; with 256 random bits in it, it needs neither salt nor stretching.</summary>
    public static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}
