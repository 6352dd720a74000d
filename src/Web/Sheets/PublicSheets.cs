using System.Globalization;
using Npgsql;
using Toepan.Api;
using Toepan.Api.Sheets.Releases;
using Toepan.Api.Store;
using Toepan.Domain.Sheets.Releases;

namespace Toepan.Web.Sheets;

/// <summary>A version the public may see.</summary>
public sealed record PublicVersion(int Number, DateTimeOffset From, PublishedSheet Sheet);

/// <summary>All of one sheet the public may see at one moment of the store's clock, first version to last.</summary>
public sealed record PublicSheet(string Slug, DateTimeOffset AsOf, IReadOnlyList<PublicVersion> Versions)
{
    public PublicVersion Newest => Versions[^1];

    /// <summary>Whether the newest version's change of level is still announced.</summary>
    public bool Bannered => Newest.Sheet.LevelChanged && AsOf < Newest.From.AddMonths(ReleaseRules.BannerMonths);
}

/// <summary>Reads what is public, through the login that can see nothing else. One statement an answer: no reader sees half of a change.</summary>
public sealed class PublicSheets(PublicDataSource source)
{
    /// <summary>Null where nothing of that name is public, whatever else it may be.</summary>
    public async Task<PublicSheet?> Find(string slug, CancellationToken cancellation)
    {
        await using var command = source.Source.CreateCommand(
            "SELECT statement_timestamp(), version, visible_from, document::text FROM pub.release WHERE slug = $1 ORDER BY version");
        command.Parameters.Add(new() { Value = StoredText.Clean(slug) });
        var (asOf, versions) = (default(DateTimeOffset), new List<PublicVersion>());
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        while (await reader.ReadAsync(cancellation))
        {
            asOf = await reader.GetFieldValueAsync<DateTimeOffset>(0, cancellation);
            versions.Add(Version(reader, 1));
        }

        return versions.Count == 0 ? null : new(slug, asOf, versions);
    }

    /// <summary>The newest version of every sheet that is public, by class and title, and the moment.</summary>
    public async Task<(DateTimeOffset AsOf, IReadOnlyList<PublicSheet> Sheets)> All(CancellationToken cancellation)
    {
        await using var command = source.Source.CreateCommand(
            "SELECT now.at, r.version, r.visible_from, r.document::text, r.slug FROM (SELECT statement_timestamp() AS at) now "
            + "LEFT JOIN (SELECT DISTINCT ON (slug) * FROM pub.release ORDER BY slug, version DESC) r ON true");
        var (asOf, sheets) = (default(DateTimeOffset), new List<PublicSheet>());
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        while (await reader.ReadAsync(cancellation))
        {
            asOf = await reader.GetFieldValueAsync<DateTimeOffset>(0, cancellation);
            if (!await reader.IsDBNullAsync(1, cancellation))
            {
                sheets.Add(new(reader.GetString(4), asOf, [Version(reader, 1)]));
            }
        }

        return (asOf, [.. sheets.OrderBy(sheet => sheet.Newest.Sheet.Document.Vehicle.ClassTitle, StringComparer.Ordinal).ThenBy(sheet => sheet.Newest.Sheet.Document.Vehicle.Name, StringComparer.Ordinal)]);
    }

    /// <summary>Seconds a cache may keep an answer: to the next whole step, on which embargoes end.</summary>
    public static int SecondsLeft(DateTimeOffset asOf, TimeSpan step) => (int)((step.Ticks - (asOf.UtcTicks % step.Ticks)) / TimeSpan.TicksPerSecond);

    private static PublicVersion Version(NpgsqlDataReader reader, int first) => new(
        reader.GetInt32(first), new DateTimeOffset(reader.GetDateTime(first + 1), TimeSpan.Zero), StoredJson.Read<PublishedSheet>(reader.GetString(first + 2)));

    /// <summary>2031-03-14 09:26 UTC.</summary>
    public static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);
}
