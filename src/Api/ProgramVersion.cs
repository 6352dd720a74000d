using System.Reflection;
using System.Runtime.InteropServices;

namespace Toepan.Api;

/// <summary>Which program computed something.</summary>
public static class ProgramVersion
{
    /// <summary>Runtime and its architecture, e.g. <c>.NET 10.0.1 X64</c>.</summary>
    public static string Runtime { get; } = $"{RuntimeInformation.FrameworkDescription} {RuntimeInformation.ProcessArchitecture}";

    /// <summary>Version and commit the program was built from, as the build recorded them.</summary>
    public static string Commit { get; } =
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";
}
