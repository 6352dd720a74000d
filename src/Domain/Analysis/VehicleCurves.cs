using Toepan.Domain.Channels;
using Toepan.Domain.Measures.Pulse;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Analysis;

/// <summary>Pulse, velocity and travel of the vehicle, and the velocities of the dummies over it.</summary>
public sealed class VehicleCurves(double impactSpeedKmh, IChannelSource channels)
{
    private const double KmhPerMs = 3.6;
    private const double MmPerM = 1000;

    /// <summary>Pulse at class 60; velocity and travel integrated at class 180; dummy velocities over the vehicle's.</summary>
    public IEnumerable<CurveSet> All(IReadOnlyList<Occupant> occupants)
    {
        var (pulse, velocity, travel) = (Set("vehicle.pulse", "g"), Set("vehicle.velocity", "km/h"), Set("vehicle.travel", "mm"));
        var drawn = VehiclePulse.Find(channels, 60);
        pulse.Add("deceleration", drawn.History is { } a ? Scaled(a, a.Values, -1) : null, drawn.Absent);
        var integrated = VehiclePulse.Find(channels, 180);
        if (integrated.History is { } history)
        {
            var motion = new VehicleMotion(history, impactSpeedKmh / KmhPerMs);
            velocity.Add("vehicle", Scaled(history, motion.VelocityMs, KmhPerMs), null);
            travel.Add("travel", Scaled(history, motion.TravelM, MmPerM), null);
        }
        else
        {
            velocity.Add("vehicle", null, integrated.Absent);
            travel.Add("travel", null, integrated.Absent);
        }

        AddDummies(velocity, occupants);
        return [pulse.Done(), velocity.Done(), travel.Done()];
    }

    private void AddDummies(CurveCollector velocity, IReadOnlyList<Occupant> occupants)
    {
        var rated = occupants.FirstOrDefault(o => o.Seat == "driver") ?? occupants.MinBy(o => o.Position)!;
        foreach (var (name, location, filterClass) in new[] { ("pelvis", "PELV0000", 180), ("chest", "CHST0000", 180), ("head", "HEAD0000", 180) })
        {
            var answer = channels.Find(ChannelPattern.Dummy(rated.Position, location, "ACX"), filterClass);
            if (answer.Channel is { } channel)
            {
                velocity.Add(name, Scaled(channel.History, new VehicleMotion(channel.History, impactSpeedKmh / KmhPerMs).VelocityMs, KmhPerMs), null);
            }
        }
    }

    private static CurveCollector Set(string key, string unit) => new(key, null, unit);

    private static TimeHistory Scaled(TimeHistory like, ReadOnlyMemory<double> values, double factor)
    {
        var scaled = values.ToArray();
        for (var i = 0; i < scaled.Length; i++)
        {
            scaled[i] *= factor;
        }

        return new TimeHistory(like.StartS, like.IntervalS, scaled);
    }
}
