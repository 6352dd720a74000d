using Npgsql;
using Toepan.Api.Store;

namespace Toepan.Web.Hosting;

/// <summary>Looks once a second whether the private cluster lives, and starts it again with growing pauses while it does not.</summary>
internal sealed partial class ClusterSupervisor(
    EmbeddedServer server, IServiceProvider services, TimeProvider clock, ILogger<ClusterSupervisor> log) : BackgroundService
{
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestPause = TimeSpan.FromSeconds(30);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var pause = Interval;
        while (!stoppingToken.IsCancellationRequested)
        {
            await Task.Delay(pause, clock, stoppingToken);
            pause = await Look(stoppingToken) ? Interval : Longer(pause);
        }
    }

    /// <summary>True where the cluster lives now.</summary>
    private async Task<bool> Look(CancellationToken cancellation)
    {
        try
        {
            if (await server.Revive(cancellation))
            {
                // Connections of the dead server would fail on their first use.
                services.GetRequiredService<NpgsqlDataSource>().Clear();
                services.GetRequiredService<PublicDataSource>().Source.Clear();
                Revived(log);
            }

            return true;
        }
        catch (StartupRefusedException refusal)
        {
            NotRevived(log, refusal.Message);
            return false;
        }
        catch (IOException problem)
        {
            NotRevived(log, problem.Message);
            return false;
        }
    }

    private static TimeSpan Longer(TimeSpan pause) => pause * 2 < LongestPause ? pause * 2 : LongestPause;

    [LoggerMessage(Level = LogLevel.Warning, Message = "The private PostgreSQL had died and was started again.")]
    private static partial void Revived(ILogger log);

    [LoggerMessage(Level = LogLevel.Error, Message = "The private PostgreSQL has died and does not start; trying again. {Reason}")]
    private static partial void NotRevived(ILogger log, string reason);
}
