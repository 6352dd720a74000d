namespace Toepan.Domain.Ratings.Documents;

/// <summary>A document that cannot be taken apart at all.</summary>
internal sealed class DocumentException(int line, string code, string message) : Exception(message)
{
    /// <summary>Line from 1.</summary>
    public int Line { get; } = line;

    public string Code { get; } = code;
}
