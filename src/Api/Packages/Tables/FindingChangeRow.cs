using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Tables;

/// <summary>One change of a run's findings made on the page; the package's own rows stay as they are. Append-only.</summary>
public sealed class FindingChangeRow : IEntityTypeConfiguration<FindingChangeRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Test { get; set; } = "";

    /// <summary>Id of the finding, <see cref="Domain.Packages.FindingId"/>.</summary>
    public string FindingId { get; set; } = "";

    /// <summary>1 for the first change of the finding, then 2, 3, …</summary>
    public int Version { get; set; }
    public FindingAct Act { get; set; }
    public double? TimeMs { get; set; }
    public string? Camera { get; set; }
    public string Kind { get; set; } = "";
    public string Region { get; set; } = "";
    public FindingSeverity Severity { get; set; }
    public string Note { get; set; } = "";
    public int? Position { get; set; }
    public string? Reason { get; set; }
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<FindingChangeRow> builder)
    {
        builder.ToTable("finding_change", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => new { row.Test, row.FindingId, row.Version }).IsUnique();
        builder.HasOne<TestRunRow>().WithMany().HasForeignKey(row => row.Test).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Act).HasConversion<string>();
        builder.Property(row => row.Severity).HasConversion<string>();
    }

    public static FindingChangeRow From(string test, FindingChange change) => new()
    {
        Test = test, FindingId = change.Id, Version = change.Version, Act = change.Act, TimeMs = change.Finding.TimeMs, Camera = change.Finding.Camera,
        Kind = change.Finding.Kind, Region = change.Finding.Region, Severity = change.Finding.Severity, Note = change.Finding.Note,
        Position = change.Finding.Position, Reason = change.Reason, By = change.By, At = change.At,
    };

    public FindingChange ToChange() => new(
        FindingId, Version, Act, new Finding(TimeMs, Camera, Kind, Region, Severity, Note, Position, 0), Reason, By, At);
}
