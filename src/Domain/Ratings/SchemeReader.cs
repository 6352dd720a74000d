using Toepan.Domain.Packages;
using Toepan.Domain.Ratings.Documents;

namespace Toepan.Domain.Ratings;

/// <summary>What reading a scheme document came to: a scheme unless there are problems, each with its line.</summary>
/// <param name="Scheme">The scheme, or null where the document is broken or incoherent.</param>
/// <param name="Problems">What is wrong; empty with a scheme.</param>
/// <param name="Coherence">What was checked of the whole; empty where the document could not be read so far.</param>
public sealed record SchemeReading(Scheme? Scheme, IReadOnlyList<Problem> Problems, IReadOnlyList<CoherenceCheck> Coherence);

/// <summary>
/// A scheme document (JSON or YAML) → <see cref="Scheme"/>. Every problem is reported with its line: members missing, unknown, twice or of the
/// wrong kind; bounds that do not rise; risk functions, dummies, levels, severities and regions that do not exist; regions that the
/// overall rule forgets or counts twice; and rules that contradict one another (see <see cref="SchemeCoherence"/>).
/// </summary>
public static class SchemeReader
{
    /// <summary>Longest document accepted, bytes.</summary>
    public const int MaxBytes = 1 << 20;

    /// <summary>Whether a document of that name would be read as JSON, not YAML.</summary>
    public static bool IsJson(ReadOnlySpan<byte> bytes, string file) => DocumentText.IsJson(bytes, file);

    /// <param name="file">Name used in problems; its ending chooses JSON or YAML.</param>
    public static SchemeReading Read(Stream document, string file)
    {
        var problems = new DocumentProblems(file);
        using var buffer = new MemoryStream();
        var chunk = new byte[8192];
        for (int read; (read = document.Read(chunk)) > 0 && buffer.Length <= MaxBytes;)
        {
            buffer.Write(chunk, 0, read);
        }

        if (buffer.Length > MaxBytes)
        {
            problems.Add(1, "too-long", $"The document is longer than {MaxBytes} bytes.");
            return new(null, problems.All, []);
        }

        try
        {
            var lines = new SchemeLines();
            var scheme = new SchemeDocument(problems, lines).Read(DocumentText.Parse(buffer.GetBuffer().AsSpan(0, (int)buffer.Length), file));
            var coherence = problems.All.Count == 0 ? SchemeCoherence.Of(scheme, lines) : [];
            foreach (var failed in coherence.Where(check => !check.Passed))
            {
                problems.Add(failed.Line ?? lines.Root, failed.Check, failed.Text);
            }

            return new(problems.All.Count == 0 ? scheme : null, problems.All, coherence);
        }
        catch (DocumentException broken)
        {
            problems.Add(broken.Line, broken.Code, broken.Message);
            return new(null, problems.All, []);
        }
    }
}
