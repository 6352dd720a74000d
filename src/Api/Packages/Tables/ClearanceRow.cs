using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Tables;

/// <summary>One row of Static/clearances.csv.</summary>
public sealed class ClearanceRow : IEntityTypeConfiguration<ClearanceRow>, IAppendOnly
{
    public string PackageSha256 { get; set; } = "";
    public int Number { get; set; }
    public string Name { get; set; } = "";
    public string OpposingPoint { get; set; } = "";
    public double Distance { get; set; }
    public int Line { get; set; }

    public void Configure(EntityTypeBuilder<ClearanceRow> builder)
    {
        builder.ToTable("clearance", Schemas.Lab).HasKey(row => new { row.PackageSha256, row.Number });
        builder.HasOne<PackageRow>().WithMany().HasForeignKey(row => row.PackageSha256).OnDelete(DeleteBehavior.Restrict);
    }

    public static ClearanceRow From(string sha256, int number, Clearance clearance) => new()
    {
        PackageSha256 = sha256, Number = number, Name = clearance.Name, OpposingPoint = clearance.OpposingPoint,
        Distance = clearance.Distance, Line = clearance.Line,
    };

    public Clearance ToClearance() => new(Name, OpposingPoint, Distance, Line);
}
