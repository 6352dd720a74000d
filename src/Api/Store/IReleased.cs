namespace Toepan.Api.Store;

/// <summary>
/// A row of the <c>pub</c> schema. Every entity of that schema must be one: row-level security lets the public login see a row only from
/// <see cref="VisibleFrom"/> (inclusive) until <see cref="VisibleTo"/> (exclusive; null = for good).
/// </summary>
public interface IReleased
{
    DateTimeOffset VisibleFrom { get; }

    DateTimeOffset? VisibleTo { get; }
}
