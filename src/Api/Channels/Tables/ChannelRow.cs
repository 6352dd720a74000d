using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Packages.Tables;
using Toepan.Api.Store;
using Toepan.Domain.Packages;

namespace Toepan.Api.Channels.Tables;

/// <summary>One channel as recorded; samples in <see cref="SampleCodec"/> bytes, nothing lost.</summary>
public sealed class ChannelRow : IEntityTypeConfiguration<ChannelRow>, IAppendOnly
{
    public string PackageSha256 { get; set; } = "";

    /// <summary>Place in the package's list of channels, from 0. The number in the index may repeat.</summary>
    public int Ordinal { get; set; }
    public int Number { get; set; }
    public string Code { get; set; } = "";
    public string File { get; set; } = "";
    public string Unit { get; set; } = "";
    public double? FirstSampleS { get; set; }
    public double? IntervalS { get; set; }
    public int Count { get; set; }
    public double? AmplitudeClass { get; set; }
    public string? HeaderFilterClass { get; set; }
    public int? StatedCount { get; set; }
    public int? FirstBadSample { get; set; }
    public int FirstSampleLine { get; set; }
    public string? UnfitReason { get; set; }

    /// <summary>Header lines in order.</summary>
    public string Header { get; set; } = "";
    public byte[] Samples { get; set; } = [];

    public void Configure(EntityTypeBuilder<ChannelRow> builder)
    {
        builder.ToTable("channel", Schemas.Lab).HasKey(row => new { row.PackageSha256, row.Ordinal });
        builder.HasIndex(row => new { row.PackageSha256, row.Code });
        builder.HasOne<PackageRow>().WithMany().HasForeignKey(row => row.PackageSha256).OnDelete(DeleteBehavior.Restrict);
        builder.Property(row => row.Header).HasColumnType("jsonb");
    }

    public static ChannelRow From(string sha256, int ordinal, RecordedChannel channel) => new()
    {
        PackageSha256 = sha256, Ordinal = ordinal, Number = channel.Number, Code = channel.Code, File = channel.File, Unit = channel.Unit,
        FirstSampleS = channel.FirstSampleS, IntervalS = channel.IntervalS, Count = channel.Samples.Length,
        AmplitudeClass = channel.AmplitudeClass, HeaderFilterClass = channel.HeaderFilterClass, StatedCount = channel.StatedCount,
        FirstBadSample = channel.FirstBadSample, FirstSampleLine = channel.FirstSampleLine, UnfitReason = channel.UnfitReason,
        Header = StoredJson.Write(channel.Header), Samples = SampleCodec.Encode(channel.Samples.Span),
    };

    public RecordedChannel ToChannel() => new()
    {
        Number = Number, Code = Code, File = File, Unit = Unit, FirstSampleS = FirstSampleS, IntervalS = IntervalS,
        Samples = SampleCodec.Decode(Samples, Count), AmplitudeClass = AmplitudeClass, HeaderFilterClass = HeaderFilterClass,
        StatedCount = StatedCount, FirstBadSample = FirstBadSample, FirstSampleLine = FirstSampleLine, UnfitReason = UnfitReason,
        Header = StoredJson.Read<HeaderEntry[]>(Header),
    };
}
