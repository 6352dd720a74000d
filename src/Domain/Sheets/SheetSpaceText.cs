namespace Toepan.Domain.Sheets;

/// <summary>How far the structure came, in lengths a reader can feel.</summary>
internal static class SheetSpaceText
{
    private const string Footwell = "structure.footwell.rearward";
    private const string Back = "structure.wheel-hub.rearward";
    private const string Up = "structure.wheel-hub.upward";
    private const string Opening = "structure.opening.closure";
    private static readonly string[] Panels = ["structure.knee-panel-outer.rearward", "structure.knee-panel-inner.rearward"];

    public static IReadOnlyList<SheetSentence> Sentences(SheetWriter writer, SheetFacts facts)
    {
        var sentences = new List<SheetSentence>();
        Move(sentences, "space.footwell", Footwell, writer, facts);
        if (writer.Has(Back, Up))
        {
            sentences.Add(writer.Say("space.wheel", "space.wheel", ("back", Back), ("backward", Backward(Back, writer, facts)), ("up", Up), ("upward", Upward(writer, facts))));
        }

        if (Panel(facts) is { } panel)
        {
            Move(sentences, "space.panel", panel, writer, facts);
        }

        if (writer.Has(Opening))
        {
            var shorter = facts.Measure(Opening)!.Value < 0 ? "direction.longer" : "direction.shorter";
            sentences.Add(writer.Say("space.opening", "space.opening", ("move", Opening), ("direction", writer.Word(shorter))));
        }

        return sentences.Count > 0 ? sentences : [writer.Say("space.absent", "space.absent")];
    }

    /// <summary>Words beside the side view, top to bottom as the driver meets them.</summary>
    public static IReadOnlyList<SheetSentence> Labels(SheetWriter writer, SheetFacts facts) =>
    [
        .. Panel(facts) is { } panel ? new[] { writer.Say("label.panel", "sidelabel.move", ("move", panel), ("direction", Backward(panel, writer, facts))) } : [],
        .. writer.Has(Footwell) ? new[] { writer.Say("label.footwell", "sidelabel.move", ("move", Footwell), ("direction", Backward(Footwell, writer, facts))) } : [],
        .. writer.Has(Back, Up)
            ? new[] { writer.Say("label.wheel", "sidelabel.wheel", ("back", Back), ("backward", Backward(Back, writer, facts)), ("up", Up), ("upward", Upward(writer, facts))) }
            : [],
    ];

    private static void Move(List<SheetSentence> sentences, string key, string figure, SheetWriter writer, SheetFacts facts)
    {
        if (writer.Has(figure))
        {
            sentences.Add(writer.Say(key, key, ("move", figure), ("direction", Backward(figure, writer, facts))));
        }
    }

    private static string? Panel(SheetFacts facts) => Panels.Where(code => facts.Measure(code) is not null).MaxBy(code => facts.Measure(code)!.Value);

    private static SheetSentence Backward(string code, SheetWriter writer, SheetFacts facts) =>
        writer.Word(facts.Measure(code)!.Value < 0 ? "direction.forward" : "direction.back");

    private static SheetSentence Upward(SheetWriter writer, SheetFacts facts) => writer.Word(facts.Measure(Up)!.Value < 0 ? "direction.down" : "direction.up");
}
