using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Packages.Tables;

/// <summary>One row of Static/points.csv, in the file's unit and axes.</summary>
public sealed class StructuralPointRow : IEntityTypeConfiguration<StructuralPointRow>, IAppendOnly
{
    public string PackageSha256 { get; set; } = "";
    public int Number { get; set; }
    public string Name { get; set; } = "";
    public PointRole Role { get; set; }
    public double? PreX { get; set; }
    public double? PreY { get; set; }
    public double? PreZ { get; set; }
    public double? PostX { get; set; }
    public double? PostY { get; set; }
    public double? PostZ { get; set; }
    public int Line { get; set; }

    public void Configure(EntityTypeBuilder<StructuralPointRow> builder)
    {
        builder.ToTable("structural_point", Schemas.Lab).HasKey(row => new { row.PackageSha256, row.Number });
        builder.HasOne<PackageRow>().WithMany().HasForeignKey(row => row.PackageSha256).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Role).HasConversion<string>();
    }

    public static StructuralPointRow From(string sha256, int number, StructuralPoint point) => new()
    {
        PackageSha256 = sha256, Number = number, Name = point.Name, Role = point.Role, Line = point.Line,
        PreX = point.Before?.X, PreY = point.Before?.Y, PreZ = point.Before?.Z,
        PostX = point.After?.X, PostY = point.After?.Y, PostZ = point.After?.Z,
    };

    public StructuralPoint ToPoint() => new(Name, Role, Three(PreX, PreY, PreZ), Three(PostX, PostY, PostZ), Line);

    private static Coordinates? Three(double? x, double? y, double? z) =>
        x is { } a && y is { } b && z is { } c ? new Coordinates(a, b, c) : null;
}
