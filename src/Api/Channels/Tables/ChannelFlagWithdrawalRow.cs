using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;

namespace Toepan.Api.Channels.Tables;

/// <summary>That a flag no longer stands, and why. Append-only; at most one a flag.</summary>
public sealed class ChannelFlagWithdrawalRow : IEntityTypeConfiguration<ChannelFlagWithdrawalRow>, IAppendOnly
{
    public long FlagId { get; set; }
    public string Reason { get; set; } = "";
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public void Configure(EntityTypeBuilder<ChannelFlagWithdrawalRow> builder)
    {
        builder.ToTable("channel_flag_withdrawal", Schemas.Lab).HasKey(row => row.FlagId);
        builder.Property(row => row.FlagId).ValueGeneratedNever();
    }
}
