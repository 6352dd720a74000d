using Toepan.Web.Components;

namespace Toepan.Web.Tests.Components;

public sealed class LocalAddressTests
{
    [Theory]
    [InlineData("/tests/FO-0042?units=us", "/tests/FO-0042?units=us")]
    [InlineData("/", "/")]
    [InlineData(null, "/")]
    [InlineData("", "/")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("https://elsewhere.example/", "/")]
    [InlineData("javascript:alert(1)", "/")]
    [InlineData("/a\r\nSet-Cookie: x=y", "/")]
    public void OrBoard_AnyAddress_StaysOnThisSite(string? address, string expected) => Assert.Equal(expected, LocalAddress.OrBoard(address));
}
