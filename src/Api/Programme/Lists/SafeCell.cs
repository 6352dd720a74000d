namespace Toepan.Api.Programme.Lists;

/// <summary>
/// Text that a spreadsheet would take for a formula (it begins with = + - @, a tab or a line break) is written with an apostrophe before it,
/// and read without. Common practice, no source.
/// </summary>
internal static class SafeCell
{
    private const string Dangerous = "=+-@\t\r\n";
    private const char Guard = '\'';

    public static string Write(string text) => text.Length > 0 && IsDangerous(text.TrimStart(Guard)) ? Guard + text : text;

    public static string Read(string text) => text.Length > 1 && text[0] == Guard && IsDangerous(text.TrimStart(Guard)) ? text[1..] : text;

    private static bool IsDangerous(string text) => text.Length > 0 && Dangerous.Contains(text[0], StringComparison.Ordinal);
}
