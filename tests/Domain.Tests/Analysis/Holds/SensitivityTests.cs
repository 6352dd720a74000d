using Toepan.Domain.Analysis.Holds;
using Toepan.Domain.Analysis.Repeats;
using Toepan.Domain.Ratings;
using Toepan.Domain.Tests.Ratings;
using Xunit;

namespace Toepan.Domain.Tests.Analysis.Holds;

/// <summary>Places where the level changes, against the rater itself stepped over the range, and against closed forms.</summary>
public sealed class SensitivityTests
{
    private const double NominalKmh = 64.4;

    [Fact]
    public void Of_RandomRuns_LevelChangesThereAndNotBefore()
    {
        var random = new Random(7);
        for (var run = 0; run < 15; run++)
        {
            var facts = RandomRuns.Draw(random, missing: 0, findings: 0.1).Inputs();
            var model = Model(facts);
            var report = Sensitivity.Of(model, null, NominalKmh);
            foreach (var (row, move) in report.Rows.SelectMany(row => new[] { (row, row.ToWorse), (row, row.ToBetter) }).Where(pair => pair.Item2 is not null))
            {
                for (var step = 0; step < 8; step++)
                {
                    Assert.Equal(report.Overall, Rated(facts, model, row, row.Input.Value + (move!.Change * 0.9999999 * step / 7)));
                }

                Assert.Equal(move!.Level, Rated(facts, model, row, move.To + (Math.Sign(move.Change) * 1e-6 * Math.Max(1, Math.Abs(move.To)))));
            }
        }
    }

    [Fact]
    public void Of_FixedFigure_ChangesNothingAtAnyValue()
    {
        var random = new Random(8);
        for (var run = 0; run < 10; run++)
        {
            var facts = RandomRuns.Draw(random, missing: 0, findings: 0.1).Inputs();
            var model = Model(facts);
            var report = Sensitivity.Of(model, null, NominalKmh);
            var moving = report.Rows.Select(row => row.Input).ToList();
            foreach (var input in model.Inputs.Except(moving))
            {
                Assert.All(new[] { 0, 0.5, 0.999, input.IsRisk ? 1 : 1e6 }, value => Assert.Equal(report.Overall, Rated(facts, model, new(input, null, null, null), value)));
            }
        }
    }

    [Fact]
    public void Of_StructureAlone_IsTheBoundOfTheScheme()
    {
        // Everything high: the footwell alone takes the overall to moderate just beyond 160 mm (structure low), by the scheme's document.
        var row = Sensitivity.Of(Model(RatingCase.Benign().Inputs()), null, NominalKmh).Rows.Single(r => r.Input.Code == "structure.footwell.rearward");

        Assert.Equal((160.0, 130.0, ProtectionLevel.Moderate), (row.ToWorse!.To, row.ToWorse.Change, row.ToWorse.Level));
        Assert.Equal(130.0 / 15, row.ToWorse.Deviates!.Value, 1e-9);
        Assert.Null(row.ToBetter);
    }

    [Fact]
    public void Of_ChanceAlone_IsTheNormalTail()
    {
        // scipy 1.10: norm.sf(10/15) = 0.2524925375469229.
        var report = Sensitivity.Of(Model(RatingCase.Benign().Set("structure.footwell.rearward", 150).Inputs()), null, NominalKmh);

        Assert.Equal("structure.footwell.rearward", report.MostLikely!.Input.Code);
        Assert.Equal(0.2524925375469229, report.MostLikely.ChanceAlone!.Value, 1e-9);
    }

    [Fact]
    public void Of_OverSpeed_SaysWhatTheEnergyCouldExplain()
    {
        // Footwell 161 mm: moderate overall. Divided by the energy ratio (65/64.4)² = 1.0187 it is 158.05 mm: high. The speed at which 161 → 160 mm: 64.4·√(161/160).
        var run = RatingCase.Benign().Set("structure.footwell.rearward", 161);
        var speed = Sensitivity.Of(Model(run.Inputs()), 65, NominalKmh).Speed!;

        Assert.Equal(65 / 64.4 * (65 / 64.4), speed.EnergyRatio, 1e-11);
        Assert.Equal(ProtectionLevel.High, speed.AtNominal);
        Assert.Equal(64.4 * Math.Sqrt(161.0 / 160), speed.SpeedForBetterKmh!.Value, 1e-6);
    }

    [Fact]
    public void Of_RunNotRated_HasNoRowsAndSaysWhy()
    {
        var report = Sensitivity.Of(Model(RatingCase.Benign().Absent("neck.nij").Inputs()), 64.4, NominalKmh);

        Assert.Empty(report.Rows);
        Assert.NotNull(report.NotRated);
    }

    private static LevelModel Model(RatingInputs facts) => LevelModelBuilder.Build(RatingCase.Scheme, facts, ScatterTable.Of(RatingCase.Scheme, []));

    private static ProtectionLevel? Rated(RatingInputs facts, LevelModel model, SensitivityRow row, double value) =>
        Rater.Rate(RatingCase.Scheme, LevelModelTests.With(facts, model, [.. model.Inputs.Select(input => input == row.Input ? value : input.Value)])).Overall;
}
