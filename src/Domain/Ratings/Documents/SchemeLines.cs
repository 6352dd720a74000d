namespace Toepan.Domain.Ratings.Documents;

/// <summary>The line each part of a scheme was read from.</summary>
internal sealed class SchemeLines
{
    private readonly Dictionary<object, int> lines = new(ReferenceEqualityComparer.Instance);

    /// <summary>Line of the whole, for parts without one.</summary>
    public int Root { get; set; } = 1;

    public T Keep<T>(T part, int line)
        where T : class
    {
        lines[part] = line;
        return part;
    }

    public int Of(object part) => lines.GetValueOrDefault(part, Root);
}
