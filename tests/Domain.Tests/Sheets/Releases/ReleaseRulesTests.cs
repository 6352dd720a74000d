using Toepan.Domain.Sheets.Releases;
using Xunit;

namespace Toepan.Domain.Tests.Sheets.Releases;

/// <summary>The order of the steps is the programme's own rule (docs/decisions/0110): no outside source.</summary>
public sealed class ReleaseRulesTests
{
    private static readonly DateTimeOffset Now = new(2031, 3, 20, 10, 0, 0, TimeSpan.Zero);
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(1);

    private static readonly ReleaseFacts Draft = new()
    {
        Sha256 = "aaaa", NotForRelease = null, Authors = new HashSet<string> { "Ida" }, Now = Now, Today = new DateOnly(2031, 3, 20),
    };

    private static readonly ReleaseFacts Signed = Draft with { Signature = new("aaaa", "Rune", Now.AddDays(-9)) };
    private static readonly ReleaseFacts Told = Signed with { Notice = new(1, "aaaa", "Tarnbrook", new DateOnly(2031, 3, 28), "Mara", Now.AddDays(-6)) };
    private static readonly ReleaseFacts Answered = Told with { Reply = new(4, "We agree.", true, new DateOnly(2031, 3, 19), "Mara", Now.AddDays(-1)) };
    private static readonly ReleaseFacts Approved = Answered with { Approval = new(7, "aaaa", 4, null, "Odd", Now.AddHours(-1)) };
    private static readonly ReleaseFacts Published = Approved with { Versions = [new(1, ReleaseKind.Release, "aaaa", Now.AddMinutes(-5))] };

    [Fact]
    public void Approved_EveryStepTaken_MayGoOut() => Assert.Null(ReleaseRules.Release(Approved, Now.AddMinutes(5), Step, null));

    [Fact]
    public void Sign_ByTheAuthorOfTheWording_IsRefused()
    {
        Assert.NotNull(ReleaseRules.Sign(Draft, "Ida"));
        Assert.Null(ReleaseRules.Sign(Draft, "Rune"));
    }

    [Fact]
    public void Signature_DocumentChanged_FallsAndTheApprovalWithIt()
    {
        var changed = Approved with { Sha256 = "bbbb" };

        Assert.False(changed.SignatureStands);
        Assert.False(changed.ApprovalStands);
        Assert.Contains("fell", ReleaseRules.Approve(changed, "Odd", null), StringComparison.Ordinal);
        Assert.NotNull(ReleaseRules.Release(changed, null, Step, null));
        Assert.Equal("to be signed", ReleaseSteps.Of(changed).Stage);
    }

    [Fact]
    public void Notify_WithoutSignature_IsRefused() => Assert.NotNull(ReleaseRules.Notify(Draft));

    [Fact]
    public void Approve_FirstRelease_WaitsForAnswerOrEndOfThePeriodWhateverTheReason()
    {
        Assert.NotNull(ReleaseRules.Approve(Told, "Odd", null));
        Assert.NotNull(ReleaseRules.Approve(Told, "Odd", "A reason"));
        Assert.NotNull(ReleaseRules.Approve(Told with { Today = new DateOnly(2031, 3, 28) }, "Odd", null));
        Assert.Null(ReleaseRules.Approve(Told with { Today = new DateOnly(2031, 3, 29) }, "Odd", null));
        Assert.Null(ReleaseRules.Approve(Answered, "Odd", null));
    }

    [Fact]
    public void Approve_Correction_MayBeEarlyForAReason()
    {
        var correction = Told with { Versions = [new(1, ReleaseKind.Release, "0000", Now.AddDays(-30))] };

        Assert.NotNull(ReleaseRules.Approve(correction, "Odd", null));
        Assert.Null(ReleaseRules.Approve(correction, "Odd", "The public sheet names a wrong figure."));
    }

    [Fact]
    public void Approve_ByTheSigner_IsRefused() => Assert.NotNull(ReleaseRules.Approve(Answered, "Rune", null));

    [Fact]
    public void Approval_LaterAnswer_HasToBeGivenAnew() =>
        Assert.False((Approved with { Reply = new(5, "On second thought.", true, new DateOnly(2031, 3, 20), "Mara", Now) }).ApprovalStands);

    [Fact]
    public void Release_PastTimeOrOddSecondOrTooFar_IsRefused()
    {
        Assert.NotNull(ReleaseRules.Release(Approved, Now, Step, null));
        Assert.NotNull(ReleaseRules.Release(Approved, Now.AddSeconds(90.5), Step, null));
        Assert.NotNull(ReleaseRules.Release(Approved, Now.AddDays(400), Step, null));
        Assert.Null(ReleaseRules.Release(Approved, null, Step, null));
    }

    [Fact]
    public void Touch_ShortlyBeforeAndAfterItsTime_IsRefused()
    {
        ReleaseFacts At(TimeSpan ahead) => Approved with { Versions = [new(1, ReleaseKind.Release, "aaaa", Now + ahead)] };

        Assert.Null(ReleaseRules.Touch(At(TimeSpan.FromMinutes(1))));
        Assert.NotNull(ReleaseRules.Touch(At(TimeSpan.FromSeconds(9))));
        Assert.NotNull(ReleaseRules.Touch(At(TimeSpan.Zero)));
        Assert.NotNull(ReleaseRules.Touch(Approved));
    }

    [Fact]
    public void Correction_WithoutAReason_IsRefused()
    {
        var other = Approved with { Versions = [new(1, ReleaseKind.Release, "0000", Now.AddDays(-30))] };

        Assert.NotNull(ReleaseRules.Release(other, null, Step, null));
        Assert.Null(ReleaseRules.Release(other, null, Step, "A clamp was misread."));
    }

    [Fact]
    public void Withdraw_Twice_IsRefused()
    {
        Assert.NotNull(ReleaseRules.Withdraw(Approved));
        Assert.Null(ReleaseRules.Withdraw(Published));
        Assert.NotNull(ReleaseRules.Withdraw(Published with { Versions = [.. Published.Versions, new(2, ReleaseKind.Withdrawal, null, Now)] }));
    }

    [Theory]
    [InlineData(0, "to be signed", "a reviewer")]
    [InlineData(1, "to be notified", "communications")]
    [InlineData(2, "manufacturer's reply", "the manufacturer, until 2031-03-28")]
    [InlineData(3, "to be approved", "the programme manager")]
    [InlineData(4, "to be timed", "communications")]
    [InlineData(5, "public", null)]
    public void Steps_EachStage_SaysOnWhomItWaits(int stage, string word, string? waitsOn)
    {
        var steps = ReleaseSteps.Of(((ReleaseFacts[])[Draft, Signed, Told, Answered, Approved, Published])[stage]);

        Assert.Equal(word, steps.Stage);
        Assert.Equal(waitsOn, steps.WaitsOn);
    }
}
