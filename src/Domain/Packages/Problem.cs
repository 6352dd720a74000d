namespace Toepan.Domain.Packages;

/// <summary>How much a problem weighs.</summary>
public enum ProblemSeverity
{
    /// <summary>Worth knowing, changes nothing.</summary>
    Note,

    /// <summary>Read and used, but somebody should look.</summary>
    Warning,

    /// <summary>Could not be used: the package, or the one channel or row it names.</summary>
    Error,
}

/// <summary>Something wrong or odd in a package or a run, with its evidence.</summary>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Code">Stable dotted key, e.g. <c>channel.clipped</c>, <c>package.not-a-zip</c>.</param>
/// <param name="Message">One sentence for a person: what, where, value, limit.</param>
/// <param name="File">Entry of the package, as written there, without the optional top folder; null where no file is concerned.</param>
/// <param name="Line">Line number from 1, or null.</param>
/// <param name="Channel">Channel code concerned, or null.</param>
/// <param name="Value">The offending value as text, or null.</param>
/// <param name="Limit">The limit it broke as text, or null.</param>
/// <param name="Column">Column of a table concerned, or null.</param>
public sealed record Problem(
    ProblemSeverity Severity, string Code, string Message, string? File = null, int? Line = null,
    string? Channel = null, string? Value = null, string? Limit = null, string? Column = null);
