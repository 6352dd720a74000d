namespace Toepan.Domain.Measures;

/// <summary>
/// One edition of the measurement methods: what this code computes, with the settings in which editions may differ. A changed definition is a new
/// edition, kept beside the others; stored figures name the edition they were made under.
/// </summary>
/// <param name="Edition">Its word, e.g. <c>2</c>.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Changes">What it changes against the edition before, in a sentence.</param>
public sealed record Methods(string Edition, string Title, string Changes)
{
    /// <summary>Channel frequency class of the chest deflection; null = the class of the dummy's own certification [part572].</summary>
    public int? ChestDeflectionClass { get; init; }

    /// <summary>Edition 1.</summary>
    public static Methods First { get; } = new(MethodEdition.Current, "Methods, edition 1", "The first edition.");

    /// <summary>The editions this program can compute, the first one first. A later one is registered here and waits to be promoted.</summary>
    public static IReadOnlyList<Methods> Carried { get; } = [First];
}
