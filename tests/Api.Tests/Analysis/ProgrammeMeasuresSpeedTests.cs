using System.Diagnostics;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Toepan.Api.Analysis;
using Toepan.Api.Security;
using Toepan.Api.Tests.Analysis.Historic;
using Toepan.Demo.Results;
using Toepan.Support;

namespace Toepan.Api.Tests.Analysis;

/// <summary>10 000 summary results with 600 000 values: what a question costs beside the same SQL by hand, and that both say the same.</summary>
public sealed class ProgrammeMeasuresSpeedTests(PostgresFixture postgres)
{
    private const int Count = 10_000;
    private const int Asked = 21;
    private const double MostBesideSql = 1.5;

    private const string ByHand =
        """
        SELECT r.test, v.key, v.make, v.model, v.class_key, coalesce(r.model_year, v.model_year_from), r.test_mass_kg, o.position, o.dummy, x.value, y.value
        FROM lab.summary_run r
        JOIN lab.vehicle v ON v.key = r.vehicle_key
        JOIN LATERAL (SELECT position, dummy FROM lab.summary_occupant WHERE batch_id = r.batch_id AND number = r.number ORDER BY position LIMIT 1) o ON true
        LEFT JOIN lab.summary_measure x ON x.batch_id = r.batch_id AND x.number = r.number AND x.position = o.position AND x.code = 'head.hic15'
        LEFT JOIN lab.summary_measure y ON y.batch_id = r.batch_id AND y.number = r.number AND y.position = o.position AND y.code = 'chest.deflection'
        WHERE NOT EXISTS (SELECT FROM lab.result_withdrawal w WHERE w.batch_id = r.batch_id)
        ORDER BY r.test
        """;

    [Fact]
    public async Task Load_PairOverTheProgramme_CostsNoMoreThanTheSqlAndSaysTheSame()
    {
        await using var api = await ApiHost.Start(postgres);
        using var engineer = await api.Machine(Role.Engineer);
        var file = new StringWriter { NewLine = "\n" };
        new SummaryGenerator(Count, seed: 1).Write(file);
        var brought = await engineer.Bring(Encoding.UTF8.GetBytes(file.ToString()));
        Assert.Equal(("10000", "600000"), (brought.Member("created"), brought.Member("values")));
        await using var owner = NpgsqlDataSource.Create(api.Connections.Owner);
        await using (var analyze = owner.CreateCommand("ANALYZE"))
        {
            await analyze.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        }

        using var scope = api.Services.CreateScope();
        var measures = scope.ServiceProvider.GetRequiredService<ProgrammeMeasures>();
        var source = scope.ServiceProvider.GetRequiredService<NpgsqlDataSource>();
        var analyst = new Viewer("test", new HashSet<Role> { Role.Analyst });
        var question = new MeasureQuestion { Measures = ["head.hic15", "chest.deflection"] };

        var (ours, rows) = await Median(async () => (await measures.Load(analyst, question, TestContext.Current.CancellationToken)).Value!);
        var (hand, sql) = await Median(() => Read(source));

        TestContext.Current.TestOutputHelper?.WriteLine($"service {ours:F1} ms, SQL by hand {hand:F1} ms");
        Assert.Equal(sql, rows.Rows.Select(row => (row.Test, row.Vehicle.Key, row.ModelYear, row.TestMassKg, row.Values[0], row.Values[1])));
        Assert.True(ours <= MostBesideSql * hand, $"{ours:F1} ms, SQL by hand {hand:F1} ms");
    }

    private static async Task<(double Milliseconds, T Last)> Median<T>(Func<Task<T>> act)
    {
        var last = await act();
        var times = new List<double>();
        for (var i = 0; i < Asked; i++)
        {
            var begun = Stopwatch.GetTimestamp();
            last = await act();
            times.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
        }

        return (times.Order().ElementAt(Asked / 2), last);
    }

    private static async Task<List<(string Test, string Vehicle, int? Year, double? Mass, double? X, double? Y)>> Read(NpgsqlDataSource source)
    {
        await using var command = source.CreateCommand(ByHand);
        await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var rows = new List<(string, string, int?, double?, double?, double?)>();
        while (await reader.ReadAsync(TestContext.Current.CancellationToken))
        {
            rows.Add((
                reader.GetString(0), reader.GetString(1), reader.IsDBNull(5) ? null : reader.GetInt32(5), Number(reader, 6), Number(reader, 9), Number(reader, 10)));
        }

        return rows;
    }

    private static double? Number(NpgsqlDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.GetDouble(column);
}
