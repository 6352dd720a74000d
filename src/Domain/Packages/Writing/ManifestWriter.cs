using System.Buffers;
using System.Globalization;
using System.Text.Json;
using Toepan.Domain.Packages.Manifest;

namespace Toepan.Domain.Packages.Writing;

/// <summary>A <see cref="ProgrammeDocument"/> → programme.json, unknown members put back where they were.</summary>
internal sealed class ManifestWriter
{
    private readonly ProgrammeDocument programme;
    private readonly Utf8JsonWriter json;

    private ManifestWriter(ProgrammeDocument programme, Utf8JsonWriter json) => (this.programme, this.json) = (programme, json);

    public static byte[] Bytes(ProgrammeDocument programme)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            new ManifestWriter(programme, json).Write();
        }

        return buffer.WrittenSpan.ToArray();
    }

    private void Write()
    {
        json.WriteStartObject();
        json.WriteString("test", programme.Test);
        json.WriteString("procedure", programme.Procedure);
        json.WriteString("date", programme.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        Text("laboratory", programme.Laboratory);
        Text("repeatOf", programme.RepeatOf);
        Vehicle();
        Conduct();
        Occupants();
        Structure();
        End(JsonPaths.Root);
    }

    private void Vehicle()
    {
        var vehicle = programme.Vehicle;
        json.WriteStartObject("vehicle");
        json.WriteString("key", vehicle.Key);
        Text("make", vehicle.Make);
        Text("model", vehicle.Model);
        if ((vehicle.ModelYearFrom ?? vehicle.ModelYearTo) is { } from)
        {
            Numbers("modelYears", [from, vehicle.ModelYearTo ?? from]);
        }

        json.WriteString("class", vehicle.Class);
        Number("kerbMassKg", vehicle.KerbMassKg);
        End(JsonPaths.Member(JsonPaths.Root, "vehicle"));
    }

    private void Conduct()
    {
        var conduct = programme.Conduct;
        json.WriteStartObject("conduct");
        Numbers("impactSpeedKmh", conduct.ImpactSpeedKmh);
        Number("overlapPercent", conduct.OverlapPercent);
        Number("testMassKg", conduct.TestMassKg);
        Number("declaredTestMassKg", conduct.DeclaredTestMassKg);
        if (conduct.DummyTemperatureC.Count > 0)
        {
            Numbers("dummyTemperatureC", conduct.DummyTemperatureC);
        }

        Number("impactAngleDeg", conduct.ImpactAngleDeg);
        Number("verticalAlignmentMm", conduct.VerticalAlignmentMm);
        End(JsonPaths.Member(JsonPaths.Root, "conduct"));
    }

    private void Occupants()
    {
        var list = JsonPaths.Member(JsonPaths.Root, "occupants");
        json.WriteStartArray("occupants");
        for (var i = 0; i < programme.Occupants.Count; i++)
        {
            var occupant = programme.Occupants[i];
            json.WriteStartObject();
            json.WriteNumber("position", occupant.Position);
            Text("seat", occupant.Seat.Length == 0 ? null : occupant.Seat);
            json.WriteString("dummy", occupant.Dummy.ToString());
            End(JsonPaths.Item(list, i));
        }

        json.WriteEndArray();
    }

    private void Structure()
    {
        var path = JsonPaths.Member(JsonPaths.Root, "structure");
        json.WriteStartObject("structure");
        json.WriteString("unit", programme.Structure.Unit);
        json.WriteStartObject("axes");
        json.WriteString("x", programme.Structure.X);
        json.WriteString("y", programme.Structure.Y);
        json.WriteString("z", programme.Structure.Z);
        End(JsonPaths.Member(path, "axes"));
        End(path);
    }

    // The unknown members of an object, and its end.
    private void End(string path)
    {
        foreach (var (memberPath, value) in programme.Unknown)
        {
            if (JsonPaths.MemberName(path, memberPath) is { } name)
            {
                json.WritePropertyName(name);
                value.WriteTo(json);
            }
        }

        json.WriteEndObject();
    }

    private void Text(string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, TextBytes.WithoutNul(value));
        }
    }

    private void Number(string name, decimal? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
    }

    private void Numbers(string name, IEnumerable<decimal> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }
}
