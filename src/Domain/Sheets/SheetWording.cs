namespace Toepan.Domain.Sheets;

/// <summary>A text of an editor for one place of one sheet.</summary>
/// <param name="Language">Language tag.</param>
/// <param name="Key">Place on the sheet: the key of its sentence, or <c>addition.SECTION</c>.</param>
/// <param name="Standard">
/// Key of the standard text it stands for. It is used only while the facts still lead to that text: a wording written for "the structure gave way" is not kept
/// when the reason becomes a fire.
/// </param>
/// <param name="Template">The text, figures bound by name in braces.</param>
public sealed record SheetWording(string Language, string Key, string Standard, string Template);
