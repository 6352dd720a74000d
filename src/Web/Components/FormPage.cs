namespace Toepan.Web.Components;

/// <summary>A page with a form that is sent without script: what was sent, as text, so that a slip is answered in words and nothing typed is lost.</summary>
public abstract class FormPage : FeaturePage
{
    /// <summary>Whether a form came back.</summary>
    protected bool Posted => HttpMethods.IsPost(Http.Request.Method) && Http.Request.HasFormContentType;

    /// <summary>Text of a field, empty where it was not sent.</summary>
    protected string Sent(string name) => Posted ? Http.Request.Form[name].ToString().Trim() : "";

    /// <summary>A field as the form shows it: what was sent, else what is stored.</summary>
    protected string Shown(string name, string? stored) => Posted ? Sent(name) : stored ?? "";

    /// <summary>A file that was sent, or null.</summary>
    protected IFormFile? SentFile(string name) => Posted && Http.Request.Form.Files[name] is { Length: > 0 } file ? file : null;
}
