using System.Security.Cryptography;
using System.Text;
using Npgsql;
using Toepan.Domain.Measures;

namespace Toepan.Api.Store;

/// <summary>
/// The documented views of schema <c>analysis</c>. They are made anew only when their text has changed, which the comment of the schema tells, so that a start takes no
/// lock that a long query of an analyst would hold up.
/// </summary>
internal static class AnalysisViews
{
    private const string Mark = "Documented read-only views of the programme; see docs/analysis.md. Text ";

    /// <summary>Makes the views current, in the caller's transaction, as the owner.</summary>
    public static async Task Ensure(NpgsqlConnection owner, CancellationToken cancellation)
    {
        var script = Catalogue() + Text();
        var comment = Mark + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(script)))[..16];
        await using var read = new NpgsqlCommand("SELECT obj_description('analysis'::regnamespace, 'pg_namespace')", owner);
        if (await read.ExecuteScalarAsync(cancellation) as string == comment)
        {
            return;
        }

        await using var make = new NpgsqlCommand($"{Drop};\n{script};\nCOMMENT ON SCHEMA analysis IS {Literal(comment)}", owner);
        await make.ExecuteNonQueryAsync(cancellation);
    }

    /// <summary>Drops the views, so that a migration may change the tables below them.</summary>
    public static async Task Clear(NpgsqlConnection owner, CancellationToken cancellation)
    {
        await using var drop = new NpgsqlCommand($"{Drop}; COMMENT ON SCHEMA analysis IS NULL", owner);
        await drop.ExecuteNonQueryAsync(cancellation);
    }

    private const string Drop =
        """
        DO $$ DECLARE one record; BEGIN
          FOR one IN SELECT viewname FROM pg_views WHERE schemaname = 'analysis' LOOP
            EXECUTE format('DROP VIEW IF EXISTS analysis.%I CASCADE', one.viewname);
          END LOOP;
        END $$
        """;

    // What measures there are is known to the program alone.
    private static string Catalogue()
    {
        var rows = MeasureCatalogue.Entries.Select((entry, order) =>
            $"({order}, {Literal(entry.Code)}, {Literal(entry.Title)}, {Literal(entry.Unit)}, {Literal(entry.FilterClass)}, {Literal(MethodEdition.Current)})");
        return $"""
            CREATE VIEW analysis.measure_catalogue (place, code, title, unit, filter_class, method_edition) AS VALUES
            {string.Join(",\n", rows)};
            COMMENT ON VIEW analysis.measure_catalogue IS 'Every measure of the current method edition; <point> and <name> stand for any name';
            COMMENT ON COLUMN analysis.measure_catalogue.place IS 'Place in reading order, from 0';
            COMMENT ON COLUMN analysis.measure_catalogue.code IS 'Measure code, or its pattern';
            COMMENT ON COLUMN analysis.measure_catalogue.title IS 'What it is, in words';
            COMMENT ON COLUMN analysis.measure_catalogue.unit IS 'Unit; empty = dimensionless';
            COMMENT ON COLUMN analysis.measure_catalogue.filter_class IS 'Channel frequency class of its inputs';
            COMMENT ON COLUMN analysis.measure_catalogue.method_edition IS 'Method edition that defines it';

            """;
    }

    private static string Text()
    {
        using var stream = typeof(AnalysisViews).Assembly.GetManifestResourceStream("Toepan.Api.Store.Sql.analysis.sql")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    private static string Literal(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
