using Toepan.Api.Security.Tables;

namespace Toepan.Api.Security;

/// <summary>An invitation to make.</summary>
/// <param name="Whom">Whom it is for, in the administrator's words.</param>
/// <param name="Roles">What the person will be allowed; at least one.</param>
/// <param name="Days">How long the link works; 7 where left out.</param>
public sealed record NewInvitation(string Whom, IReadOnlyList<Role> Roles, int? Days = null);

/// <summary>An invitation as lists show it: everything but its secret.</summary>
/// <param name="State">open, used, expired or withdrawn.</param>
public sealed record Invitation(
    Guid Id, string Whom, IReadOnlyList<Role> Roles, DateTimeOffset CreatedAt, string CreatedBy, DateTimeOffset ExpiresAt, string State, string? UsedBy)
{
    internal static Invitation Of(InvitationRow row, DateTimeOffset now) =>
        new(row.Id, row.Whom, row.Roles, row.CreatedAt, row.CreatedBy, row.ExpiresAt, StateOf(row, now), row.UsedBy);

    private static string StateOf(InvitationRow row, DateTimeOffset now) => row switch
    {
        { UsedAt: not null } => "used",
        { WithdrawnAt: not null } => "withdrawn",
        _ => row.ExpiresAt <= now ? "expired" : "open",
    };
}

/// <summary>An invitation just made, with the address that is shown this once.</summary>
/// <param name="Invitation">The invitation.</param>
/// <param name="Path">Path and query on this site; whoever has it can make the account.</param>
public sealed record IssuedInvitation(Invitation Invitation, string Path);
