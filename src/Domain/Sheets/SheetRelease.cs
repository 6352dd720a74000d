using Toepan.Domain.Ratings;

namespace Toepan.Domain.Sheets;

/// <summary>The manufacturer's answer, printed as it came.</summary>
/// <param name="From">Who answers.</param>
/// <param name="Text">Their words; the laboratory does not answer for them.</param>
public sealed record SheetAnswer(string From, DateOnly On, string Text);

/// <summary>Which version of a sheet this is.</summary>
/// <param name="Number">1, 2, …</param>
/// <param name="From">Since when it is public.</param>
/// <param name="To">Until when it was the current one; null = it still is.</param>
/// <param name="Why">Why there is another version than the first; null for the first.</param>
public sealed record SheetVersion(int Number, DateTimeOffset From, DateTimeOffset? To, string? Why);

/// <summary>What marks a sheet above everything else.</summary>
/// <param name="Kind"><c>level</c> the level changed; <c>corrected</c> a figure changed; <c>withdrawn</c> it is no longer valid; <c>superseded</c> a later version stands.</param>
/// <param name="Before">The level before, for <c>level</c>; null = not rated.</param>
/// <param name="After">The level after, for <c>level</c>.</param>
/// <param name="On">Day of the change.</param>
/// <param name="Why">The reason in words.</param>
/// <param name="Until">Last day the banner stands; null = for good.</param>
public sealed record SheetBanner(string Kind, ProtectionLevel? Before, ProtectionLevel? After, DateOnly On, string Why, DateOnly? Until);
