namespace Toepan.Domain.Measures.Injury;

/// <summary>One load cell of a tibia: the upper one under the knee, the lower one over the ankle.</summary>
internal sealed record TibiaCell(Side Side, string Word, string Code)
{
    /// <summary>Filter class of tibia forces and moments ([j211-1], from memory).</summary>
    public const int FilterClass = 600;

    public string Location => $"TIBI{Side.Code}{Code}";

    public static TibiaCell Upper(Side side) => new(side, "upper", "UP");

    public static TibiaCell Lower(Side side) => new(side, "lower", "LO");

    public static IReadOnlyList<TibiaCell> Both(Side side) => [Upper(side), Lower(side)];

    /// <summary>The other cell of the same leg.</summary>
    public TibiaCell Other => Word == "upper" ? Lower(Side) : Upper(Side);

    public bool Has(OccupantContext context, string component) => Component.Exists(context, Location, component);

    public Component Ask(OccupantContext context, string component) => Component.Ask(context, Location, component, FilterClass);
}
