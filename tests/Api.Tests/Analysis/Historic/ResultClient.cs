using System.Text;
using Toepan.Api.Tests.Programme;

namespace Toepan.Api.Tests.Analysis.Historic;

/// <summary>The routes of historic results as a script calls them.</summary>
internal static class ResultClient
{
    public const string Header = "test,vehicle,make,model,class,modelYear,procedure,date,position,dummy,testMassKg";

    public static Task<Reply> Bring(this HttpClient client, string csv, string query = "") => client.Bring(Encoding.UTF8.GetBytes(csv), query);

    public static Task<Reply> Bring(this HttpClient client, byte[] csv, string query = "") => client.PostFile($"/api/v1/results{query}", csv, "text/csv");

    /// <summary>A file of one measure, one driver a test: code and value in turn.</summary>
    public static string File(string measure, params (string Test, string Value)[] rows) =>
        $"{Header},{measure}\n" + string.Concat(rows.Select(row => $"{row.Test},old-{row.Test.ToLowerInvariant()},Velsey,Old,old-class,1999,old-procedure,1999-05-06,1,H3,1200,{row.Value}\n"));
}
