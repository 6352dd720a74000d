using System.Globalization;
using Toepan.Api.Ratings.Recomputations;
using Toepan.Api.Ratings.Tables;
using Toepan.Domain.Ratings;

namespace Toepan.Web.Pages.Ratings;

/// <summary>Background work and levels in plain words.</summary>
public static class RecomputationWords
{
    public static string Title(Recomputation work) => work.Kind == RecomputationKind.Scheme
        ? $"Rating every run by {work.Scheme}"
        : $"Computing every run by method edition {work.MethodEdition}";

    public static string Progress(Recomputation work)
    {
        var counts = string.Create(CultureInfo.InvariantCulture, $"{work.Done} of {work.Runs} runs done");
        var released = work.Released == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {work.Released} of them released and left as they are");
        var state = work.State switch { RecomputationState.Running => "at work", RecomputationState.Stopped => "stopped", _ => "finished" };
        return $"{state}, {counts}{released}";
    }

    /// <summary>"moderate protection", or that there is none.</summary>
    public static string Level(ProtectionLevel? level) => level?.Protection() ?? "not rated";

    /// <summary>A bound of a scheme: excess risks in per cent.</summary>
    public static string Bounds(LevelBounds bounds, string unit, bool share)
    {
        string[] shown = [.. new[] { bounds.High, bounds.Moderate, bounds.Low }.Select(bound => (share ? bound * 100 : bound).ToString("0.###", CultureInfo.InvariantCulture))];
        return $"high up to {shown[0]}, moderate {shown[1]}, low {shown[2]} {(share ? "%" : unit)}".TrimEnd();
    }
}
