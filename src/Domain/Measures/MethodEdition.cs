namespace Toepan.Domain.Measures;

/// <summary>The edition of the measurement methods this code computes; named beside every figure.</summary>
public static class MethodEdition
{
    public const string Current = "1";
}
