using Toepan.Domain.Measures;
using Toepan.Domain.Packages;
using Toepan.Domain.Sheets;
using Toepan.Web.Charts;

namespace Toepan.Web.Sheets;

/// <summary>The side view of a sheet document, with its words in one language.</summary>
public sealed record SheetSide(SideView View, IReadOnlyList<SideLabel> Labels, string Scale, string Says)
{
    /// <summary>Length of the scale bar in words.</summary>
    private static readonly SheetFigure Bar = new()
    {
        Name = "scale", Kind = SheetFigureKind.Constant, Value = 250, Unit = "mm", Shown = [new("cm", 10, 0, null), new("in", 25.4, 1, null)],
    };

    public static SheetSide Of(SheetDocument document, SheetText text)
    {
        var view = SideView.Of([.. document.Space.Select(Point)]);
        (string Key, SidePoint? Point)[] parts = [("panel", view.KneePanel), ("footwell", view.Footwell), ("wheel", view.Wheel)];
        List<SideLabel> labels =
        [
            .. from part in parts
               let sentence = text.SpaceLabels.FirstOrDefault(label => label.Key == $"label.{part.Key}")
               where part.Point is not null && sentence is not null
               select new SideLabel(part.Point.After, text.Label($"part.{part.Key}"), sentence.Text),
        ];
        var says = string.Join("; ", labels.Select(label => $"{label.Title} {label.Figures}"));
        return new(view, labels, SheetNumbers.Text(Bar, SheetTexts.Find(text.Language) ?? SheetTexts.English), $"{text.Label("space.says")} {says}.");
    }

    private static PointDisplacement Point(SheetPoint p) => new(
        p.Point, new Coordinates(p.BeforeX, 0, p.BeforeZ), new Coordinates(p.AfterX, 0, p.AfterZ), p.Rearward, 0, p.Upward, 0, p.Uncertainty);
}
