using Microsoft.AspNetCore.Http.Json;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Toepan.Api.Analysis;
using Toepan.Api.Analysis.Classes;
using Toepan.Api.Analysis.Columns;
using Toepan.Api.Analysis.Disagreements;
using Toepan.Api.Analysis.Explore;
using Toepan.Api.Analysis.Historic;
using Toepan.Api.Analysis.Traces;
using Toepan.Api.Channels;
using Toepan.Api.Measures;
using Toepan.Api.Packages;
using Toepan.Api.Packages.Attachments;
using Toepan.Api.Programme;
using Toepan.Api.Programme.Equipment;
using Toepan.Api.Ratings;
using Toepan.Api.Ratings.Recomputations;
using Toepan.Api.Ratings.Schemes;
using Toepan.Api.Ratings.Reviews;
using Toepan.Api.Sheets;
using Toepan.Api.Sheets.Releases;
using Toepan.Domain.Analysis.Historic;
using Toepan.Domain.Packages;

namespace Toepan.Api;

/// <summary>The feature services, for pages and endpoints alike, and what the endpoints need beside them.</summary>
public static class ApiServices
{
    public static IServiceCollection AddFeatureServices(this IServiceCollection services)
    {
        services.AddOptions<UploadSettings>().BindConfiguration(UploadSettings.Section);
        services.AddOptions<AttachmentSettings>().BindConfiguration(AttachmentSettings.Section);
        services.AddOptions<ReleaseSettings>().BindConfiguration(ReleaseSettings.Section);
        return services
            .AddSingleton(_ => ProgrammeRules.Carried)
            .AddSingleton(provider =>
                provider.GetRequiredService<IConfiguration>().GetSection(UploadSettings.LimitsSection).Get<PackageLimits>() ?? PackageLimits.Default)
            .AddSingleton<UploadSpool>()
            .AddScoped<VehicleClassService>()
            .AddScoped<VehicleService>()
            .AddScoped<TwinService>()
            .AddScoped<VehicleEditor>()
            .AddScoped<VehicleListService>()
            .AddScoped<SpecimenService>()
            .AddScoped<EquipmentService>()
            .AddScoped<RunEquipmentService>()
            .AddScoped<CarryOverService>()
            .AddScoped<PlanService>()
            .AddScoped<PreparationService>()
            .AddScoped<RepeatDecisionService>()
            .AddScoped<ProcedureService>()
            .AddScoped<CalendarService>()
            .AddScoped<TestRunService>()
            .AddScoped<BoardService>()
            .AddScoped<PackageService>()
            .AddScoped<PackageDownloadService>()
            .AddScoped<AttachmentService>()
            .AddScoped<AttachmentEditor>()
            .AddScoped<AttachmentContent>()
            .AddScoped<PictureService>()
            .AddScoped<FilmService>()
            .AddScoped<ChannelService>()
            .AddScoped<ChannelFlagService>()
            .AddScoped<PlotService>()
            .AddScoped<MeasureService>()
            .AddScoped<FindingService>()
            .AddScoped<RatingService>()
            .AddScoped<SchemeService>()
            .AddScoped<WhatIfService>()
            .AddScoped<RecomputationService>()
            .AddScoped<MethodService>()
            .AddSingleton<RecomputationSignal>()
            .AddSingleton<RecomputationSteps>()
            .AddSingleton<SchemeRun>()
            .AddSingleton<MethodRun>()
            .AddSingleton<IReleasedRuns, ReleasedRuns>()
            .AddSingleton<RecomputationWorker>()
            .AddHostedService<RecomputationHost>()
            .AddScoped<ReviewService>()
            .AddScoped<SheetService>()
            .AddScoped<ReleaseService>()
            .AddScoped<ClassMeasureService>()
            .AddScoped<ClassChannelService>()
            .AddHistoricResults()
            .AddScoped<RepeatService>()
            .AddScoped<HoldsService>()
            .AddScoped<ClassComparisonService>()
            .AddScoped<ExploreService>()
            .AddScoped<DisagreementService>()
            .AddScoped<SavedQuestions>()
            .AddSingleton<TraceCache>()
            .AddScoped<TraceService>()
            .AddScoped<TracePicker>()
            .AddEdge();
    }

    private static IServiceCollection AddHistoricResults(this IServiceCollection services) => services
        .AddSingleton(HistoricLimits.Default)
        .AddSingleton<ITestCodeGuard, SummaryCodeGuard>()
        .AddSingleton<SummaryColumns>()
        .AddSingleton<ReducedRuns>()
        .AddScoped(provider => new ProgrammeMeasures(
            provider.GetRequiredService<NpgsqlDataSource>(), provider.GetRequiredService<SummaryColumns>(), provider.GetRequiredService<ReducedRuns>()))
        .AddScoped<ResultService>()
        .AddScoped<ResultListService>();

    private static IServiceCollection AddEdge(this IServiceCollection services)
    {
        services.Configure<JsonOptions>(options => ApiJson.Configure(options.SerializerOptions));
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddProblemDetails();
        services.AddExceptionHandler<BadRequestHandler>();
        services.AddOpenApi();
        return services;
    }
}
