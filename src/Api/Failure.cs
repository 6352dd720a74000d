using Toepan.Domain.Packages;

namespace Toepan.Api;

/// <summary>Why a service gives no answer.</summary>
public enum FailureKind
{
    /// <summary>A value of the request is outside its limits (400).</summary>
    BadRequest,

    /// <summary>The viewer's roles do not allow it (403).</summary>
    Forbidden,

    /// <summary>There is no such thing (404).</summary>
    NotFound,

    /// <summary>It contradicts what is stored (409).</summary>
    Conflict,

    /// <summary>More bytes than the limit (413).</summary>
    TooLarge,

    /// <summary>What was sent cannot be read (422).</summary>
    Unreadable,
}

/// <summary>A refusal with its evidence; becomes problem details at the edge.</summary>
/// <param name="Kind">What kind of refusal.</param>
/// <param name="Title">The same few words for every refusal of this sort.</param>
/// <param name="Detail">One sentence: what, value, limit.</param>
public sealed record Failure(FailureKind Kind, string Title, string Detail)
{
    /// <summary>The reader's problems where a package could not be read; else empty.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Further members of the problem details, e.g. <c>sameContent</c>.</summary>
    public IReadOnlyDictionary<string, object?> Members { get; init; } = new Dictionary<string, object?>();

    public static Failure NotFound(string what, string key) => new(FailureKind.NotFound, $"Unknown {what}", $"There is no {what} '{key}'.");

    public static Failure Forbidden(string act) => new(FailureKind.Forbidden, "Not allowed", $"Your roles do not allow you to {act}.");

    public static Failure BadRequest(string detail) => new(FailureKind.BadRequest, "Bad request", detail);
}
