namespace Toepan.Domain.Packages;

/// <summary>Every problem code the reader can give. Stable: machines may act on them.</summary>
public static class ProblemCodes
{
    // The archive. Each of these makes the package unreadable.
    public const string NotAZip = "package.not-a-zip";
    public const string Damaged = "package.damaged";
    public const string Unsupported = "package.unsupported";
    public const string Encrypted = "package.encrypted";
    public const string Link = "package.link";
    public const string UnsafeName = "package.unsafe-name";
    public const string DuplicateName = "package.duplicate-name";
    public const string Overlapping = "package.overlapping-entries";
    public const string TooManyBytes = "package.too-many-bytes";
    public const string TooManyEntries = "package.too-many-entries";
    public const string ExpandsTooFar = "package.expands-too-far";
    public const string Ratio = "package.ratio";

    // What the archive holds.
    public const string NoProgramme = "package.no-programme";
    public const string NoTestHeader = "package.no-test-header";
    public const string NoChannel = "package.no-channel";
    public const string SeveralOfAKind = "package.several-of-a-kind";
    public const string UnknownEntry = "package.unknown-entry";
    public const string IgnoredEntry = "package.ignored-entry";
    public const string MoreAlike = "package.more-alike";

    // Limits on text; each makes the package unreadable.
    public const string FileTooLong = "limit.file-bytes";
    public const string LineTooLong = "limit.line";
    public const string TooManyChannels = "limit.channels";
    public const string TooManySamples = "limit.samples";
    public const string TooMuchHeader = "limit.header";
    public const string TooManyRows = "limit.rows";

    /// <summary>A text file is in an encoding that is neither UTF-8 nor ISO 8859-1.</summary>
    public const string Encoding = "text.encoding";

    /// <summary>Decimal commas were read as decimal points.</summary>
    public const string DecimalComma = "text.decimal-comma";

    // programme.json. All but the unknown member, the missing seat and the odd repeat make the package unreadable.
    public const string JsonSyntax = "programme.syntax";
    public const string JsonTooDeep = "programme.too-deep";
    public const string JsonDuplicate = "programme.duplicate-member";
    public const string JsonText = "programme.text";
    public const string Missing = "programme.missing";
    public const string WrongType = "programme.type";
    public const string BadValue = "programme.value";
    public const string OutOfRange = "programme.range";
    public const string UnknownProcedure = "programme.unknown-procedure";
    public const string UnknownClass = "programme.unknown-class";
    public const string UnknownDummy = "programme.unknown-dummy";
    public const string DuplicatePosition = "programme.duplicate-position";
    public const string Axes = "programme.axes";
    public const string UnknownMember = "programme.unknown-member";
    public const string NoSeat = "programme.no-seat";

    // ISO/TS 13499 headers and index.
    public const string HeaderLine = "header.line";
    public const string HeaderDuplicate = "header.duplicate";
    public const string TestDiffers = "header.test-differs";
    public const string NoIndex = "index.absent";
    public const string IndexLacksChannel = "index.lacks-channel";
    public const string IndexLacksFile = "index.lacks-file";
    public const string IndexDuplicate = "index.duplicate";
    public const string IndexDiffers = "index.code-differs";
    public const string IndexCount = "index.count-differs";

    // One channel. The errors leave the package readable and the channel unused.
    public const string NoCode = "channel.no-code";
    public const string CodeLength = "channel.code-length";
    public const string CodeCharacters = "channel.code-characters";
    public const string CodeCase = "channel.code-case";
    public const string UnknownObject = "channel.unknown-object";
    public const string UnknownLocation = "channel.unknown-location";
    public const string UnknownDimension = "channel.unknown-dimension";
    public const string UnknownDirection = "channel.unknown-direction";
    public const string UnknownFilter = "channel.unknown-filter";
    public const string DuplicateCode = "channel.duplicate-code";
    public const string DuplicateNumber = "channel.duplicate-number";
    public const string NoUnit = "channel.no-unit";
    public const string NoInterval = "channel.no-interval";
    public const string BadInterval = "channel.bad-interval";
    public const string NoFirstSample = "channel.no-first-sample";
    public const string BadFirstSample = "channel.bad-first-sample";
    public const string NoSamples = "channel.no-samples";
    public const string BadSample = "channel.bad-sample";
    public const string CountDiffers = "channel.count-differs";
    public const string BadCount = "channel.bad-count";
    public const string BadAmplitudeClass = "channel.bad-amplitude-class";
    public const string NoReference = "channel.no-reference";
    public const string TimesNotUniform = "channel.times-not-uniform";
    public const string TimesUnusable = "channel.times-unusable";

    // Comma-separated files. Errors make the package unreadable.
    public const string CsvEmpty = "csv.empty";
    public const string CsvQuote = "csv.quote";
    public const string CsvFieldCount = "csv.field-count";
    public const string CsvMissingColumn = "csv.missing-column";
    public const string CsvUnknownColumn = "csv.unknown-column";
    public const string CsvDuplicateColumn = "csv.duplicate-column";
    public const string CsvSemicolon = "csv.semicolon";
    public const string CsvNumber = "csv.number";
    public const string CsvValue = "csv.value";
    public const string CsvNoUnits = "csv.no-units";
    public const string CsvTimeUnit = "csv.time-unit";

    // Rows of the sidecars.
    public const string PointTwice = "points.twice";
    public const string PointBlank = "points.blank";
    public const string NameCase = "points.name-case";
    public const string ClearanceTwice = "clearances.twice";
    public const string ClearancePoint = "clearances.unknown-point";
    public const string FindingKind = "findings.unknown-kind";
    public const string FindingRegion = "findings.unknown-region";
    public const string FindingPosition = "findings.unknown-position";
    public const string FilmUnknown = "films.unknown-file";
    public const string FilmTwice = "films.twice";
}
