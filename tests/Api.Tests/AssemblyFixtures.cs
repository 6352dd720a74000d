using Toepan.Support;

[assembly: AssemblyFixture(typeof(PostgresFixture))]
