namespace Toepan.Web.Charts;

/// <summary>One figure of a tornado: where, in standard deviations of its usual scatter from the run's value, the level becomes another.</summary>
/// <param name="Label">The figure and its value.</param>
/// <param name="Better">At or below this the level is better; negative; null where it never is.</param>
/// <param name="BetterText">The same in the figure's unit; empty where it never is.</param>
/// <param name="Worse">Above this the level is worse; positive; null where it never is.</param>
/// <param name="WorseText">The same in the figure's unit.</param>
public sealed record TornadoRow(string Label, double? Better, string BetterText, double? Worse, string WorseText);
