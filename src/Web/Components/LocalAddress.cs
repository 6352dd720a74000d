namespace Toepan.Web.Components;

/// <summary>Keeps "where to go next" inside this site.</summary>
public static class LocalAddress
{
    /// <summary><paramref name="address"/> where it is a path of this site, else the board. Refuses other hosts, <c>//host</c> and <c>/\host</c>.</summary>
    public static string OrBoard(string? address)
    {
        var local = address is ['/', ..]
            && !address.StartsWith("//", StringComparison.Ordinal)
            && !address.StartsWith("/\\", StringComparison.Ordinal)
            && !address.Any(char.IsControl);
        return local ? address! : "/";
    }
}
