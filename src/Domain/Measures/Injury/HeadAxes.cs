namespace Toepan.Domain.Measures.Injury;

/// <summary>The head's three accelerations at class 1000 and their resultant, shared by the head's measures.</summary>
internal static class HeadAxes
{
    public const string Location = "HEAD0000";
    public const int FilterClass = 1000;

    public static (ComponentGroup Group, Trace Resultant) Of(OccupantContext context) => Accelerations.Of(context, Location, FilterClass);
}

/// <summary>Three accelerations at one place of the dummy and their resultant.</summary>
internal static class Accelerations
{
    public static (ComponentGroup Group, Trace Resultant) Of(OccupantContext context, string location, int filterClass, string axes = "XYZ")
    {
        var components = axes.Select(axis => Component.Ask(context, location, $"AC{axis}", filterClass)).ToList();
        return (new(context, components), Trace.Resultant(components));
    }
}
