namespace Toepan.Api.Security;

/// <summary>
/// Who may do what in the laboratory's data. Every role reads all of it; the public reads none. Packages and channel flags are
/// taken from engineers, managers and administrators; classes and twins from managers and administrators.
/// </summary>
internal static class Access
{
    /// <summary>Null where the viewer may read laboratory data, else the refusal.</summary>
    public static Failure? ToRead(Viewer viewer) => viewer.Roles.Count > 0 ? null : Failure.Forbidden("read laboratory data");

    /// <summary>Null where the viewer may bring packages and decide about channels, else the refusal.</summary>
    public static Failure? ToMeasure(Viewer viewer, string act) =>
        viewer.Is(Role.Engineer, Role.Manager, Role.Administrator) ? null : Failure.Forbidden(act);

    /// <summary>Null where the viewer may arrange the programme, else the refusal.</summary>
    public static Failure? ToArrange(Viewer viewer, string act) =>
        viewer.Is(Role.Manager, Role.Administrator) ? null : Failure.Forbidden(act);
}
