using System.Globalization;

namespace Toepan.Web.Hosting.Cluster;

/// <summary>A process that cannot be mistaken for a later one of the same number.</summary>
/// <param name="Id">Process id.</param>
/// <param name="StartTicks">When it started, clock ticks since boot, as /proc says.</param>
internal sealed record ProcessIdentity(int Id, string StartTicks)
{
    /// <summary>Fields of /proc/PID/stat after the name in brackets: state is the first, start time the twentieth (proc(5), fields 3 and 22).</summary>
    private const int StateField = 0;
    private const int StartField = 19;

    public bool Alive => Of(Id) == this;

    /// <summary>The process of that number; null where there is none, or a dead one nobody has waited for.</summary>
    public static ProcessIdentity? Of(int id)
    {
        try
        {
            var stat = File.ReadAllText(string.Create(CultureInfo.InvariantCulture, $"/proc/{id}/stat"));
            var fields = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
            return fields[StateField] is "Z" or "X" ? null : new(id, fields[StartField]);
        }
        catch (IOException)
        {
            // No such process.
            return null;
        }
    }
}
