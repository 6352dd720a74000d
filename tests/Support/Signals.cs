using System.Diagnostics;
using System.Globalization;

namespace Toepan.Support;

/// <summary>POSIX signals to one process by its number.</summary>
public static class Signals
{
    public static void Send(string name, int process)
    {
        using var kill = Process.Start("kill", [$"-{name}", process.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }
}
