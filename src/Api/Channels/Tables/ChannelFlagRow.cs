using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Measures;

namespace Toepan.Api.Channels.Tables;

/// <summary>An engineer's decision about a channel of one package. Append-only; see <see cref="ChannelFlagWithdrawalRow"/>.</summary>
public sealed class ChannelFlagRow : IEntityTypeConfiguration<ChannelFlagRow>, IAppendOnly
{
    public long Id { get; set; }
    public string PackageSha256 { get; set; } = "";
    public string Test { get; set; } = "";
    public string Channel { get; set; } = "";
    public ChannelFlagKind Kind { get; set; }
    public double? FromS { get; set; }
    public double? Factor { get; set; }
    public string Reason { get; set; } = "";
    public string By { get; set; } = "";
    public DateTimeOffset At { get; set; }

    public ChannelFlagWithdrawalRow? Withdrawal { get; set; }

    public void Configure(EntityTypeBuilder<ChannelFlagRow> builder)
    {
        builder.ToTable("channel_flag", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Test);
        builder.HasOne<PackageRow>().WithMany().HasForeignKey(row => row.PackageSha256).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(row => row.Withdrawal).WithOne().HasForeignKey<ChannelFlagWithdrawalRow>(row => row.FlagId).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Kind).HasConversion<string>();
    }

    public ChannelFlag ToFlag() => new(Channel, Kind, FromS, Factor, Reason);

    public FlagRecord ToRecord() => new(Id, ToFlag(), By, At, Withdrawal?.By, Withdrawal?.At, Withdrawal?.Reason);
}
