using Toepan.Domain.Programme;

namespace Toepan.Web.Pages.Programme;

/// <summary>Dummies in words.</summary>
public static class DummyWords
{
    /// <summary>"average man (H3)".</summary>
    public static string Long(DummyType dummy) => dummy switch
    {
        DummyType.H3 => "average man (H3)",
        _ => "small woman (HF)",
    };
}
