using System.Text.Json;

namespace Toepan.Domain.Packages.Manifest;

/// <summary>The member <c>structure</c>: unit and axes of the static measurements. Axes must be three different lines; they may be left-handed.</summary>
internal sealed class StructureReader(ProblemList problems, Dictionary<string, JsonElement> unknown)
{
    private const int LongestWord = 40;

    private static readonly string[] Units = ["mm", "cm", "m"];

    // Directions on one line stand together.
    private static readonly string[][] Lines = [["forward", "rearward"], ["left", "right"], ["up", "down"]];

    /// <summary>The frame; the default where there is no member; null where the package is refused for it.</summary>
    public StructureFrame? Read(JsonView? structure)
    {
        if (structure is null)
        {
            return StructureFrame.Default;
        }

        var unit = structure.Text("unit", LongestWord) ?? StructureFrame.Default.Unit;
        if (!Units.Contains(unit))
        {
            problems.Reject(ProblemCodes.BadValue, $"$.structure.unit is '{ProblemList.Show(unit)}'; it must be {string.Join(" or ", Units)}.", structure.PlaceOf("unit"), unit, string.Join(", ", Units));
        }

        var frame = structure.Object("axes") is { } axes ? Axes(axes, unit) : StructureFrame.Default with { Unit = unit };
        structure.KeepUnknown(unknown);
        return frame;
    }

    private StructureFrame? Axes(JsonView axes, string unit)
    {
        var (x, y, z) = (Direction(axes, "x"), Direction(axes, "y"), Direction(axes, "z"));
        axes.KeepUnknown(unknown);
        if (x is null || y is null || z is null)
        {
            return null;
        }

        var lines = new[] { x, y, z }.Select(direction => Array.FindIndex(Lines, line => line.Contains(direction)));
        if (lines.Distinct().Count() == 3)
        {
            return new StructureFrame(unit, x, y, z);
        }

        problems.Reject(ProblemCodes.Axes, "$.structure.axes must name three directions on three different lines.", axes.PlaceOf("x"), $"{x}, {y}, {z}");
        return null;
    }

    private string? Direction(JsonView axes, string axis)
    {
        var direction = axes.Text(axis, LongestWord, required: true);
        if (direction is null || Lines.Any(line => line.Contains(direction)))
        {
            return direction;
        }

        var words = string.Join(", ", Lines.SelectMany(line => line));
        problems.Reject(ProblemCodes.BadValue, $"$.structure.axes.{axis} is '{ProblemList.Show(direction)}'; it must be one of {words}.", axes.PlaceOf(axis), direction, words);
        return null;
    }
}
