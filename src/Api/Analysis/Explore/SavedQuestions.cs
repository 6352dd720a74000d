using Microsoft.EntityFrameworkCore;
using Npgsql;
using Toepan.Api.Analysis.Tables;
using Toepan.Api.Security;
using Toepan.Api.Store;

namespace Toepan.Api.Analysis.Explore;

/// <summary>A question with its name.</summary>
public sealed record SavedQuestion(long Id, string Name, string Address, string SavedBy, DateTimeOffset SavedAt);

/// <summary>Questions kept under a name. Everybody with a role reads and adds; who saved one, a manager or an administrator removes it.</summary>
public sealed class SavedQuestions(IDbContextFactory<ProgrammeDb> contexts, AuditTrail audit, TimeProvider time)
{
    public const int LongestName = 120;
    public const int LongestAddress = 2_000;
    private static readonly string[] Pages = ["/explore", "/classes/", "/viewer", "/repeats", "/disagreements"];

    /// <summary>By name.</summary>
    public async Task<Outcome<IReadOnlyList<SavedQuestion>>> List(Viewer viewer, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        return Outcome.List<SavedQuestion>(await context.Set<SavedQuestionRow>().AsNoTracking().OrderBy(row => row.Name)
            .Select(row => new SavedQuestion(row.Id, row.Name, row.Address, row.SavedBy, row.SavedAt)).ToListAsync(cancellation));
    }

    /// <summary>Keeps an address of one of the analysis pages; 409 where the name is taken.</summary>
    public async Task<Outcome<SavedQuestion>> Save(Viewer viewer, string? name, string? address, CancellationToken cancellation = default)
    {
        if ((Access.ToRead(viewer) ?? Texts.Check("A name", name, LongestName) ?? CheckAddress(address)) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        var row = new SavedQuestionRow { Name = name!.Trim(), Address = address!, SavedBy = viewer.Name, SavedAt = time.GetUtcNow() };
        if (await context.Set<SavedQuestionRow>().AnyAsync(other => other.Name == row.Name, cancellation))
        {
            return Taken(row.Name);
        }

        context.Add(row);
        try
        {
            await context.SaveChangesAsync(cancellation);
        }
        catch (DbUpdateException fault) when (fault.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            return Taken(row.Name);
        }

        await audit.Append(context, viewer, new AuditNote("save question", $"question/{row.Id}", null, new { row.Name, row.Address }), cancellation);
        await transaction.CommitAsync(cancellation);
        return new SavedQuestion(row.Id, row.Name, row.Address, row.SavedBy, row.SavedAt);
    }

    /// <summary>Removes a question; its history keeps it.</summary>
    public async Task<Outcome<SavedQuestion>> Remove(Viewer viewer, long id, CancellationToken cancellation = default)
    {
        if (Access.ToRead(viewer) is { } refusal)
        {
            return refusal;
        }

        await using var context = await contexts.CreateDbContextAsync(cancellation);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        if (await context.Set<SavedQuestionRow>().SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } row)
        {
            return Failure.NotFound("saved question", id.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        if (row.SavedBy != viewer.Name && !viewer.Is(Role.Manager, Role.Administrator))
        {
            return Failure.Forbidden("remove a question that somebody else saved");
        }

        context.Remove(row);
        await context.SaveChangesAsync(cancellation);
        await audit.Append(context, viewer, new AuditNote("remove question", $"question/{row.Id}", new { row.Name, row.Address }), cancellation);
        await transaction.CommitAsync(cancellation);
        return new SavedQuestion(row.Id, row.Name, row.Address, row.SavedBy, row.SavedAt);
    }

    private static Failure Taken(string name) =>
        new(FailureKind.Conflict, "Name taken", $"There is a question named '{name}' already; choose another name or remove that one.");

    private static Failure? CheckAddress(string? address) =>
        Texts.Check("An address", address, LongestAddress)
        ?? (Pages.Any(page => address!.StartsWith(page, StringComparison.Ordinal)) && !address!.Contains('\n', StringComparison.Ordinal) && !address.Contains('\\', StringComparison.Ordinal)
            ? null
            : Failure.BadRequest($"The address '{address}' is none of an analysis page: it starts with one of {string.Join(", ", Pages)}."));
}
