using System.Text;
using Toepan.Api.Security;

namespace Toepan.Api.Tests.Security;

/// <summary>One-time codes and base 32 against the test vectors of their RFCs.</summary>
public sealed class TotpTests
{
    /// <summary>The 20-byte key of RFC 6238, appendix B, for HMAC-SHA-1.</summary>
    private static readonly byte[] Key = Encoding.ASCII.GetBytes("12345678901234567890");

    /// <summary>RFC 6238, appendix B, rows of mode SHA1.</summary>
    [Theory]
    [InlineData(59L, 0x1L, "94287082")]
    [InlineData(1111111109L, 0x23523ECL, "07081804")]
    [InlineData(1111111111L, 0x23523EDL, "14050471")]
    [InlineData(1234567890L, 0x273EF07L, "89005924")]
    [InlineData(2000000000L, 0x3F940AAL, "69279037")]
    [InlineData(20000000000L, 0x27BC86AAL, "65353130")]
    public void Code_Rfc6238Vectors_AreMet(long unixSeconds, long step, string code)
    {
        Assert.Equal(step, Totp.StepAt(DateTimeOffset.FromUnixTimeSeconds(unixSeconds)));
        Assert.Equal(code, Totp.Code(Key, step, digits: 8));
        Assert.Equal(code[2..], Totp.Code(Key, step));
    }

    /// <summary>RFC 4226, appendix D: the first ten counters, six digits.</summary>
    [Fact]
    public void Code_Rfc4226Vectors_AreMet() => Assert.Equal(
        ["755224", "287082", "359152", "969429", "338314", "254676", "287922", "162583", "399871", "520489"],
        Enumerable.Range(0, 10).Select(counter => Totp.Code(Key, counter)));

    [Theory]
    [InlineData(-2, false)]
    [InlineData(-1, true)]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void Match_OneStepEitherWay_IsTaken(int off, bool taken)
    {
        var now = DateTimeOffset.FromUnixTimeSeconds(1234567890);
        var step = Totp.StepAt(now) + off;

        Assert.Equal(taken ? step : null, Totp.Match(Key, Totp.Code(Key, step), now));
    }

    /// <summary>RFC 4648, section 10, without the padding.</summary>
    [Theory]
    [InlineData("", "")]
    [InlineData("f", "MY")]
    [InlineData("fo", "MZXQ")]
    [InlineData("foo", "MZXW6")]
    [InlineData("foob", "MZXW6YQ")]
    [InlineData("fooba", "MZXW6YTB")]
    [InlineData("foobar", "MZXW6YTBOI")]
    public void Base32_Rfc4648Vectors_AreMet(string text, string encoded) => Assert.Equal(encoded, Base32.Encode(Encoding.ASCII.GetBytes(text)));

    [Fact]
    public void Address_SpacesAndKey_AreAsAppsReadThem() => Assert.Equal(
        "otpauth://totp/Crash%20Lab:a.person?secret=GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ&issuer=Crash%20Lab&algorithm=SHA1&digits=6&period=30",
        Totp.Address("Crash Lab", "a.person", Key));
}
