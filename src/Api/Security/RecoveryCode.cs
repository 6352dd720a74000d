using System.Security.Cryptography;

namespace Toepan.Api.Security;

/// <summary>A recovery code: 80 random bits in base 32, in groups of four, without regard to case, spaces and hyphens.</summary>
public static class RecoveryCode
{
    /// <summary>How many a person is given at a time.</summary>
    public const int Count = 10;
    private const int Bytes = 10;
    private const int Group = 4;

    public static string New() => string.Join('-', Base32.Encode(RandomNumberGenerator.GetBytes(Bytes)).Chunk(Group).Select(part => new string(part))).ToLowerInvariant();

    /// <summary>SHA-256 of the code's letters; with 80 random bits behind it, it needs neither salt nor stretching.</summary>
    public static byte[] Hash(string code) => TokenSecret.Hash(Plain(code));

    private static string Plain(string code) => string.Concat(code.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant();
}
