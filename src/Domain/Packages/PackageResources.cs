namespace Toepan.Domain.Packages;

/// <summary>Data files that travel inside the assembly.</summary>
internal static class PackageResources
{
    public static Stream Open(string name) =>
        typeof(PackageResources).Assembly.GetManifestResourceStream($"Packages/{name}")
        ?? throw new InvalidOperationException($"The assembly lacks its resource {name}.");
}
