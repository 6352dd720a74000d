using System.Collections.Concurrent;
using System.Text;
using Toepan.Api.Security;
using Toepan.Api.Tests.Store;

namespace Toepan.Api.Tests.Embargo;

/// <summary>
/// The embargo, walked: every endpoint the host really has and every page, each verb and several Accept headers, as the public and as every role,
/// over a programme in which everything is unreleased and marked. With TOEPAN_EMBARGO_SEED=n the marks are others.
/// </summary>
public sealed class EmbargoTests(PlantedProgramme programme) : IClassFixture<PlantedProgramme>
{
    private const string Anything = "*/*";
    private const string Page = "text/html,application/xhtml+xml;q=0.9";
    private static readonly string[] Reading = ["GET", "HEAD", "OPTIONS"];
    private static readonly string[] Changing = ["POST", "PUT", "PATCH", "DELETE"];
    private static readonly string[] Accepts = [Anything, Page, "application/json", "text/csv", "application/vnd.apache.parquet", "application/pdf, image/*;q=0.8"];

    /// <summary>Tables of the laboratory without words of people: identifiers, figures, packed samples, and what sign-in keeps.</summary>
    private static readonly string[] Wordless =
    [
        "account_claim", "account_login", "account_role", "account_token", "current_rating", "data_protection_key", "migration", "package_chunk",
        "rating", "recovery_code", "role", "role_claim", "second_factor", "stored_file", "stored_file_chunk", "summary_measure", "summary_occupant",
    ];

    private readonly Addresses addresses = new(programme);

    [Fact]
    public void Walk_EveryEndpointAndPage_CanBeFilledIn()
    {
        Assert.True(!addresses.Unwalkable.Any(), string.Join(", ", addresses.Unwalkable));
        Assert.True(!addresses.Unfilled.Any(), string.Join(", ", addresses.Unfilled)); // give a planter a value for it
        Assert.True(!addresses.Unmapped.Any(), string.Join(", ", addresses.Unmapped));
        Assert.True(addresses.All.Count > 100, $"Only {addresses.All.Count} places.");
    }

    [Fact]
    public async Task Marks_EveryTable_HoldsOne()
    {
        var bare = new List<string>();
        foreach (var table in await Sql.Column(programme.Api.Connections.Owner, "SELECT schemaname || '.' || tablename FROM pg_tables WHERE schemaname IN ('lab', 'pub') ORDER BY 1"))
        {
            var marked = await Sql.Scalar(
                programme.Api.Connections.Owner,
                $"SELECT count(*) FROM {table} t WHERE t::text ILIKE '%{programme.Marks.Stem}%' OR t::text ILIKE '%{programme.Marks.Restricted}%' OR t::text LIKE '%{programme.Marks.Prefix}-%'");
            if ((long)marked! == 0)
            {
                bare.Add(table[(table.IndexOf('.', StringComparison.Ordinal) + 1)..]);
            }
        }

        Assert.True(!bare.Except(Wordless).Any(), string.Join(", ", bare.Except(Wordless))); // plant something in it, or say above why it holds no words
    }

    [Fact]
    public async Task Public_EveryAddressVerbAndAccept_HoldsNoMark()
    {
        using var stranger = programme.Api.Stranger();
        var finder = new MarkFinder([.. programme.Marks.Needles(), .. Marks.Forms(programme.Marks.Restricted), .. programme.Secrets]);
        var questions = addresses.All.SelectMany(place => place.Asset ? OfAsset(place) : OfStranger(place)).ToArray();

        var found = await Walk(stranger, questions, reply => Held(finder, reply, echoes: true));

        Assert.True(questions.Length > 2000, $"Only {questions.Length} questions.");
        Assert.True(found.Count == 0, string.Join("\n", found.Take(20)));
    }

    [Fact]
    public async Task Public_UnreleasedAndUnknown_AnswerAlike()
    {
        using var stranger = programme.Api.Stranger();
        var different = new ConcurrentBag<string>();
        var pairs = addresses.All.Where(place => place.Unknown is not null)
            .SelectMany(place => Of(place, [.. Reading, .. Changing], Accepts).Select(question => (Asked: question, Unknown: place.Unknown!)))
            .Concat(addresses.All.Where(place => !place.Asset).Select(place => (Asked: WithQuery(place), Unknown: (place.Unknown ?? place.Real) + programme.Query.Unknown)));

        await Each(pairs, async pair =>
        {
            var real = Answers.Alike(await Answers.Ask(stranger, pair.Asked, TestContext.Current.CancellationToken));
            var unknown = Answers.Alike(await Answers.Ask(stranger, pair.Asked with { Address = pair.Unknown }, TestContext.Current.CancellationToken));
            if (real != unknown)
            {
                different.Add($"{pair.Asked}\n--- unreleased\n{real}\n--- unknown\n{unknown}");
            }
        });

        Assert.True(different.IsEmpty, different.FirstOrDefault());
    }

    /// <summary>Somebody who has signed in but has no role is the public.</summary>
    [Fact]
    public async Task NoRole_EveryAddress_HoldsNoMark()
    {
        using var person = await programme.Api.Person();
        var finder = new MarkFinder([.. programme.Marks.Needles(), .. Marks.Forms(programme.Marks.Restricted), .. programme.Secrets]);
        var questions = addresses.All.Where(place => !place.Asset).SelectMany(place => Of(place, ["GET"], [Anything, Page]));

        var found = await Walk(person.Client, questions, reply => Held(finder, reply, echoes: true));

        Assert.True(found.Count == 0, string.Join("\n", found.Take(20)));
    }

    /// <summary>Every role reads all laboratory data, so marks are expected; secrets are nobody's, and of people and tokens only administrators and managers learn.</summary>
    [Theory]
    [InlineData(Role.Analyst)]
    [InlineData(Role.Engineer)]
    [InlineData(Role.Reviewer)]
    [InlineData(Role.Communications)]
    [InlineData(Role.Manager)]
    [InlineData(Role.Administrator)]
    public async Task Role_EveryAddressVerbAndAccept_HoldsNothingBeyondIt(Role role)
    {
        using var machine = await programme.Api.Machine(role);
        var finder = new MarkFinder(role is Role.Administrator or Role.Manager ? programme.Secrets : [.. programme.Secrets, .. Marks.Forms(programme.Marks.Restricted)]);
        var marks = new MarkFinder(programme.Marks.Needles());
        var marked = new ConcurrentDictionary<string, bool>();
        var places = addresses.All.Where(place => !place.Asset).ToArray();

        // What is served does not hang on the role beyond being served at all, so one role asks in every form.
        var (verbs, accepts) = role == Role.Analyst ? ((string[])["GET", "HEAD"], Accepts) : (["GET"], [Anything]);
        Question[] questions = [.. places.SelectMany(place => Of(place, verbs, accepts)), .. places.Select(WithQuery), .. places.SelectMany(place => Of(place, Changing, [Anything]))];

        var found = await Walk(machine, questions, reply =>
        {
            marked.TryAdd(marks.Find(reply.Body) is null ? "" : reply.Question.Address, true);
            return Held(finder, reply, echoes: false);
        });

        Assert.True(found.Count == 0, string.Join("\n", found.Take(20)));
        Assert.True(marked.Count > 40, $"Only {marked.Count} addresses show a role the data: the walk sees nothing."); // else an empty finding would prove nothing
    }

    /// <summary>What would go out with a sheet has lost the photograph's metadata, which the kept one still has.</summary>
    [Fact]
    public async Task PublicCopy_OfAMarkedPhotograph_HoldsNoMark()
    {
        using var machine = await programme.Api.Machine(Role.Analyst);
        var finder = new MarkFinder(programme.Marks.Needles());
        var attachment = $"/api/v1/attachments/{programme.Values["attachments/id"].Real}";

        var kept = await machine.GetByteArrayAsync($"{attachment}/content", TestContext.Current.CancellationToken);
        var copy = await machine.GetByteArrayAsync($"{attachment}/public-copy", TestContext.Current.CancellationToken);

        Assert.NotNull(finder.Find(kept));
        Assert.Null(finder.Find(copy));
    }

    private static IEnumerable<Question> OfAsset(Place place) => [new("GET", place.Real, Anything), new("GET", place.Real, Anything, "br, gzip")];

    private IEnumerable<Question> OfStranger(Place place) =>
        [.. Of(place, [.. Reading, .. Changing], Accepts), new("GET", place.Real, Anything, "br, gzip"), WithQuery(place)];

    private Question WithQuery(Place place) => new("GET", place.Real + programme.Query.Real, Anything);

    private static IEnumerable<Question> Of(Place place, string[] verbs, string[] accepts) =>
        from verb in verbs
        from accept in accepts
        select new Question(verb, place.Real, accept);

    private static string? Held(MarkFinder finder, Reply reply, bool echoes)
    {
        var text = Encoding.Latin1.GetString(reply.Body);
        var (headers, body) = echoes
            ? (Answers.WithoutEcho(reply.Headers, reply.Question.Address), Encoding.Latin1.GetBytes(Answers.WithoutEcho(text, reply.Question.Address)))
            : (reply.Headers, reply.Body);
        if ((int)reply.Status >= 500)
        {
            return $"{reply.Question} answered {(int)reply.Status}";
        }

        return (finder.Find(headers) ?? finder.Find(body)) is { } held ? $"{reply.Question} answered {(int)reply.Status}: …{held}…" : null;
    }

    private static async Task<IReadOnlyCollection<string>> Walk(HttpClient client, IEnumerable<Question> questions, Func<Reply, string?> look)
    {
        var found = new ConcurrentBag<string>();
        await Each(questions, async question =>
        {
            if (look(await Answers.Ask(client, question, TestContext.Current.CancellationToken)) is { } held)
            {
                found.Add(held);
            }
        });
        return found;
    }

    private static Task Each<T>(IEnumerable<T> all, Func<T, Task> act) => Parallel.ForEachAsync(
        all, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = TestContext.Current.CancellationToken },
        async (one, _) => await act(one));
}
