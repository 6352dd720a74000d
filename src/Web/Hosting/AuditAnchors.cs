using System.Text;
using Npgsql;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>
/// Notes number and hash of the history's last row in a file of the data folder, outside the database: whoever rewrites the database,
/// even its owner, cannot rewrite what was noted here, so a cut-off end and a chain written anew are found too.
/// </summary>
internal sealed partial class AuditAnchors(DataFolder folder, IServiceProvider services, TimeProvider clock, ILogger<AuditAnchors> log) : BackgroundService
{
    public const string FileName = "audit-anchors.txt";
    private static readonly TimeSpan Interval = TimeSpan.FromMinutes(5);

    /// <summary>Every row noted in the file of a data folder; empty where there is none.</summary>
    public static IReadOnlyList<AuditAnchor> Read(string folder)
    {
        var file = Path.Combine(folder, FileName);
        return File.Exists(file) ? [.. File.ReadLines(file).Select(line => AuditAnchor.Parse(line.Split(' ')[0])).OfType<AuditAnchor>()] : [];
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var last = Read(folder.Path) is [.., var latest] ? latest : null;
        while (!stoppingToken.IsCancellationRequested)
        {
            last = await Note(last, stoppingToken);
            await Task.Delay(Interval, clock, stoppingToken);
        }
    }

    private async Task<AuditAnchor?> Note(AuditAnchor? last, CancellationToken cancellation)
    {
        try
        {
            if (await Head(cancellation) is { } head && head != last)
            {
                Append($"{head} {clock.GetUtcNow().UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}\n");
                return head;
            }
        }
        catch (NpgsqlException problem)
        {
            NotNoted(log, problem.Message);
        }
        catch (IOException problem)
        {
            NotNoted(log, problem.Message);
        }

        return last;
    }

    private async Task<AuditAnchor?> Head(CancellationToken cancellation)
    {
        // Looked for only now: when this is made the private cluster has not been started.
        await using var command = services.GetRequiredService<NpgsqlDataSource>().CreateCommand("SELECT sequence, encode(hash, 'hex') FROM lab.audit ORDER BY sequence DESC LIMIT 1");
        await using var row = await command.ExecuteReaderAsync(cancellation);
        return await row.ReadAsync(cancellation) ? new(row.GetInt64(0), row.GetString(1)) : null;
    }

    private void Append(string line)
    {
        using var stream = new FileStream(Path.Combine(folder.Path, FileName), new FileStreamOptions
        {
            Mode = FileMode.Append, Access = FileAccess.Write, UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
        });
        stream.Write(Encoding.UTF8.GetBytes(line));
        stream.Flush(flushToDisk: true);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The end of the history could not be noted in the data folder; trying again. {Reason}")]
    private static partial void NotNoted(ILogger log, string reason);
}
