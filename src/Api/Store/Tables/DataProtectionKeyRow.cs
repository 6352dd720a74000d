using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Toepan.Api.Store.Tables;

/// <summary>A key that cookies and antiforgery tokens are protected with; in the store, so that every node and every restart knows it.</summary>
public sealed class DataProtectionKeyRow : IEntityTypeConfiguration<DataProtectionKeyRow>, IAppendOnly
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public string Name { get; set; } = "";
    public string Xml { get; set; } = "";

    public void Configure(EntityTypeBuilder<DataProtectionKeyRow> builder) =>
        builder.ToTable("data_protection_key", Schemas.Lab).HasKey(row => row.Id);
}
