using Toepan.Domain.Sheets;

namespace Toepan.Web.Sheets;

/// <summary>Languages as an address asks for them.</summary>
public static class SheetLanguages
{
    /// <summary>A language this build carries; anything else is English.</summary>
    public static string Known(string? asked) => SheetTexts.Find(asked ?? "")?.Language ?? SheetTexts.English.Language;

    /// <summary>The language's own name.</summary>
    public static string Name(string language) => System.Globalization.CultureInfo.GetCultureInfo(language).NativeName;
}
