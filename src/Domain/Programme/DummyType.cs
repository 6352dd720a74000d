namespace Toepan.Domain.Programme;

/// <summary>
/// The dummies of edition 1, named by their ISO/TS 13499 code: <c>H3</c> the average-man (50th percentile) frontal dummy,
/// <c>HF</c> the small-woman (5th percentile) frontal dummy.
/// </summary>
public enum DummyType
{
    /// <summary>Average man, 50th percentile; ISO/TS 13499 code H3.</summary>
    H3,

    /// <summary>Small woman, 5th percentile; ISO/TS 13499 code HF.</summary>
    HF,
}
