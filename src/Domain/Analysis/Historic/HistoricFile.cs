using System.Globalization;
using System.Text;
using Toepan.Domain.Packages;
using Toepan.Domain.Packages.Sidecars;

namespace Toepan.Domain.Analysis.Historic;

/// <summary>
/// Summary results without channels, as comma-separated values: UTF-8 (a byte-order mark is allowed), else ISO 8859-1; RFC 4180 with any line ends. One row a run and
/// seat; the fixed columns, then a column for each measure code. An empty cell is absent. The file is taken wholly or refused wholly.
/// </summary>
public static class HistoricFile
{
    /// <summary>What problems call the file.</summary>
    public const string Name = "results.csv";

    private const char Comma = ',';

    /// <summary>Reads a file from its start; the stream can seek and is within <see cref="HistoricLimits.MaxBytes"/>.</summary>
    public static HistoricReading Read(Stream file, HistoricLimits limits, CancellationToken cancellation = default)
    {
        var problems = new ProblemList();
        var place = new Place(Name);
        if (Encoded(file, cancellation) is not { } encoding)
        {
            problems.Reject(HistoricProblems.Unreadable, "The file is no text: it is UTF-16 or holds a NUL character. UTF-8 and ISO 8859-1 are read.", place.At(1));
            return Refusal(problems, 0);
        }

        var separator = Separator(Open(file, encoding));
        var reader = new CsvReader(Open(file, encoding), separator);
        if (separator != Comma)
        {
            problems.Warn(HistoricProblems.Semicolon, "Fields are apart by semicolons, and decimal commas are read; commas and decimal points are expected.", place.At(1));
        }

        var (runs, rows) = new HistoricRows(reader, separator != Comma, limits, problems).Read(cancellation);
        return problems.Rejected ? Refusal(problems, rows) : new(runs, rows, problems.ToList(), false);
    }

    private static HistoricReading Refusal(ProblemList problems, int rows) => new([], rows, problems.ToList(), true);

    private static StreamReader Open(Stream file, Encoding encoding)
    {
        file.Position = 0;
        return new StreamReader(file, encoding, detectEncodingFromByteOrderMarks: false, leaveOpen: true) is var reader && reader.Peek() == '\uFEFF' ? Skip(reader) : reader;
    }

    private static StreamReader Skip(StreamReader reader)
    {
        reader.Read();
        return reader;
    }

    // The whole file decides: valid UTF-8 is UTF-8. Null where it is no text.
    private static Encoding? Encoded(Stream file, CancellationToken cancellation)
    {
        var decoder = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetDecoder();
        var (bytes, characters) = (new byte[1 << 16], new char[1 << 16]);
        var utf8 = true;
        file.Position = 0;
        for (int read, first = 1; (read = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)) > 0; first = 0)
        {
            cancellation.ThrowIfCancellationRequested();
            if (bytes.AsSpan(0, read).Contains((byte)0) || (first == 1 && bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..]))
            {
                return null;
            }

            utf8 = utf8 && Decodes(decoder, bytes.AsSpan(0, read), characters, last: read < bytes.Length);
        }

        return utf8 ? Encoding.UTF8 : Encoding.Latin1;
    }

    private static bool Decodes(Decoder decoder, ReadOnlySpan<byte> bytes, char[] characters, bool last)
    {
        try
        {
            decoder.GetChars(bytes, characters, last);
            return true;
        }
        catch (DecoderFallbackException)
        {
            return false;
        }
    }

    private static char Separator(StreamReader text) => CsvTable.UsesSemicolons(text.ReadLine() ?? "") ? ';' : Comma;

    internal static string Written(int value) => value.ToString(CultureInfo.InvariantCulture);
}
