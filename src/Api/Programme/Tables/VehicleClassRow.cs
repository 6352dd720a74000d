using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme.Tables;

/// <summary>A vehicle class of the programme.</summary>
public sealed class VehicleClassRow : IEntityTypeConfiguration<VehicleClassRow>
{
    public string Key { get; set; } = "";
    public string Title { get; set; } = "";

    public void Configure(EntityTypeBuilder<VehicleClassRow> builder)
    {
        builder.ToTable("vehicle_class", Schemas.Lab).HasKey(row => row.Key);
        builder.HasData(VehicleClasses.Initial.Select(initial => new VehicleClassRow { Key = initial.Key, Title = initial.Title }));
    }
}
