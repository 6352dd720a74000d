using Toepan.Domain.Ratings;

namespace Toepan.Api.Ratings.Schemes;

/// <summary>One run whose overall level another scheme would change.</summary>
/// <param name="Test">Test code.</param>
/// <param name="Vehicle">Make and model.</param>
/// <param name="Class">Vehicle class.</param>
/// <param name="Valid">Whether the run is valid.</param>
/// <param name="Released">Whether its rating is released: that one stays whatever is adopted.</param>
/// <param name="Before">Current overall level; null = not rated.</param>
/// <param name="After">Level by the scheme asked about.</param>
/// <param name="Rule">The rule or bound that does it.</param>
/// <param name="Why">Why, in sentences.</param>
public sealed record WhatIfChange(
    string Test, string Vehicle, string Class, bool Valid, bool Released, ProtectionLevel? Before, ProtectionLevel? After, string Rule, string Why);

/// <summary>How many runs go from a level to a level; the same level included. Null = not rated.</summary>
/// <param name="Class">Vehicle class.</param>
public sealed record WhatIfFlow(string Class, ProtectionLevel? Before, ProtectionLevel? After, int Runs);

/// <summary>What a scheme would make of every current run of its procedure, from stored measures.</summary>
/// <param name="Scheme">Scheme key.</param>
/// <param name="Title">Its title.</param>
/// <param name="Against">Key of the scheme that rates now; runs are compared with their own current rating.</param>
/// <param name="Runs">Runs looked at.</param>
/// <param name="Changes">Runs whose level changes, by test code.</param>
/// <param name="Flows">Counts by class and levels.</param>
public sealed record WhatIf(
    string Scheme, string Title, string Against, int Runs, IReadOnlyList<WhatIfChange> Changes, IReadOnlyList<WhatIfFlow> Flows);
