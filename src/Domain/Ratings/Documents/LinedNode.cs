namespace Toepan.Domain.Ratings.Documents;

/// <summary>A value of a document that remembers its line; what JSON and YAML have in common.</summary>
/// <param name="Line">Line from 1.</param>
internal abstract record LinedNode(int Line);

/// <summary>Text, number, true, false or null as written (null is a null text).</summary>
internal sealed record LinedScalar(int Line, string? Text, bool IsNumber) : LinedNode(Line);

internal sealed record LinedList(int Line, IReadOnlyList<LinedNode> Items) : LinedNode(Line);

internal sealed record LinedObject(int Line, IReadOnlyList<LinedMember> Members) : LinedNode(Line);

internal sealed record LinedMember(string Name, int Line, LinedNode Value);
