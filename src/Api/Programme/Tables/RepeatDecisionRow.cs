using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Toepan.Api.Store;
using Toepan.Domain.Programme;

namespace Toepan.Api.Programme.Tables;

/// <summary>A decision about repeating a run; the latest counts, earlier ones stay.</summary>
public sealed class RepeatDecisionRow : IEntityTypeConfiguration<RepeatDecisionRow>, IAppendOnly
{
    public long Id { get; set; }
    public string Test { get; set; } = "";
    public RepeatTrigger Trigger { get; set; }
    public RepeatChoice Choice { get; set; }
    public string Evidence { get; set; } = "";
    public string Options { get; set; } = "";

    /// <summary>Whether the run was valid when it was decided.</summary>
    public bool Valid { get; set; }

    /// <summary>What the person who decided said of having seen measures.</summary>
    public bool SaidSeen { get; set; }

    /// <summary>Who had opened the run's measures by then, as the service recorded it.</summary>
    public string SeenBy { get; set; } = "[]";
    public string DecidedBy { get; set; } = "";
    public DateTimeOffset DecidedAt { get; set; }

    public void Configure(EntityTypeBuilder<RepeatDecisionRow> builder)
    {
        builder.ToTable("repeat_decision", Schemas.Lab).HasKey(row => row.Id);
        builder.HasIndex(row => row.Test);
        builder.Property(row => row.Trigger).HasConversion<string>();
        builder.Property(row => row.Choice).HasConversion<string>();
        builder.Property(row => row.SeenBy).HasColumnType("jsonb");
        builder.HasOne<TestRunRow>().WithMany().HasForeignKey(row => row.Test).OnDelete(DeleteBehavior.Restrict);
    }
}
