using System.Text.Json;
using Toepan.Domain.Packages;
using Toepan.Domain.Ratings.Documents;

namespace Toepan.Domain.Ratings;

/// <summary>What reading a scheme document came to: a scheme unless there are problems, each with its line.</summary>
public sealed record SchemeReading(Scheme? Scheme, IReadOnlyList<Problem> Problems);

/// <summary>
/// A scheme document (JSON) → <see cref="Scheme"/>. Every problem is reported with its line: members missing, unknown, twice or of the
/// wrong kind; bounds that do not rise; risk functions, dummies, levels, severities and regions that do not exist; regions that the
/// overall rule forgets or counts twice.
/// </summary>
public static class SchemeReader
{
    /// <summary>Longest document accepted, bytes.</summary>
    public const int MaxBytes = 1 << 20;

    /// <param name="file">Name used in problems.</param>
    public static SchemeReading Read(Stream json, string file)
    {
        var problems = new DocumentProblems(file);
        using var buffer = new MemoryStream();
        var chunk = new byte[8192];
        for (int read; (read = json.Read(chunk)) > 0 && buffer.Length <= MaxBytes;)
        {
            buffer.Write(chunk, 0, read);
        }

        if (buffer.Length > MaxBytes)
        {
            problems.Add(1, "too-long", $"The document is longer than {MaxBytes} bytes.");
            return new(null, problems.All);
        }

        try
        {
            var scheme = new SchemeDocument(problems).Read(LinedJson.Parse(buffer.GetBuffer().AsSpan(0, (int)buffer.Length)));
            return new(problems.All.Count == 0 ? scheme : null, problems.All);
        }
        catch (JsonException broken)
        {
            problems.Add((int)(broken.LineNumber ?? 0) + 1, "not-json", $"The document is not JSON: {broken.Message}");
            return new(null, problems.All);
        }
    }
}
