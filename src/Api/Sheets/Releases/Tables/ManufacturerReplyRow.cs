using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Sheets.Releases.Tables;

/// <summary>What the manufacturer answered to a notice; the latest counts, earlier ones stay.</summary>
public sealed class ManufacturerReplyRow : IEntityTypeConfiguration<ManufacturerReplyRow>, IAppendOnly
{
    public long Id { get; set; }
    public long NoticeId { get; set; }
    public string Text { get; set; } = "";

    /// <summary>Whether they agree to its being printed on the sheet.</summary>
    public bool MayPrint { get; set; }
    public DateOnly ReceivedOn { get; set; }
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<ManufacturerReplyRow> builder)
    {
        builder.ToTable("manufacturer_reply", Schemas.Lab).HasKey(row => row.Id);
        builder.HasOne<ManufacturerNoticeRow>().WithMany().HasForeignKey(row => row.NoticeId).OnDelete(DeleteBehavior.Restrict);
    }
}
