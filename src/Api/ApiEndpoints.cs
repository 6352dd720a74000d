using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Toepan.Api.Analysis;
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
using Toepan.Api.Security;
using Toepan.Api.Sheets;
using Toepan.Api.Sheets.Releases;
using Toepan.Api.Store;

namespace Toepan.Api;

/// <summary>The HTTP contract, version 1.</summary>
public static class ApiEndpoints
{
    public static IEndpointRouteBuilder MapApi(this IEndpointRouteBuilder app)
    {
        app.MapProgramme();
        app.MapVehicles();
        app.MapPlan();
        app.MapEquipment();
        app.MapPackages();
        app.MapAttachments();
        app.MapAttachmentFiles();
        app.MapChannels();
        app.MapMeasures();
        app.MapFindings();
        app.MapRatings();
        app.MapSchemes();
        app.MapRecomputations();
        app.MapReviews();
        app.MapAnalysis();
        app.MapResults();
        app.MapRepeats();
        app.MapHolds();
        app.MapExplore();
        app.MapDisagreements();
        app.MapTraces();
        app.MapSheets();
        app.MapReleases();
        app.MapSecurity();
        app.MapOwn();
        app.MapAudit();
        app.MapOpenApi();
        return app;
    }
}
