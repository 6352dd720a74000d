namespace Toepan.Web.Components;

/// <summary>One entry of a choice: what is sent, what is read.</summary>
public sealed record Choice(string Value, string Text);
