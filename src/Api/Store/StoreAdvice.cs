using Npgsql;

namespace Toepan.Api.Store;

/// <summary>What a server's administrator has to run where this service lacks the rights. No password is ever written out.</summary>
internal static class StoreAdvice
{
    public static string Logins(StoreConnections connections)
    {
        var owner = new NpgsqlConnectionStringBuilder(connections.Owner);
        var (service, visitor) = (GrantStatements.Quote(connections.ServiceRole), GrantStatements.Quote(connections.PublicRole));
        var database = GrantStatements.Quote(owner.Database!);
        return $"""
            The login {owner.Username} of ConnectionStrings__Programme may not create or set up the service's other logins.
            Either let it:
                ALTER ROLE {GrantStatements.Quote(owner.Username!)} CREATEROLE;
            or run this as an administrator of the server, with two passwords of your own:
                CREATE ROLE {service} LOGIN PASSWORD '…';
                CREATE ROLE {visitor} LOGIN PASSWORD '…';
                ALTER ROLE {visitor} SET default_transaction_read_only = on;
                GRANT CONNECT ON DATABASE {database} TO {service}, {visitor};
            and, where analysts shall read the views of schema analysis, the same with default_transaction_read_only for a third one, whose connection string is
            ConnectionStrings__ProgrammeAnalyst;
            and start with ConnectionStrings__ProgrammeService and ConnectionStrings__ProgrammePublic set to the same server and database with these logins.
            """;
    }

    public static string Schemas(string owner)
    {
        var builder = new NpgsqlConnectionStringBuilder(owner);
        return $"""
            The login {builder.Username} of ConnectionStrings__Programme may not create the schemas lab, pub and analysis or their tables. Run this as an administrator of the server:
                GRANT CREATE, CONNECT ON DATABASE {GrantStatements.Quote(builder.Database!)} TO {GrantStatements.Quote(builder.Username!)};
            """;
    }

    public static string Database(string owner)
    {
        var builder = new NpgsqlConnectionStringBuilder(owner);
        return $"""
            There is no database {builder.Database} and the login {builder.Username} may not create it. Run this as an administrator of the server:
                CREATE DATABASE {GrantStatements.Quote(builder.Database!)} OWNER {GrantStatements.Quote(builder.Username!)} ENCODING 'UTF8' TEMPLATE template0;
            """;
    }
}
