using Npgsql;
using Toepan.Api.Tests.Store;
using Toepan.Support;

namespace Toepan.Api.Tests.Embargo;

/// <summary>A marked person, an invitation and tokens, and every secret the service keeps.</summary>
internal static class PeoplePlanter
{
    private const string Stored = """
        SELECT password_hash FROM lab.account WHERE password_hash IS NOT NULL
        UNION ALL SELECT security_stamp FROM lab.account
        UNION ALL SELECT unnest(ARRAY[encode(hash, 'hex'), encode(hash, 'base64')]) FROM lab.token
        UNION ALL SELECT unnest(ARRAY[encode(hash, 'hex'), encode(hash, 'base64')]) FROM lab.invitation
        UNION ALL SELECT unnest(ARRAY[encode(hash, 'hex'), encode(hash, 'base64')]) FROM lab.recovery_code
        UNION ALL SELECT protected_key FROM lab.second_factor
        UNION ALL SELECT (regexp_match(xml, '<value>([^<]+)</value>'))[1] FROM lab.data_protection_key
        """;

    public static async Task Plant(Ground ground, HttpClient administrator)
    {
        var marks = ground.Marks;
        var planted = new TestAccount(marks.In("person"), $"{marks.Restricted} password");
        await Ground.Create(administrator, "/api/v1/accounts", new { name = planted.Name, password = planted.Password, roles = new[] { "engineer" } });
        var invited = await Ground.Create(administrator, "/api/v1/invitations", new { whom = $"{marks.Restricted} invited", roles = new[] { "analyst" } });
        var issued = await Ground.Create(administrator, "/api/v1/tokens", new { name = $"{marks.Restricted} machine", roles = new[] { "analyst" } });
        ground.Secrets.AddRange([planted.Password, invited.GetProperty("path").GetString()!.Split('=')[1], issued.GetProperty("secret").GetString()!]);
        ground.Secrets.AddRange(await PlantedAccount.Furnish(ground.Api, planted, $"{marks.Restricted} script"));
        ground.Values["accounts/id"] = ground.Values["people/id"] = await ground.Key($"SELECT id::text FROM lab.account WHERE user_name = '{planted.Name}'");
        ground.Values["tokens/id"] = await ground.Key($"SELECT id::text FROM lab.token WHERE name = '{marks.Restricted} machine'");
        ground.Values["invitations/id"] = await ground.Key("SELECT id::text FROM lab.invitation");
    }

    /// <summary>What the database keeps of secrets, and the passwords of its logins.</summary>
    public static async Task<IEnumerable<string>> Secrets(ApiHost api)
    {
        string?[] logins = [api.Connections.Owner, api.Connections.Service, api.Connections.Public, api.Connections.Analyst];
        return [.. await Sql.Column(api.Connections.Owner, Stored), .. logins.OfType<string>().Select(login => new NpgsqlConnectionStringBuilder(login).Password!)];
    }
}
