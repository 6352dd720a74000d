using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Toepan.Api.Programme.Tables;
using Toepan.Api.Security;
using Toepan.Api.Sheets.Releases.Tables;
using Toepan.Api.Store;
using Toepan.Api.Store.Tables;
using Toepan.Domain.Sheets;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Sheets.Releases;

/// <summary>
/// The way of a vehicle's sheet to the public: signed by a reviewer, sent to the manufacturer, approved by the manager, given a time. Every act is
/// refused with its reason (<see cref="ReleaseRules"/>) where its turn has not come. Nothing makes a sheet public but the database's clock.
/// </summary>
public sealed class ReleaseService(
    IDbContextFactory<ProgrammeDb> contexts, SheetService sheets, AuditTrail audit, TimeProvider time, IOptions<ReleaseSettings> settings)
{
    public const int LongestText = 4_000;
    private const int SlugBytes = 9;

    /// <summary>Every vehicle that a run rates, by key, and where its sheet stands.</summary>
    public async Task<Outcome<IReadOnlyList<ReleaseStanding>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        var standings = new List<ReleaseStanding>();
        foreach (var key in await context.Set<VehicleRow>().OrderBy(row => row.Key).Select(row => row.Key).ToListAsync(cancellation))
        {
            if (await ReleaseIndex.Load(context, sheets, key, time.GetUtcNow(), cancellation) is { } file)
            {
                standings.Add(ReleaseStanding.Of(file));
            }
        }

        return Outcome.List<ReleaseStanding>(standings);
    }

    public async Task<Outcome<ReleaseStanding>> Get(Viewer viewer, string vehicle, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return await ReleaseIndex.Load(context, sheets, vehicle, time.GetUtcNow(), cancellation) is { } file ? ReleaseStanding.Of(file) : Failure.NotFound("sheet of a vehicle", vehicle);
    }

    /// <summary>A reviewer signs the document of the day.</summary>
    public Task<Outcome<ReleaseStanding>> Sign(Viewer viewer, string vehicle, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("sign sheet", [Role.Reviewer]), null, file => ReleaseRules.Sign(file.Facts, viewer.Name), async (context, file) =>
        {
            await Keep(context, file, cancellation);
            context.Add(new SheetSignatureRow { VehicleKey = vehicle, Sha256 = file.Facts.Sha256, By = viewer.Name, At = time.GetUtcNow() });
        }, cancellation);

    /// <summary>Records that the signed document was sent to the manufacturer; the reply period begins.</summary>
    public Task<Outcome<ReleaseStanding>> Notify(Viewer viewer, string vehicle, string? recipient, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("send notice", [Role.Communications, Role.Manager]), Texts.Check("The recipient", recipient, 200), file => ReleaseRules.Notify(file.Facts), (context, file) =>
        {
            context.Add(new ManufacturerNoticeRow
            {
                VehicleKey = vehicle, Sha256 = file.Facts.Sha256, Recipient = recipient!.Trim(), By = viewer.Name, At = time.GetUtcNow(),
                DueOn = WorkingDays.After(file.Facts.Today, settings.Value.ReplyWorkingDays, settings.Value.Holidays.ToHashSet()),
            });
            return Task.CompletedTask;
        }, cancellation);

    /// <summary>Records what the manufacturer answered.</summary>
    public Task<Outcome<ReleaseStanding>> Answer(Viewer viewer, string vehicle, NewReply reply, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("record answer", [Role.Communications, Role.Manager]), Texts.Check("The answer", reply.Text, LongestText), file => ReleaseRules.Answer(file.Facts, reply.ReceivedOn ?? file.Facts.Today), (context, file) =>
        {
            context.Add(new ManufacturerReplyRow
            {
                NoticeId = file.Facts.Notice!.Id, Text = reply.Text!.Trim(), MayPrint = reply.MayPrint, ReceivedOn = reply.ReceivedOn ?? file.Facts.Today,
                By = viewer.Name, At = time.GetUtcNow(),
            });
            return Task.CompletedTask;
        }, cancellation);

    /// <summary>The manager approves; <paramref name="earlyReason"/> is taken for corrections alone.</summary>
    public Task<Outcome<ReleaseStanding>> Approve(Viewer viewer, string vehicle, string? earlyReason, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("approve sheet", [Role.Manager]), earlyReason is null ? null : Texts.Check("The reason", earlyReason, LongestText), file => ReleaseRules.Approve(file.Facts, viewer.Name, earlyReason), (context, file) =>
        {
            context.Add(new SheetApprovalRow
            {
                VehicleKey = vehicle, Sha256 = file.Facts.Sha256, ReplyId = file.Facts.Reply?.Id, By = viewer.Name, At = time.GetUtcNow(),
                EarlyReason = file.Facts is { Reply: null, PeriodEnded: false } ? earlyReason?.Trim() : null,
            });
            return Task.CompletedTask;
        }, cancellation);

    /// <summary>Gives the approved document its time: <paramref name="at"/>, or now. Says why where it corrects a public one.</summary>
    public Task<Outcome<ReleaseStanding>> Release(Viewer viewer, string vehicle, DateTimeOffset? at, string? why, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("release sheet", [Role.Communications, Role.Manager]), why is null ? null : Texts.Check("The reason", why, LongestText), file => ReleaseRules.Release(file.Facts, at, settings.Value.Step, why), (context, file) =>
        {
            var kind = file.Facts.Public is null ? ReleaseKind.Release : ReleaseKind.Correction;
            Publish(context, viewer, file, kind, at, kind == ReleaseKind.Release ? null : why);
            return Task.CompletedTask;
        }, cancellation);

    /// <summary>Moves an embargo whose time has not come.</summary>
    public Task<Outcome<ReleaseStanding>> Move(Viewer viewer, string vehicle, DateTimeOffset at, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("move embargo", [Role.Communications, Role.Manager]), null, file => ReleaseRules.Touch(file.Facts) ?? ReleaseRules.Time(file.Facts, at, settings.Value.Step),
            async (context, file) => (await PendingRow(context, file, cancellation)).VisibleFrom = at.ToUniversalTime(), cancellation);

    /// <summary>Withdraws an embargo whose time has not come: that version is never seen.</summary>
    public Task<Outcome<ReleaseStanding>> TakeBack(Viewer viewer, string vehicle, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("withdraw embargo", [Role.Communications, Role.Manager]), null, file => ReleaseRules.Touch(file.Facts), async (context, file) =>
        {
            var row = await PendingRow(context, file, cancellation);
            row.VisibleTo = row.VisibleFrom;
        }, cancellation);

    /// <summary>Takes a public sheet back in the open: a statement with the reason stands in its place, every version stays at its address.</summary>
    public Task<Outcome<ReleaseStanding>> Withdraw(Viewer viewer, string vehicle, string? why, CancellationToken cancellation = default) =>
        Act(viewer, vehicle, new("withdraw sheet", [Role.Manager]), Texts.Check("The reason", why, LongestText), file => ReleaseRules.Withdraw(file.Facts), (context, file) =>
        {
            Publish(context, viewer, file, ReleaseKind.Withdrawal, null, why);
            return Task.CompletedTask;
        }, cancellation);

    private sealed record Deed(string Name, Role[] Roles);

    private async Task<Outcome<ReleaseStanding>> Act(
        Viewer viewer, string vehicle, Deed deed, Failure? fault, Func<ReleaseFile, string?> rule, Func<ProgrammeDb, ReleaseFile, Task> write, CancellationToken cancellation)
    {
        if (!viewer.Is(deed.Roles))
        {
            return Failure.Forbidden(deed.Name);
        }

        if (fault is not null)
        {
            return fault;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        var key = $"release/{vehicle}";
        await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({key}, 0))", cancellation);
        if (await ReleaseIndex.Load(context, sheets, vehicle, time.GetUtcNow(), cancellation) is not { } file)
        {
            return Failure.NotFound("sheet of a vehicle", vehicle);
        }

        if (rule(file) is { } reason)
        {
            return new Failure(FailureKind.Conflict, "Not possible", reason);
        }

        await write(context, file);
        await context.SaveChangesAsync(cancellation);
        var after = ReleaseStanding.Of((await ReleaseIndex.Load(context, sheets, vehicle, time.GetUtcNow(), cancellation))!);
        await audit.Append(context, viewer, new AuditNote(deed.Name, $"vehicle/{vehicle}", ReleaseStanding.Of(file), after), cancellation);
        if (file.Facts.Pending is { } pending && pending.VisibleFrom <= await ReleaseIndex.Clock(context, cancellation) + Margin)
        {
            return new Failure(FailureKind.Conflict, "Not possible", "The embargo ends this moment: it is too late to change it.");
        }

        await transaction.CommitAsync(cancellation);
        return after;
    }

    /// <summary>What must be left until an embargo's old time when a change of it commits.</summary>
    private static readonly TimeSpan Margin = TimeSpan.FromSeconds(3);

    private async Task Keep(ProgrammeDb context, ReleaseFile file, CancellationToken cancellation)
    {
        if (!await context.Set<FrozenDocumentRow>().AnyAsync(row => row.Sha256 == file.Facts.Sha256, cancellation))
        {
            context.Add(new FrozenDocumentRow { Sha256 = file.Facts.Sha256, Document = Encoding.UTF8.GetString(SheetDocumentJson.Write(file.Signed)), KeptAt = time.GetUtcNow() });
        }
    }

    private void Publish(ProgrammeDb context, Viewer viewer, ReleaseFile file, ReleaseKind kind, DateTimeOffset? at, string? why)
    {
        var slug = file.Slug ?? Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SlugBytes)).ToLowerInvariant().Replace('_', 'x').Replace('-', 'y');
        var from = (at ?? file.Facts.Now).ToUniversalTime();
        var act = new ReleaseActRow
        {
            Id = Guid.CreateVersion7(time.GetUtcNow()), VehicleKey = file.Vehicle, Test = file.Signed.Test, Slug = slug,
            Version = file.Acts is [.., var last] ? last.Version + 1 : 1, Kind = kind, Sha256 = kind == ReleaseKind.Withdrawal ? null : file.Facts.Sha256,
            ApprovalId = kind == ReleaseKind.Withdrawal ? null : file.Facts.Approval!.Id, Why = why?.Trim(), VisibleFrom = from, By = viewer.Name, At = time.GetUtcNow(),
        };
        context.Add(act);
        context.Add(new ReleaseRow { Slug = slug, Version = act.Version, Document = StoredJson.Write(Published(context, file, act)), VisibleFrom = from });
    }

    private static PublishedSheet Published(ProgrammeDb context, ReleaseFile file, ReleaseActRow act)
    {
        var shown = Shown(context, file.Facts.Now);
        var before = shown.GetValueOrDefault(act.Slug);
        if (act.Kind == ReleaseKind.Withdrawal)
        {
            return new(act.Kind, before!.Sha256, before.Document, act.Why, before.Document.Overall, false);
        }

        var document = file.Signed with
        {
            Peers = SheetPeersComposer.Compose(file.Signed, [.. shown.Where(pair => pair.Key != act.Slug).Select(pair => Peer(pair.Value)).OfType<SheetPeer>()]),
            Answer = file.Facts.Reply is { MayPrint: true } reply ? new SheetAnswer(file.Facts.Notice!.Recipient, reply.ReceivedOn, reply.Text) : null,
            Version = new SheetVersion(act.Version, act.VisibleFrom, null, act.Why),
        };
        return new(act.Kind, act.Sha256!, document, act.Why, before?.Document.Overall, before is not null && before.Document.Overall != document.Overall);
    }

    /// <summary>The newest public version of every sheet by slug. Only what is public is named as a peer.</summary>
    private static Dictionary<string, PublishedSheet> Shown(ProgrammeDb context, DateTimeOffset now) => context.Set<ReleaseRow>().AsNoTracking()
        .Where(row => row.VisibleTo == null && row.VisibleFrom <= now).AsEnumerable().GroupBy(row => row.Slug)
        .ToDictionary(rows => rows.Key, rows => StoredJson.Read<PublishedSheet>(rows.MaxBy(row => row.Version)!.Document));

    private static SheetPeer? Peer(PublishedSheet sheet) => sheet is { Kind: not ReleaseKind.Withdrawal, Document: { Overall: { } level, Vehicle: { MassKg: { } mass } vehicle } }
        ? new SheetPeer(vehicle.Key, vehicle.Name, level, mass)
        : null;

    private static Task<ReleaseRow> PendingRow(ProgrammeDb context, ReleaseFile file, CancellationToken cancellation) =>
        context.Set<ReleaseRow>().SingleAsync(row => row.Slug == file.Slug && row.Version == file.Facts.Pending!.Version, cancellation);
}
