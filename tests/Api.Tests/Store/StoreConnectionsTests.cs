using Npgsql;
using Toepan.Api.Store;

namespace Toepan.Api.Tests.Store;

/// <summary>The lesser logins follow from the owner's connection string.</summary>
public sealed class StoreConnectionsTests
{
    private const string Owner = "Host=db.example;Port=5433;Database=programme;Username=owner;Password=secret";

    [Fact]
    public void FromOwner_Logins_AreNamedAfterTheDatabase()
    {
        var connections = StoreConnections.FromOwner(Owner);

        Assert.Equal("programme_service", connections.ServiceRole);
        Assert.Equal("programme_public", connections.PublicRole);
        Assert.Equal("programme_analyst", connections.AnalystRole);
        Assert.Equal(5433, new NpgsqlConnectionStringBuilder(connections.Service).Port);
    }

    [Fact]
    public void FromOwner_Passwords_AreStableAndDifferFromEachOtherAndTheOwners()
    {
        string[] passwords = [.. new[] { Owner, StoreConnections.FromOwner(Owner).Service, StoreConnections.FromOwner(Owner).Public, StoreConnections.FromOwner(Owner).Analyst! }
            .Select(text => new NpgsqlConnectionStringBuilder(text).Password!)];

        Assert.Equal(4, passwords.Distinct().Count());
        Assert.Equal(StoreConnections.FromOwner(Owner), StoreConnections.FromOwner(Owner));
    }

    [Theory]
    [InlineData("Host=db.example;Database=programme;Username=owner", "ConnectionStrings__ProgrammeService")]
    [InlineData("Host=db.example;Username=owner;Password=x", "Host, Database and Username")]
    [InlineData("Hots=db.example", "cannot be read")]
    public void FromOwner_IncompleteString_SaysWhatIsMissing(string owner, string said)
    {
        var refusal = Assert.Throws<StartupRefusedException>(() => StoreConnections.FromOwner(owner));

        Assert.Contains(said, refusal.Message, StringComparison.Ordinal);
    }
}
