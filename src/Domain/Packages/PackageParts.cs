using Toepan.Domain.Packages.Archive;
using Toepan.Domain.Packages.Iso13499;
using Toepan.Domain.Packages.Manifest;
using Toepan.Domain.Packages.Sidecars;

namespace Toepan.Domain.Packages;

/// <summary>Reads the parts of one package in order. Goes on after a malformed part, to tell all its problems at once; stops at a damaged archive or a broken limit.</summary>
internal sealed class PackageParts(PackageLayout layout, EntryExpander expander, ReadingBudget budget, ProblemList problems)
{
    /// <summary>The package; null where it is refused.</summary>
    public TestPackage? Read(KnownProgramme known)
    {
        TellMissing();
        var programme = Text(layout.Programme) is { } json ? new ManifestReader(known, problems).Read(json, layout.Programme!.Name) : null;
        var testHeader = Header(layout.TestHeader);
        var index = Header(layout.Index);
        var channels = new ChannelsReader(layout, expander, budget, problems).Read(index);
        var before = problems.Rejections;
        var points = Table(layout.Points, PointsFile.Columns, []) is { } coordinates ? PointsFile.Read(coordinates) : [];
        var pointsKnown = problems.Rejections == before;
        var clearances = Table(layout.Clearances, ClearancesFile.Columns, []) is { } distances ? ClearancesFile.Read(distances, pointsKnown ? points : null) : [];
        var findings = Table(layout.Findings, FindingsFile.Required, FindingsFile.Optional) is { } rows
            ? FindingsFile.Read(rows, programme?.Occupants)
            : [];
        var films = Table(layout.Films, FilmsFile.Required, FilmsFile.Optional) is { } timings ? FilmsFile.Read(timings, layout.Attachments) : [];
        if (problems.Rejected || programme is null || channels is null || !layout.Attachments.All(expander.Skim))
        {
            return null;
        }

        TellOtherTest(testHeader, programme.Test);
        return new TestPackage
        {
            Programme = programme,
            TestHeader = testHeader ?? [],
            IndexHeader = index ?? [],
            Channels = channels,
            Points = points,
            Clearances = clearances,
            Findings = findings,
            Films = films,
            Attachments = Attached(),
            TopFolder = layout.TopFolder,
            ContentSha256 = EntryDigest.OfAll(expander.Digests),
        };
    }

    private Attachment[] Attached()
    {
        var hashes = expander.Digests.ToDictionary(digest => digest.Name, digest => Convert.ToHexStringLower(digest.Sha256), StringComparer.Ordinal);
        return [.. layout.Attachments.Select(entry => new Attachment(entry.Name, entry.Bytes, hashes[entry.Name]))];
    }

    private void TellMissing()
    {
        if (layout.Programme is null)
        {
            problems.Reject(ProblemCodes.NoProgramme, $"The package has no {PackageLayout.ProgrammeName}, at its root or in its one top folder.", new Place(PackageLayout.ProgrammeName));
        }

        if (layout.TestHeader is null)
        {
            problems.Reject(ProblemCodes.NoTestHeader, "The package has no .mme test header beside programme.json.");
        }

        if (layout.ChannelFiles.Count == 0 && layout.WideFiles.Count == 0)
        {
            problems.Reject(ProblemCodes.NoChannel, $"The package has no channel: no numbered file and no .csv under {PackageLayout.ChannelFolder}/.");
        }
        else if (layout.Index is null && layout.ChannelFiles.Count > 0)
        {
            problems.Warn(ProblemCodes.NoIndex, $"The package has no .chn channel index; its {layout.ChannelFiles.Count} channel files are read all the same.", default);
        }
    }

    private IReadOnlyList<HeaderEntry>? Header(ZipEntry? entry) =>
        Text(entry) is { } bytes ? HeaderFile.Read(bytes, new Place(entry!.Name), budget, problems) : null;

    private CsvTable? Table(ZipEntry? entry, string[] required, string[] optional) =>
        Text(entry) is { } bytes ? CsvTable.Open(bytes, new Place(entry!.Name), budget, problems, required, optional) : null;

    private ReadOnlyMemory<byte>? Text(ZipEntry? entry) =>
        entry is null || expander.Broken || budget.Broken ? null : expander.Read(entry, budget.Limits.MaxTextFileBytes);

    private void TellOtherTest(IReadOnlyList<HeaderEntry>? header, string test)
    {
        if (HeaderText.FindValue(header ?? [], HeaderKeys.TestReference) is { } reference && !reference.Value.Equals(test, StringComparison.OrdinalIgnoreCase))
        {
            problems.Note(ProblemCodes.TestDiffers, $"The test header calls the test '{ProblemList.Show(reference.Value)}', programme.json {test}; the latter is used.", new Place(layout.TestHeader!.Name, reference.Line), reference.Value);
        }
    }
}
