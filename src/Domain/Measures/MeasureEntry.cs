namespace Toepan.Domain.Measures;

/// <summary>One measure of edition 1 as a reader meets it.</summary>
/// <param name="Code">Its code; <c>&lt;point&gt;</c> and <c>&lt;name&gt;</c> stand for a name the procedure or package gives.</param>
/// <param name="Title">What it is, in plain words.</param>
/// <param name="Unit">Unit; empty for a dimensionless measure.</param>
/// <param name="FilterClass">Channel frequency class of its inputs, in words; "–" where it has none.</param>
/// <param name="Explains">The type that computes it; its doc comment is the measure's explanation.</param>
public sealed record MeasureEntry(string Code, string Title, string Unit, string FilterClass, Type Explains)
{
    /// <summary>File that computes it: one type a file, namespace = folder.</summary>
    public string File => $"src/{Explains.FullName!["Toepan.".Length..].Replace('.', '/')}.cs";
}
