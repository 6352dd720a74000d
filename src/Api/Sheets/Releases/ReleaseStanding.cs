using Toepan.Domain.Sheets.Releases;

namespace Toepan.Api.Sheets.Releases;

/// <summary>An answer of the manufacturer to record.</summary>
/// <param name="Text">Their words.</param>
/// <param name="MayPrint">Whether they agree to its being printed on the sheet.</param>
/// <param name="ReceivedOn">When it came; null = today.</param>
public sealed record NewReply(string? Text, bool MayPrint, DateOnly? ReceivedOn);

/// <summary>Where a vehicle's sheet stands.</summary>
/// <param name="Vehicle">Vehicle key.</param>
/// <param name="Title">Make and model.</param>
/// <param name="Test">Run that rates it.</param>
/// <param name="Document">Hash of the document as the data give it now.</param>
/// <param name="Stage">One word or two for lists.</param>
/// <param name="WaitsOn">On whom it waits; null = on nobody.</param>
/// <param name="Steps">Every step with who and when.</param>
/// <param name="Reply">The manufacturer's answer, or null.</param>
/// <param name="Versions">Versions public or with a time.</param>
/// <param name="Address">Public address; null before the first time is set.</param>
public sealed record ReleaseStanding(
    string Vehicle, string Title, string Test, string Document, string Stage, string? WaitsOn, IReadOnlyList<ReleaseStep> Steps, ManufacturerReply? Reply,
    IReadOnlyList<ReleaseVersion> Versions, string? Address)
{
    internal static ReleaseStanding Of(ReleaseFile file)
    {
        var steps = ReleaseSteps.Of(file.Facts);
        return new(
            file.Vehicle, file.Title, file.Signed.Test, file.Facts.Sha256, steps.Stage, steps.WaitsOn, steps.All, file.Facts.Reply, file.Facts.Versions,
            file.Slug is null ? null : $"/sheets/{file.Slug}");
    }
}
