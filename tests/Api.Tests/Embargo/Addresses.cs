using System.Reflection;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;
using Toepan.Web.Components;

namespace Toepan.Api.Tests.Embargo;

/// <summary>One place of the host: its address with planted values, and with unknown ones where it has parameters.</summary>
/// <param name="Pattern">Route pattern.</param>
/// <param name="Real">Address with values of the planted data.</param>
/// <param name="Unknown">The same with unknown values; null where it has no parameters.</param>
/// <param name="Asset">Whether it is a static file.</param>
internal sealed record Place(string Pattern, string Real, string? Unknown, bool Asset);

/// <summary>Every place the host really has, whoever mapped it, and what the walk cannot fill in.</summary>
internal sealed class Addresses
{
    private readonly IReadOnlyDictionary<string, RouteValue> values;
    private readonly IReadOnlyList<Place> all;

    public Addresses(PlantedProgramme programme)
    {
        values = programme.Values;
        var endpoints = programme.Api.Services.GetRequiredService<EndpointDataSource>().Endpoints;
        var patterns = endpoints.OfType<RouteEndpoint>().GroupBy(endpoint => "/" + endpoint.RoutePattern.RawText!.TrimStart('/')).ToArray();
        Unwalkable = [.. endpoints.Where(endpoint => endpoint is not RouteEndpoint).Select(endpoint => endpoint.DisplayName ?? "an endpoint without a name")];
        Unfilled = [.. patterns.SelectMany(group => Lacking(group.First().RoutePattern).Select(name => $"{group.Key}: {name}"))];
        Unmapped = [.. Pages().Except(patterns.Select(group => group.Key))];
        all = Unfilled.Count > 0 ? [] : [.. patterns.Select(group => Place(group.Key, group.First()))];
    }

    /// <summary>Every place; fails where one cannot be filled in, for a walk past it would prove nothing.</summary>
    public IReadOnlyList<Place> All => Unfilled.Count == 0 ? all : throw new InvalidOperationException($"The walk knows no value for {string.Join(", ", Unfilled)}.");

    /// <summary>Parameters the planted programme has no value for.</summary>
    public IReadOnlyList<string> Unfilled { get; }

    /// <summary>Routable components that are no endpoint of the host.</summary>
    public IReadOnlyList<string> Unmapped { get; }

    /// <summary>Endpoints without a route.</summary>
    public IReadOnlyList<string> Unwalkable { get; }

    private static IEnumerable<string> Pages() =>
        typeof(App).Assembly.GetTypes().SelectMany(type => type.GetCustomAttributes<RouteAttribute>()).Select(route => route.Template);

    private Place Place(string pattern, RouteEndpoint endpoint)
    {
        var route = endpoint.RoutePattern;
        var asset = endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is not null || pattern.StartsWith("/_framework/", StringComparison.Ordinal);
        return new(pattern, Filled(route, value => value.Real), route.Parameters.Count > 0 ? Filled(route, value => value.Unknown) : null, asset);
    }

    private string Filled(RoutePattern pattern, Func<RouteValue, string> choose) =>
        "/" + string.Join('/', pattern.PathSegments.Select((segment, at) => string.Concat(segment.Parts.Select(part => part switch
        {
            RoutePatternParameterPart parameter => Uri.EscapeDataString(choose(values[Key(pattern, at, parameter)!])),
            RoutePatternLiteralPart literal => literal.Content,
            RoutePatternSeparatorPart separator => separator.Content,
            _ => throw new InvalidOperationException($"Unknown part {part}."),
        }))));

    private IEnumerable<string> Lacking(RoutePattern pattern) =>
        from segment in pattern.PathSegments.Select((value, at) => (value, at))
        from parameter in segment.value.Parts.OfType<RoutePatternParameterPart>()
        where Key(pattern, segment.at, parameter) is null
        select $"{LiteralBefore(pattern, segment.at)}/{parameter.Name}";

    /// <summary>The word before and the parameter, or all from that word on: whichever the programme has a value for.</summary>
    private string? Key(RoutePattern pattern, int at, RoutePatternParameterPart parameter)
    {
        var start = at - 1;
        while (start >= 0 && pattern.PathSegments[start].Parts.Any(part => part is RoutePatternParameterPart))
        {
            start--;
        }

        var between = pattern.PathSegments.Skip(start + 1).Take(at - start - 1)
            .Select(segment => segment.Parts.OfType<RoutePatternParameterPart>().First().Name);
        var key = string.Join('/', [LiteralBefore(pattern, at), .. between, parameter.Name]);
        return values.ContainsKey(key) ? key : null;
    }

    private static string LiteralBefore(RoutePattern pattern, int at) =>
        pattern.PathSegments.Take(at).SelectMany(segment => segment.Parts).OfType<RoutePatternLiteralPart>().LastOrDefault()?.Content ?? "";
}
