using Microsoft.EntityFrameworkCore;
using Toepan.Api.Security.Tables;
using Toepan.Api.Store;

namespace Toepan.Api.Security;

/// <summary>Links through which people make their own accounts: once, within days.</summary>
public sealed class InvitationService(ProgrammeDb db, AccountService accounts, AuditTrail audit, TimeProvider clock)
{
    public const string JoinPath = "/join";
    private const int LongestWhom = 200;
    private const int UsualDays = 7;
    private const int MostDays = 30;

    private static readonly Failure Closed = new(
        FailureKind.NotFound, "No such invitation", "The link is mistyped, was used already, or has expired. Ask an administrator for a new one.");

    public async Task<Outcome<IReadOnlyList<Invitation>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("see invitations");
        }

        var rows = await db.Set<InvitationRow>().AsNoTracking().OrderByDescending(row => row.CreatedAt).ToListAsync(cancellation);
        return Outcome.List<Invitation>(rows.ConvertAll(row => Invitation.Of(row, clock.GetUtcNow())));
    }

    public async Task<Outcome<IssuedInvitation>> Invite(Viewer viewer, NewInvitation wanted, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("invite people");
        }

        if (Refuse(wanted) is { } refusal)
        {
            return refusal;
        }

        var (secret, now) = (TokenSecret.NewText(), clock.GetUtcNow());
        var row = new InvitationRow
        {
            Hash = TokenSecret.Hash(secret), Whom = wanted.Whom.Trim(), Roles = [.. wanted.Roles.Distinct()], CreatedAt = now,
            CreatedBy = viewer.Name, ExpiresAt = now.AddDays(wanted.Days ?? UsualDays),
        };
        db.Add(row);
        await Keep(viewer, new("invite", $"invitation/{row.Id}", After: Invitation.Of(row, now)), cancellation);
        return new IssuedInvitation(Invitation.Of(row, now), $"{JoinPath}?invitation={secret}");
    }

    /// <summary>The link no longer works; the invitation stays in the list.</summary>
    public async Task<Outcome<Invitation>> Withdraw(Viewer viewer, Guid id, CancellationToken cancellation = default)
    {
        if (!viewer.Is(Role.Administrator))
        {
            return Failure.Forbidden("withdraw invitations");
        }

        var now = clock.GetUtcNow();
        if (await db.Set<InvitationRow>().SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } row)
        {
            return Failure.NotFound("invitation", id.ToString());
        }

        var before = Invitation.Of(row, now);
        if (before.State != "open")
        {
            return new Failure(FailureKind.Conflict, "Not open", $"The invitation is {before.State}.");
        }

        row.WithdrawnAt = now;
        await Keep(viewer, new("withdraw invitation", $"invitation/{id}", before, Invitation.Of(row, now)), cancellation);
        return Invitation.Of(row, now);
    }

    /// <summary>The open invitation behind a link; unknown, used, withdrawn and expired ones are answered alike.</summary>
    public async Task<Outcome<Invitation>> Open(Viewer viewer, string? secret, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(viewer);
        var (hash, now) = (TokenSecret.Hash(secret ?? ""), clock.GetUtcNow());
        return await db.Set<InvitationRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Hash == hash, cancellation) is { } row
            && Invitation.Of(row, now) is { State: "open" } open ? open : Closed;
    }

    /// <summary>Makes the account and uses the invitation up, both or neither.</summary>
    public async Task<Outcome<AccountSummary>> Accept(
        Viewer viewer, string? secret, string? name, string? password, CancellationToken cancellation = default)
    {
        if ((await Open(viewer, secret, cancellation)).Value is not { } invitation)
        {
            return Closed;
        }

        if (string.IsNullOrWhiteSpace(name) || string.IsNullOrEmpty(password))
        {
            return Failure.BadRequest("Choose a name and a password.");
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (!await UseUp(invitation.Id, name.Trim(), cancellation))
        {
            return Closed;
        }

        var made = await accounts.Make(new(name.Trim(), password, invitation.Roles), cancellation);
        if (made.Value is { } account)
        {
            var joined = new Viewer(account.Name, account.Roles.ToHashSet()) { Id = account.Id };
            await audit.Append(db, joined, new("join", $"account/{account.Name}", After: new { account, invitation = invitation.Id }), cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return made;
    }

    private async Task<bool> UseUp(Guid id, string name, CancellationToken cancellation)
    {
        var now = clock.GetUtcNow();
        return await db.Set<InvitationRow>().Where(row => row.Id == id && row.UsedAt == null && row.WithdrawnAt == null && row.ExpiresAt > now)
            .ExecuteUpdateAsync(update => update.SetProperty(row => row.UsedAt, now).SetProperty(row => row.UsedBy, name), cancellation) == 1;
    }

    private static Failure? Refuse(NewInvitation wanted) => wanted switch
    {
        { Roles: null or { Count: 0 } } => Failure.BadRequest("An invitation needs at least one role."),
        { Days: < 1 or > MostDays } => Failure.BadRequest($"An invitation works for 1 to {MostDays} days."),
        _ => Texts.Check("A word on whom it is for", wanted.Whom, LongestWhom),
    };

    private async Task Keep(Viewer viewer, AuditNote note, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.SaveChangesAsync(cancellation);
        await audit.Append(db, viewer, note, cancellation);
        await transaction.CommitAsync(cancellation);
    }
}
