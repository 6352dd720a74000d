using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Toepan.Api;

/// <summary>Outcomes at the edge: a value becomes 200, a failure RFC 9457 problem details.</summary>
internal static class ApiAnswers
{
    public static Results<Ok<TJson>, ProblemHttpResult> Answer<T, TJson>(this Outcome<T> outcome, Func<T, TJson> json)
        where T : class =>
        outcome.Value is { } value ? TypedResults.Ok(json(value)) : outcome.Failure!.ToProblem();

    public static Results<Ok<T>, ProblemHttpResult> Answer<T>(this Outcome<T> outcome)
        where T : class => outcome.Answer(value => value);

    public static Results<Created<TJson>, ProblemHttpResult> AnswerCreated<T, TJson>(
        this Outcome<T> outcome, Func<T, string> location, Func<T, TJson> json)
        where T : class =>
        outcome.Value is { } value ? TypedResults.Created(location(value), json(value)) : outcome.Failure!.ToProblem();

    public static ProblemHttpResult ToProblem(this Failure failure)
    {
        var members = new Dictionary<string, object?>(failure.Members);
        if (failure.Problems.Count > 0)
        {
            members["problems"] = failure.Problems;
        }

        return TypedResults.Problem(
            detail: failure.Detail, statusCode: Status(failure.Kind), title: failure.Title, extensions: members);
    }

    private static int Status(FailureKind kind) => kind switch
    {
        FailureKind.BadRequest => StatusCodes.Status400BadRequest,
        FailureKind.Forbidden => StatusCodes.Status403Forbidden,
        FailureKind.NotFound => StatusCodes.Status404NotFound,
        FailureKind.Conflict => StatusCodes.Status409Conflict,
        FailureKind.TooLarge => StatusCodes.Status413PayloadTooLarge,
        FailureKind.Unreadable => StatusCodes.Status422UnprocessableEntity,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of failure."),
    };
}
