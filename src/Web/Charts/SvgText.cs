using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Toepan.Web.Charts;

/// <summary>An SVG text element. Razor reads a literal &lt;text&gt; tag in code as its own, so it is written here.</summary>
public sealed class SvgText : ComponentBase
{
    [Parameter, EditorRequired]
    public string Text { get; set; } = "";

    [Parameter(CaptureUnmatchedValues = true)]
    public IReadOnlyDictionary<string, object>? Attributes { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddMultipleAttributes(1, Attributes);
        builder.AddContent(2, Text);
        builder.CloseElement();
    }
}
