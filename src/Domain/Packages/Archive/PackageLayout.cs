namespace Toepan.Domain.Packages.Archive;

/// <summary>The files of the archive by what they are for; names without the optional top folder, matched without regard to case.</summary>
internal sealed record PackageLayout
{
    public const string ProgrammeName = "programme.json";
    public const string ChannelFolder = "Channel";
    public const string PointsName = "Static/points.csv";
    public const string ClearancesName = "Static/clearances.csv";
    public const string FindingsName = "Movie/findings.csv";
    public const string FilmsName = "Movie/films.csv";
    public const string FilmFolder = "Movie";

    private static readonly string[] AttachmentFolders = ["Photo", "Movie", "Document", "Diagram", "Report", "Static"];

    public required string? TopFolder { get; init; }

    public ZipEntry? Programme { get; private init; }

    public ZipEntry? TestHeader { get; private init; }

    public ZipEntry? Index { get; private init; }

    /// <summary>ISO/TS 13499 channel files with their numbers, in order of number.</summary>
    public required IReadOnlyList<(ZipEntry Entry, int Number)> ChannelFiles { get; init; }

    public required IReadOnlyList<ZipEntry> WideFiles { get; init; }

    public ZipEntry? Points { get; private init; }

    public ZipEntry? Clearances { get; private init; }

    public ZipEntry? Findings { get; private init; }

    public ZipEntry? Films { get; private init; }

    public required IReadOnlyList<ZipEntry> Attachments { get; init; }

    /// <summary>Sorts the files, or gives null where names collide.</summary>
    public static PackageLayout? Of(IReadOnlyList<ZipEntry> files, ProblemList problems)
    {
        var wanted = new List<ZipEntry>(files.Count);
        foreach (var file in files)
        {
            if (EntryNames.IsLitter(file.FullName))
            {
                problems.Note(ProblemCodes.IgnoredEntry, $"{file.FullName} was added by a desktop system and is left out.", new Place(file.FullName));
            }
            else
            {
                wanted.Add(file);
            }
        }

        var top = TopFolderOf(wanted);
        var entries = top is null ? wanted : wanted.ConvertAll(file => file with { Name = file.Name[(top.Length + 1)..] });
        return NamesCollide(entries, problems) ? null : Sort(entries, top, problems);
    }

    private static PackageLayout Sort(List<ZipEntry> entries, string? top, ProblemList problems)
    {
        ZipEntry? Named(string name) => entries.Find(entry => entry.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
        var layout = new PackageLayout
        {
            TopFolder = top,
            Programme = Named(ProgrammeName),
            TestHeader = Only(entries.FindAll(entry => entry.IsIn("") && entry.HasExtension(".mme")), problems),
            Index = Only(entries.FindAll(entry => entry.IsIn(ChannelFolder) && entry.HasExtension(".chn")), problems),
            ChannelFiles = [.. entries.Select(entry => (Entry: entry, Number: ChannelNumber(entry))).Where(pair => pair.Number >= 0)
                .OrderBy(pair => pair.Number).ThenBy(pair => pair.Entry.Name, StringComparer.Ordinal)],
            WideFiles = [.. entries.FindAll(entry => entry.IsIn(ChannelFolder) && entry.HasExtension(".csv")).OrderBy(entry => entry.Name, StringComparer.Ordinal)],
            Points = Named(PointsName),
            Clearances = Named(ClearancesName),
            Findings = Named(FindingsName),
            Films = Named(FilmsName),
            Attachments = [],
        };
        var read = layout.Parsed().ToHashSet();
        var attachments = entries.Where(entry => !read.Contains(entry)).OrderBy(entry => entry.Name, StringComparer.Ordinal).ToList();
        foreach (var entry in attachments.Where(entry => !IsExpectedAttachment(entry)))
        {
            problems.Note(ProblemCodes.UnknownEntry, $"{entry.Name} is no file this version knows; it is kept as an attachment.", new Place(entry.Name));
        }

        return layout with { Attachments = attachments };
    }

    /// <summary>Every file that is read, not only kept.</summary>
    private IEnumerable<ZipEntry> Parsed() =>
        new[] { Programme, TestHeader, Index, Points, Clearances, Findings, Films }.OfType<ZipEntry>()
            .Concat(ChannelFiles.Select(pair => pair.Entry)).Concat(WideFiles);

    // The one folder everything is in, where programme.json is not at the root.
    private static string? TopFolderOf(List<ZipEntry> files)
    {
        if (files.Count == 0 || files.Any(file => !file.Name.Contains('/', StringComparison.Ordinal)))
        {
            return null;
        }

        static string First(string name) => name[..name.IndexOf('/', StringComparison.Ordinal)];
        var top = First(files[0].Name);
        return files.All(file => First(file.Name).Equals(top, StringComparison.OrdinalIgnoreCase)) ? top : null;
    }

    private static bool NamesCollide(List<ZipEntry> entries, ProblemList problems)
    {
        var names = new Dictionary<string, string>();
        foreach (var entry in entries)
        {
            if (!names.TryAdd(EntryNames.Key(entry.Name), entry.Name))
            {
                problems.Reject(ProblemCodes.DuplicateName, $"{entry.Name} is in the package twice, or differs from another name only in case.", new Place(entry.Name), entry.Name);
                return true;
            }
        }

        var both = names.Keys.SelectMany(FoldersOf).Select(folder => names.GetValueOrDefault(folder)).FirstOrDefault(name => name is not null);
        if (both is not null)
        {
            problems.Reject(ProblemCodes.DuplicateName, $"{both} is both a file and a folder.", new Place(both), both);
        }

        return both is not null;
    }

    private static IEnumerable<string> FoldersOf(string name)
    {
        for (var cut = name.IndexOf('/', StringComparison.Ordinal); cut >= 0; cut = name.IndexOf('/', cut + 1))
        {
            yield return name[..cut];
        }
    }

    private static ZipEntry? Only(List<ZipEntry> candidates, ProblemList problems)
    {
        candidates.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        if (candidates.Count > 1)
        {
            problems.Warn(
                ProblemCodes.SeveralOfAKind, $"There are {candidates.Count} {candidates[0].Extension} files; {candidates[0].Name} is read, the others are kept as attachments.",
                new Place(candidates[1].Name), candidates[1].Name);
        }

        return candidates.FirstOrDefault();
    }

    // FO-0042.001 → 1; −1 for anything else.
    private static int ChannelNumber(ZipEntry entry) =>
        entry.IsIn(ChannelFolder) && entry.Extension is { Length: >= 2 and <= 6 } extension && extension.AsSpan(1).IndexOfAnyExceptInRange('0', '9') < 0
            ? int.Parse(extension.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture)
            : -1;

    private static bool IsExpectedAttachment(ZipEntry entry) =>
        Array.Exists(AttachmentFolders, folder => entry.Name.StartsWith(folder + "/", StringComparison.OrdinalIgnoreCase))
        || entry.HasExtension(".txt");
}
