using Toepan.Domain.Measures;
using Toepan.Domain.Measures.Structure;
using Toepan.Domain.Packages;
using Toepan.Domain.Programme;
using Xunit;

namespace Toepan.Domain.Tests.Measures.Structure;

public sealed class StructureReducerTests
{
    private static readonly ProcedureEdition Procedure = ProcedureLibrary.Find("offset-frontal-64")!;

    private static readonly Coordinates[] References =
        [new(3000, -600, 200), new(3000, 600, 200), new(3200, -500, 900), new(3200, 500, 900), new(2600, 0, 150)];

    private static readonly Coordinates[] Noise = [new(.4, -.3, .2), new(-.2, .5, -.1), new(.1, .2, -.4), new(-.3, -.1, .3), new(0, -.3, 0)];

    /// <summary>standards.md §16-11 to all digits given; its displacements are plain differences, ours are rearward = −Δx and upward = −Δz.</summary>
    [Fact]
    public void Reduce_CaseElevenOfStandards_GivesItsDigits()
    {
        var reduced = Reduce(CaseEleven(), StructureFrame.Default);

        Assert.Equal(0.37953032, reduced.Result.RmsMm!.Value, 5e-9);
        Assert.Equal(0.51278842, reduced.Result.References.Max(r => r.ResidualMm), 5e-9);
        Displaced(reduced, "wheel-hub", -60.13431413, 6.09242540, 25.33766868, 65.53816321);
        Displaced(reduced, "footwell-upper-outer", -120.18969470, -8.84948474, 40.36838978, 127.09635316);
        Displaced(reduced, "knee-panel-outer", -80.11507086, 1.07395203, 35.32746721, 87.56487819);
        Assert.DoesNotContain(reduced.Result.References, r => r.Moved);
    }

    [Fact]
    public void Reduce_BothFramesMovedRigidly_GivesTheSameDisplacementsAfter()
    {
        var points = CaseEleven();
        var moved = points.Select(p => p with { After = Moved(p.After!.Value, -2, 1.3, 0.7, new(-812, 233, 90)) }).ToList();

        var (first, second) = (Reduce(points, StructureFrame.Default), Reduce(moved, StructureFrame.Default));

        Assert.All(first.Result.Points.Zip(second.Result.Points), pair =>
        {
            Assert.Equal(pair.First.Rearward, pair.Second.Rearward, 1e-8);
            Assert.Equal(pair.First.Upward, pair.Second.Upward, 1e-8);
            Assert.Equal(pair.First.Uncertainty!.Value, pair.Second.Uncertainty!.Value, 1e-8);
        });
    }

    /// <summary>The same points written with other axes and another unit; left, rearward, up in one order is left-handed.</summary>
    [Theory]
    [InlineData("m", "rearward", "left", "down")]
    [InlineData("cm", "rearward", "right", "down")]
    [InlineData("mm", "up", "forward", "right")]
    public void Reduce_OtherAxesAndUnit_GivesTheSameDisplacements(string unit, string x, string y, string z)
    {
        var written = CaseEleven().Select(p => p with { Before = Written(p.Before!.Value), After = Written(p.After!.Value) }).ToList();
        var (first, second) = (Reduce(CaseEleven(), StructureFrame.Default), Reduce(written, new(unit, x, y, z)));

        Assert.All(first.Result.Points.Zip(second.Result.Points), pair =>
        {
            Assert.Equal(pair.First.Rearward, pair.Second.Rearward, 1e-9);
            Assert.Equal(pair.First.Lateral, pair.Second.Lateral, 1e-9);
            Assert.Equal(pair.First.Upward, pair.Second.Upward, 1e-9);
        });

        Coordinates Written(Coordinates c) => new(Along(c, x), Along(c, y), Along(c, z));
        double Along(Coordinates c, string axis) => axis switch
        {
            "forward" => c.X, "rearward" => -c.X, "right" => c.Y, "left" => -c.Y, "down" => c.Z, _ => -c.Z,
        } / unit switch { "m" => 1000, "cm" => 10, _ => 1 };
    }

    [Theory]
    [InlineData("mm", "forward", "forward", "down")]
    [InlineData("inch", "forward", "right", "down")]
    public void Reduce_FrameThatMakesNoSense_IsAbsentWithReason(string unit, string x, string y, string z)
    {
        var reduced = Reduce(CaseEleven(), new(unit, x, y, z));

        Assert.NotNull(reduced.Result.Absent);
        Assert.All(reduced.Measures, m => Assert.Equal(reduced.Result.Absent, m.Absent));
    }

    [Fact]
    public void Reduce_NoPoints_IsAbsentForEveryNamedPoint()
    {
        var reduced = StructureReducer.Reduce(Procedure, StructureFrame.Default, [], [new("knee", "knee-panel-outer", 90, 2)]);

        Assert.Equal((4 * Procedure.Points.Count) + 4 + 2, reduced.Measures.Count);
        Assert.All(reduced.Measures, m => Assert.Equal("no points were measured", m.Absent));
    }

    [Fact]
    public void Reduce_TwoReferences_IsAbsentAndSaysHowMany()
    {
        var reduced = Reduce([.. CaseEleven().Where(p => p.Name is not ("ref-0" or "ref-1" or "ref-2"))], StructureFrame.Default);

        Assert.StartsWith("2 reference points", reduced.Result.Absent, StringComparison.Ordinal);
        Assert.Contains(reduced.Problems, p => p.Code == "structure.absent");
    }

    [Fact]
    public void Reduce_FourReferences_IsAProblemAndStillMeasured()
    {
        var reduced = Reduce([.. CaseEleven().Where(p => p.Name != "ref-3")], StructureFrame.Default);

        Assert.Contains(reduced.Problems, p => p.Code == "structure.few-references");
        Assert.NotNull(Of(reduced, "structure.wheel-hub.rearward").Value);
    }

    [Fact]
    public void Reduce_CollinearReferencesAfterOnly_IsAbsent()
    {
        var points = CaseEleven().Select((p, i) => p.Role == PointRole.Reference ? p with { After = new(3000 + (50 * i), 10 * i, 200) } : p).ToList();

        Assert.Contains("on one line", Reduce(points, StructureFrame.Default).Result.Absent, StringComparison.Ordinal);
    }

    [Fact]
    public void Reduce_ReferenceKnockedAway_NamesItAndKeepsItInTheFit()
    {
        var points = CaseEleven();
        points.Insert(5, new("ref-5", PointRole.Reference, new(2700, -650, 700), Moved(new(2700, -650, 700), 1, -2, 3, new(12.5, -7.25, 4)), 7));
        points.Insert(6, new("ref-6", PointRole.Reference, new(2700, 650, 700), Moved(new(2700, 650, 690), 1, -2, 3, new(12.5, -7.25, 4)), 8));

        var reduced = Reduce(points, StructureFrame.Default);

        Assert.Equal(["ref-6"], reduced.Result.References.Where(r => r.Moved).Select(r => r.Point));
        Assert.Equal(7, reduced.Result.References.Count);
        Assert.Contains(reduced.Problems, p => p.Code == "structure.reference-moved" && p.Message.Contains("ref-6", StringComparison.Ordinal));
    }

    [Fact]
    public void Reduce_RmsOverFive_IsAProblem()
    {
        var points = CaseEleven().Select((p, i) => i < 5 ? p with { After = p.After!.Value.Plus(Noise[i].Times(20)) } : p).ToList();

        Assert.Contains(Reduce(points, StructureFrame.Default).Problems, p => p.Code == "structure.alignment");
    }

    [Fact]
    public void Reduce_BlankAndDoubleRows_AreNamedAndLeftOut()
    {
        var points = CaseEleven();
        points.Add(new("ref-blank", PointRole.Reference, new(1, 2, 3), null, 20));
        points.Add(new("wheel-hub", PointRole.Measured, new(0, 0, 0), new(0, 0, 0), 21));
        points.Add(new("pedal-brake", PointRole.Measured, new(0, 0, 0), null, 22));

        var reduced = Reduce(points, StructureFrame.Default);

        Assert.Equal(5, reduced.Result.References.Count);
        Assert.Contains(reduced.Problems, p => p.Code == "structure.reference-blank" && p.Line == 20);
        Assert.Contains(reduced.Problems, p => p.Code == "structure.point-twice" && p.Line == 21);
        Assert.Equal("its position after the crash is not recorded", Of(reduced, "structure.pedal-brake.rearward").Absent);
        Displaced(reduced, "wheel-hub", -60.13431413, 6.09242540, 25.33766868, 65.53816321);
    }

    /// <summary>Same frame before and after, so the figures follow by hand.</summary>
    [Fact]
    public void Reduce_KnownDisplacements_GivesFootwellOpeningCrushAndClearances()
    {
        List<StructuralPoint> points = [.. References.Select((p, i) => new StructuralPoint($"ref-{i}", PointRole.Reference, p, p, i + 2))];
        Add("footwell-upper-outer", 1200, 1100);
        Add("footwell-lower-inner", 1200, 1040);
        Add("footwell-left-rest", 1200, 200);
        Add("door-opening-front-upper", 1000, 960);
        Add("door-opening-rear-upper", 0, 5);
        Add("door-opening-front-lower", 1000, 930);
        Add("exterior-front-left", 2400, 1700);
        Add("exterior-front-right", 2400, 2300);
        Add("knee-panel-outer", 900, 830);

        var reduced = StructureReducer.Reduce(Procedure, StructureFrame.Default, points, [new("knee", "knee-panel-outer", 100, 2), new("knee", "wheel-hub", 1, 3), new("hub", "wheel-hub", 200, 4)]);

        Is("structure.footwell.rearward", 160, "footwell-lower-inner");
        Is("structure.opening.closure", 45, "upper");
        Is("vehicle.crush.static", 700, "exterior-front-left");
        Is("structure.footwell-left-rest.rearward", 1000, null);
        Is("clearance.knee.residual", 30, null);
        Is("clearance.knee.residual.smaller", -90, null);
        Assert.Contains("wheel-hub", Of(reduced, "clearance.hub.residual").Absent, StringComparison.Ordinal);
        Assert.Contains(reduced.Problems, p => p.Code == "structure.clearance-twice" && p.Line == 3);

        void Add(string name, double before, double after) =>
            points.Add(new(name, PointRole.Measured, new(before, -300, 100), new(after, -300, 100), points.Count + 2));

        void Is(string code, double value, string? detail)
        {
            var measure = Of(reduced, code);
            Assert.Equal(value, measure.Value!.Value, 1e-9);
            Assert.Equal(detail, measure.Detail);
            Assert.NotNull(measure.Uncertainty);
        }
    }

    [Fact]
    public void Reduce_ClearanceInCentimetres_UsesTheUnitOfTheStructure()
    {
        List<StructuralPoint> points = [.. References.Select((p, i) => new StructuralPoint($"ref-{i}", PointRole.Reference, p, p, i + 2))];
        points.Add(new("wheel-hub", PointRole.Measured, new(50, 0, 0), new(48, 0, 0), 9));

        var reduced = StructureReducer.Reduce(Procedure, new("cm", "forward", "right", "down"), points, [new("hub", "wheel-hub", 15, 2)]);

        Assert.Equal(130, Of(reduced, "clearance.hub.residual").Value!.Value, 1e-9);
    }

    private static List<StructuralPoint> CaseEleven()
    {
        List<StructuralPoint> points = [.. References.Select((p, i) =>
            new StructuralPoint($"ref-{i}", PointRole.Reference, p, Moved(p, 1, -2, 3, new Coordinates(12.5, -7.25, 4).Plus(Noise[i])), i + 2))];
        Target("wheel-hub", new(900, -350, 700), new(-60, 5, 25));
        Target("footwell-upper-outer", new(700, -300, 150), new(-120, -10, 40));
        Target("knee-panel-outer", new(1000, -350, 850), new(-80, 0, 35));
        return points;

        void Target(string name, Coordinates pre, Coordinates displacement) =>
            points.Add(new(name, PointRole.Measured, pre, Moved(pre.Plus(displacement), 1, -2, 3, new(12.5, -7.25, 4)), points.Count + 2));
    }

    /// <summary>Rz(c) Ry(b) Rx(a) · p + shift, angles in degrees, written out as three plane turns.</summary>
    private static Coordinates Moved(Coordinates p, double aDeg, double bDeg, double cDeg, Coordinates shift)
    {
        var (sa, ca) = Math.SinCos(double.DegreesToRadians(aDeg));
        var (sb, cb) = Math.SinCos(double.DegreesToRadians(bDeg));
        var (sc, cc) = Math.SinCos(double.DegreesToRadians(cDeg));
        var (x1, y1, z1) = (p.X, (ca * p.Y) - (sa * p.Z), (sa * p.Y) + (ca * p.Z));
        var (x2, y2, z2) = ((cb * x1) + (sb * z1), y1, (cb * z1) - (sb * x1));
        return new Coordinates((cc * x2) - (sc * y2), (sc * x2) + (cc * y2), z2).Plus(shift);
    }

    private static StructureReduction Reduce(List<StructuralPoint> points, StructureFrame frame) => StructureReducer.Reduce(Procedure, frame, points, []);

    private static Measure Of(StructureReduction reduced, string code) => Assert.Single(reduced.Measures, m => m.Code == code);

    private static void Displaced(StructureReduction reduced, string point, double dx, double dy, double dz, double resultant)
    {
        Assert.Equal(-dx, Of(reduced, $"structure.{point}.rearward").Value!.Value, 6e-9);
        Assert.Equal(dy, Of(reduced, $"structure.{point}.lateral").Value!.Value, 6e-9);
        Assert.Equal(-dz, Of(reduced, $"structure.{point}.upward").Value!.Value, 6e-9);
        Assert.Equal(resultant, Of(reduced, $"structure.{point}.resultant").Value!.Value, 6e-9);
    }
}
