using System.Globalization;
using Toepan.Domain.Measures;
using Xunit;

namespace Toepan.Domain.Tests.Measures;

/// <summary>Twelve significant digits; second opinion: System.Decimal, which holds 28 digits exactly.</summary>
public sealed class DigitsTests
{
    [Theory]
    [InlineData(0.1 + 0.2, 0.3)]
    [InlineData(1234567890123.0, 1234567890120.0)]
    [InlineData(-1234567890125.0, -1234567890130.0)] // an exact half, away from zero
    [InlineData(1234567890125.0, 1234567890130.0)]
    [InlineData(1.0000000000005, 1.0)] // the double lies below the half
    [InlineData(999999999999.6, 1e12)]
    [InlineData(9.99999999999999e-300, 1e-299)]
    [InlineData(0.0, 0.0)]
    [InlineData(5e-324, 4.94065645841e-324)]
    public void Round12_Value_HasTwelveDigits(double value, double expected) => Assert.Equal(expected, Digits.Round12(value));

    [Fact]
    public void Round12_NegativeZero_IsPositive() => Assert.False(double.IsNegative(Digits.Round12(-0.0)));

    [Fact]
    public void Round12_RandomValues_AgreesWithDecimal()
    {
        var random = new Random(12);
        for (var i = 0; i < 2000; i++)
        {
            var value = random.NextDouble() + 1; // one digit before the point, so 11 decimals
            var exact = decimal.Parse(value.ToString("F27", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            Assert.Equal((double)Math.Round(exact, 11, MidpointRounding.AwayFromZero), Digits.Round12(value));
        }
    }

    [Fact]
    public void Round12_Twice_ChangesNothing()
    {
        var random = new Random(13);
        Assert.All(Enumerable.Range(0, 2000).Select(_ => (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-30, 30))), value =>
            Assert.Equal(Digits.Round12(value), Digits.Round12(Digits.Round12(value))));
    }

    [Fact]
    public void Round12_UnderACommaCulture_IsTheSame()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(0.333333333333, Digits.Round12(1.0 / 3));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
