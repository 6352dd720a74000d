using System.Buffers.Binary;
using System.Text;
using System.Text.Json;
using Toepan.Domain.Analysis.Traces;

namespace Toepan.Api.Analysis.Traces;

/// <summary>One trace in the header of the binary form; times in s.</summary>
/// <param name="Trace">As it was asked.</param>
/// <param name="Unit">Unit of the values.</param>
/// <param name="Absent">Why there is none, or null.</param>
/// <param name="Shift">What was added to every time.</param>
/// <param name="Interval">Sampling interval.</param>
/// <param name="Reduced">True: values are pairs a column of the window; false: samples from <paramref name="First"/> on.</param>
/// <param name="First">Time of the first value where nothing was reduced, shift included.</param>
/// <param name="Offset">Index of its first value among all values.</param>
/// <param name="Count">Number of its values.</param>
/// <param name="Marks">Windows and peaks of stored measures.</param>
/// <param name="Limits">Limits that apply.</param>
public sealed record TraceHeader(
    string Trace, string Unit, string? Absent, double Shift, double Interval, bool Reduced, double First, int Offset, int Count,
    IReadOnlyList<TraceMark> Marks, IReadOnlyList<TraceLimit> Limits);

/// <summary>The header of the binary form.</summary>
public sealed record TraceSetHeader(double From, double To, int Columns, IReadOnlyList<TraceHeader> Traces);

/// <summary>
/// A set of traces as bytes: <c>TPT1</c>; length n of the header, uint32; n bytes of UTF-8 JSON (<see cref="TraceSetHeader"/>), blank-padded so that n is
/// a multiple of 4; then every value as float32. All little-endian. Rounding to float32 keeps order, so the extremes of a column stay its extremes.
/// </summary>
public static class TraceBinary
{
    public const string MediaType = "application/octet-stream";
    private const int HeadBytes = 8;

    public static byte[] Write(TraceSet set)
    {
        var reduced = set.Traces.Select(trace => trace.Signal is null ? new ReducedTrace(false, 0, []) : set.Reduce(trace)).ToList();
        var header = JsonSerializer.SerializeToUtf8Bytes(Header(set, reduced), JsonSerializerOptions.Web);
        var padded = (header.Length + 3) / 4 * 4;
        var bytes = new byte[HeadBytes + padded + (reduced.Sum(trace => trace.Values.Length) * sizeof(float))];
        Encoding.ASCII.GetBytes("TPT1", bytes);
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(4), (uint)padded);
        bytes.AsSpan(HeadBytes, padded).Fill((byte)' ');
        header.CopyTo(bytes, HeadBytes);
        var values = bytes.AsSpan(HeadBytes + padded);
        foreach (var value in reduced.SelectMany(trace => trace.Values))
        {
            BinaryPrimitives.WriteSingleLittleEndian(values, (float)value);
            values = values[sizeof(float)..];
        }

        return bytes;
    }

    private static TraceSetHeader Header(TraceSet set, List<ReducedTrace> reduced)
    {
        var offset = 0;
        var traces = new List<TraceHeader>(reduced.Count);
        foreach (var (trace, drawn) in set.Traces.Zip(reduced))
        {
            traces.Add(new(
                trace.Trace.ToString(), trace.Signal?.Unit ?? "", trace.Absent, trace.ShiftS, trace.Signal?.History.IntervalS ?? 0, drawn.Reduced,
                drawn.FirstS + trace.ShiftS, offset, drawn.Values.Length, trace.Marks, trace.Limits));
            offset += drawn.Values.Length;
        }

        return new(set.FromS, set.ToS, set.Columns, traces);
    }
}
