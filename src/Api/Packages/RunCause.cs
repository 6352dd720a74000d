namespace Toepan.Api.Packages;

/// <summary>Who caused a reduction, when, by what act, and why.</summary>
/// <param name="By">Account or token name.</param>
/// <param name="At">When.</param>
/// <param name="What">The act, in a sentence without a full stop.</param>
/// <param name="Why">The reason given, or null.</param>
internal sealed record RunCause(string By, DateTimeOffset At, string What, string? Why)
{
    /// <summary>How the act of replacing a package begins.</summary>
    public const string Replaced = "Replaced package ";
}
