namespace Toepan.Api.Store;

/// <summary>The schemas of the store.</summary>
public static class Schemas
{
    /// <summary>Everything the laboratory keeps; the public login cannot see that it exists.</summary>
    public const string Lab = "lab";

    /// <summary>Released documents, frozen copies; the public login reads the rows whose time has come.</summary>
    public const string Public = "pub";

    /// <summary>Documented views over the programme, all that the analyst's login sees.</summary>
    public const string Analysis = "analysis";

    /// <summary>Table in which the applied migrations are listed.</summary>
    public const string MigrationTable = "migration";
}
