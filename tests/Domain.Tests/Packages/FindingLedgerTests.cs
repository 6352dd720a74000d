using Toepan.Domain.Packages;
using Xunit;

namespace Toepan.Domain.Tests.Packages;

/// <summary>What counts of a run's findings, by the rules in docs/decisions/0070.</summary>
public sealed class FindingLedgerTests
{
    private static readonly Finding Door = new(84, "onboard-left", "door-opened", "vehicle", FindingSeverity.Concern, "At the latch.", null, 2);
    private static readonly Finding Floor = new(null, null, "floor-buckled", "structure", FindingSeverity.Note, "", null, 3);

    [Fact]
    public void Of_PackageAlone_CountsItsFindingsInOrder()
    {
        var kept = FindingLedger.Of([Door, Floor, Floor with { Line = 4 }], []);

        Assert.All(kept, finding => Assert.True(finding is { Standing: true, InPackage: true, Version: 0 }));
        Assert.Equal([2, 3, 4], kept.Select(finding => finding.Finding.Line));
        Assert.Equal(kept[1].Id + "-2", kept[2].Id);
    }

    [Fact]
    public void OfPackage_OtherOrderAndLines_GivesTheSameIds()
    {
        var one = FindingId.OfPackage([Door, Floor]);
        var other = FindingId.OfPackage([Floor with { Line = 90 }, Door with { Line = 91 }]);

        Assert.Equal(one.Reverse(), other);
        Assert.NotEqual(one[0], FindingId.OfPackage([Door with { TimeMs = 85 }])[0]);
    }

    [Fact]
    public void Standing_CorrectedPackageFinding_SaysTheCorrectionOnItsLine()
    {
        var id = FindingId.OfPackage([Door])[0];

        var standing = FindingLedger.Standing([Door], [Change(id, 1, FindingAct.Corrected, Door with { Severity = FindingSeverity.Note, Line = 0 })]);

        Assert.Equal([Door with { Severity = FindingSeverity.Note }], standing);
    }

    [Fact]
    public void Standing_Withdrawn_DoesNotCountAndIsKept()
    {
        var id = FindingId.OfPackage([Door])[0];
        FindingChange[] changes = [Change(id, 1, FindingAct.Withdrawn, Door)];

        Assert.Equal([Floor], FindingLedger.Standing([Door, Floor], changes));
        Assert.Equal(FindingLedger.Withdrawn, FindingLedger.Of([Door, Floor], changes)[0].Without);
    }

    [Fact]
    public void Of_PackageThatSaysWhatWasAdded_CountsItOnce()
    {
        FindingChange[] changes = [Change("a1", 1, FindingAct.Added, Door with { Line = 0 })];

        Assert.Equal([Door with { Line = 0 }], FindingLedger.Standing([], changes));
        Assert.Equal([Door], FindingLedger.Standing([Door], changes));
        Assert.Equal(FindingLedger.SaidByPackage, FindingLedger.Of([Door], changes)[1].Without);
    }

    [Fact]
    public void Of_PackageThatNoLongerSaysWhatWasCorrected_KeepsTheChangeAside()
    {
        var kept = FindingLedger.Of([Floor], [Change(FindingId.OfPackage([Door])[0], 1, FindingAct.Corrected, Door with { TimeMs = 90 })]);

        Assert.Equal([true, false], kept.Select(finding => finding.Standing));
        Assert.Equal(FindingLedger.NotInPackage, kept[1].Without);
    }

    private static FindingChange Change(string id, int version, FindingAct act, Finding finding) => new(id, version, act, finding, "why", "somebody", DateTimeOffset.UnixEpoch);
}
