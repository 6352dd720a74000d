namespace Toepan.Web.Components.Layout;

/// <summary>One step of the way to a page; the last has no address.</summary>
public sealed record Crumb(string Name, string? Address = null);
