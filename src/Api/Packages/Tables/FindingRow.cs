using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Tables;

/// <summary>One row of Movie/findings.csv.</summary>
public sealed class FindingRow : IEntityTypeConfiguration<FindingRow>, IAppendOnly
{
    public string PackageSha256 { get; set; } = "";
    public int Number { get; set; }
    public double? TimeMs { get; set; }
    public string? Camera { get; set; }
    public string Kind { get; set; } = "";
    public string Region { get; set; } = "";
    public FindingSeverity Severity { get; set; }
    public string Note { get; set; } = "";
    public int? Position { get; set; }
    public int Line { get; set; }

    public void Configure(EntityTypeBuilder<FindingRow> builder)
    {
        builder.ToTable("finding", Schemas.Lab).HasKey(row => new { row.PackageSha256, row.Number });
        builder.HasOne<PackageRow>().WithMany().HasForeignKey(row => row.PackageSha256).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Severity).HasConversion<string>();
    }

    public static FindingRow From(string sha256, int number, Finding finding) => new()
    {
        PackageSha256 = sha256, Number = number, TimeMs = finding.TimeMs, Camera = finding.Camera, Kind = finding.Kind,
        Region = finding.Region, Severity = finding.Severity, Note = finding.Note, Position = finding.Position, Line = finding.Line,
    };

    public Finding ToFinding() => new(TimeMs, Camera, Kind, Region, Severity, Note, Position, Line);
}
