using Toepan.Domain.Channels;

namespace Toepan.Domain.Analysis.Traces;

/// <summary>A trace in plain words, short enough to stand at a line's end.</summary>
public static class TraceWords
{
    public static string Of(Trace trace)
    {
        var words = Of(trace.Expression);
        return trace.OnlyTest is { } test ? $"{test} {words}" : words;
    }

    private static string Of(TraceExpression expression) => expression switch
    {
        ChannelTrace channel => ChannelWords.Of(channel.Code),
        FunctionTrace { Arguments: [var inner] } function when function.Function == TraceFunction.Negative => $"−{Of(inner)}",
        FunctionTrace { Arguments: [var inner] } function when function.Function == TraceFunction.Integral => $"∫ {Of(inner)}",
        FunctionTrace function when function.Function == TraceFunction.Difference => $"{Within(function, 0)} − {Within(function, 1)}",
        FunctionTrace function when function.Function == TraceFunction.TibiaIndex => $"{Without(function)} index",
        FunctionTrace function when function.Function == TraceFunction.Condyle => "neck moment at the condyle",
        FunctionTrace function when function.Function == TraceFunction.Resultant => $"{Without(function)} resultant",
        FunctionTrace function => $"{function.Function.Name} of {string.Join(", ", function.Arguments.Select(Of).Distinct())}",
        _ => expression.ToString()!,
    };

    /// <summary>One side of a difference, with its run where there are several.</summary>
    private static string Within(FunctionTrace function, int index) =>
        function.Channels.Select(channel => channel.Test).Distinct().Count() > 1 ? $"{function.Arguments[index].Channels.First().Test} {Of(function.Arguments[index])}" : Of(function.Arguments[index]);

    /// <summary>The words of the first part without its direction and dimension.</summary>
    private static string Without(FunctionTrace function)
    {
        var first = Of(function.Arguments[0]).Split(' ');
        return string.Join(' ', first.Where(word => word.Length > 1 && word is not ("acceleration" or "moment" or "force")));
    }
}
