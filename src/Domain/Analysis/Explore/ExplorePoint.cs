namespace Toepan.Domain.Analysis.Explore;

/// <summary>One occupant of one run as a question over the programme sees it.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Vehicle">Key of the vehicle.</param>
/// <param name="Title">Make and model.</param>
/// <param name="Class">Key of its class.</param>
/// <param name="ClassTitle">Name of its class.</param>
/// <param name="ModelYear">First model year, where known.</param>
/// <param name="MassKg">Mass, where known.</param>
/// <param name="Group">What the groups are formed by, in words.</param>
/// <param name="Summary">Known by its results alone, without channels.</param>
/// <param name="X">Value of the first measure.</param>
/// <param name="Y">Value of the second measure; NaN where none is asked for.</param>
public sealed record ExplorePoint(
    string Test, string Vehicle, string Title, string Class, string ClassTitle, int? ModelYear, double? MassKg, string Group, bool Summary,
    double X, double Y);
