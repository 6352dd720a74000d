using Microsoft.Extensions.DependencyInjection;
using Toepan.Api.Analysis;
using Toepan.Api.Channels;
using Toepan.Api.Measures;
using Toepan.Api.Packages;
using Toepan.Api.Programme;
using Toepan.Api.Ratings;
using Toepan.Api.Sheets;

namespace Toepan.Api;

/// <summary>The feature services, for pages and endpoints alike.</summary>
public static class ApiServices
{
    public static IServiceCollection AddFeatureServices(this IServiceCollection services) => services
        .AddScoped<VehicleClassService>()
        .AddScoped<VehicleService>()
        .AddScoped<TestRunService>()
        .AddScoped<BoardService>()
        .AddScoped<PackageService>()
        .AddScoped<ChannelService>()
        .AddScoped<ChannelFlagService>()
        .AddScoped<MeasureService>()
        .AddScoped<RatingService>()
        .AddScoped<SheetService>()
        .AddScoped<ClassMeasureService>();
}
