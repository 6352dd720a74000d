namespace Toepan.Api;

/// <summary>What a feature service answers: a value, or the reason there is none. Mapped to HTTP at the edge, to words on a page.</summary>
/// <param name="Value">The answer; null exactly when <paramref name="Failure"/> is set.</param>
/// <param name="Failure">Why there is no answer.</param>
public sealed record Outcome<T>(T? Value, Failure? Failure)
    where T : class
{
    public static implicit operator Outcome<T>(T value) => new(value, null);

    public static implicit operator Outcome<T>(Failure failure) => new(null, failure);

    /// <summary>The value turned into another; a failure stays as it is.</summary>
    public Outcome<TOther> Map<TOther>(Func<T, TOther> map)
        where TOther : class => Value is null ? new(null, Failure) : new(map(Value), null);
}

/// <summary>Makes outcomes whose value is an interface, which no implicit conversion may.</summary>
public static class Outcome
{
    public static Outcome<IReadOnlyList<T>> List<T>(IReadOnlyList<T> values) => new(values, null);
}
