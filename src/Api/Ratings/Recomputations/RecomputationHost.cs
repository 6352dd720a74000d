using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Toepan.Api.Ratings.Recomputations;

/// <summary>Starts the worker after the store: a host makes all its hosted services before it starts the first, and the worker needs connections.</summary>
internal sealed class RecomputationHost(IServiceProvider services) : IHostedService
{
    private RecomputationWorker? worker;

    public Task StartAsync(CancellationToken cancellationToken)
    {
        worker = services.GetRequiredService<RecomputationWorker>();
        return worker.StartAsync(cancellationToken);
    }

    public Task StopAsync(CancellationToken cancellationToken) => worker?.StopAsync(cancellationToken) ?? Task.CompletedTask;
}
