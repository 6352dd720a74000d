using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Programme;

public sealed class SerialMaskTests
{
    [Theory]
    [InlineData("TBV31DEMO00004711", "•••••••••••••4711")]
    [InlineData("TBV-31-004711", "•••-••-••4711")]
    [InlineData("AB12", "••12")]
    [InlineData("A", "•")]
    [InlineData("•••••••••••••4711", "•••••••••••••4711")]
    [InlineData("  TBV31DEMO00004711 ", "•••••••••••••4711")]
    [InlineData(" ", null)]
    [InlineData(null, null)]
    public void Of_Serial_KeepsTheLastFourAtMost(string? serial, string? masked) => Assert.Equal(masked, SerialMask.Of(serial));
}
