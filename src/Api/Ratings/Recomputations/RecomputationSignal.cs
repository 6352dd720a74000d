namespace Toepan.Api.Ratings.Recomputations;

/// <summary>Wakes the worker of this process; others look at the store every few seconds.</summary>
public sealed class RecomputationSignal : IDisposable
{
    private readonly SemaphoreSlim bell = new(0);

    public void Ring() => bell.Release();

    public Task Wait(TimeSpan atMost, CancellationToken cancellation) => bell.WaitAsync(atMost, cancellation);

    public void Dispose() => bell.Dispose();
}
