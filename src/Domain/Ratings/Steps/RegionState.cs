namespace Toepan.Domain.Ratings.Steps;

/// <summary>A region on its way through the rules.</summary>
internal sealed record RegionState
{
    public required string Region { get; init; }
    public required string Name { get; init; }
    public required int? Position { get; init; }
    public string? NotRated { get; init; }
    public ProtectionLevel? Level { get; init; }
    public ProtectionLevel? Unlimited { get; init; }
    public double? Risk { get; init; }
    public double? Excess { get; init; }

    /// <summary>What decides the level before caps.</summary>
    public Driver? Driver { get; init; }

    /// <summary>Other measures of the region, for saying what else would have to fall.</summary>
    public IReadOnlyList<Driver> Others { get; init; } = [];

    /// <summary>Load behind the driver where the driver is a risk: its name, value, unit, and its values at the bounds.</summary>
    public Driver? Behind { get; init; }

    public IReadOnlyList<RuleOutcome> Outcomes { get; init; } = [];

    /// <summary>Rules that fired, with the level they allow at best.</summary>
    public IReadOnlyList<(string Rule, ProtectionLevel AtBest)> Fired { get; init; } = [];

    /// <summary>A cap made the level worse than the measures did.</summary>
    public bool Capped { get; init; }

    /// <summary>The same with a rule applied that held a level at best.</summary>
    public RegionState Holding(RuleOutcome outcome, ProtectionLevel atBest) => this with
    {
        Level = Level is { } level ? ProtectionLevels.Worse(level, atBest) : null,
        Outcomes = [.. Outcomes, outcome],
        Fired = [.. Fired, (outcome.Rule, atBest)],
    };

    public RegionState Noting(RuleOutcome outcome) => this with { Outcomes = [.. Outcomes, outcome] };

    public RegionRating ToRating() => new(
        Region, Position, Level, NotRated, Driver?.Code, Driver?.Value, Driver?.Unit,
        Level is { } level ? Driver?.Margin(level, Capped) : null, Risk, Excess, Unlimited,
        Level is null ? [] : [.. Fired.Where(rule => rule.AtBest == Level).Select(rule => rule.Rule)]);
}
