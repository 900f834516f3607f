using System.Text.Json;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;
using Studio.Api.Data;
using Studio.Core.Screenings;

namespace Studio.Api.Screenings;

/// <summary>A screening as it stands in the table, opened.</summary>
public sealed record ScreeningRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>The day she answered.</summary>
    public LocalDate AnsweredOn { get; init; }

    /// <summary>What came of it, sealed.</summary>
    public string Outcome { get; init; } = "";

    /// <summary>The answers, sealed; null when only the outcome was recorded.</summary>
    public string? Answers { get; init; }

    /// <summary>The version of the questions.</summary>
    public int? QuestionsVersion { get; init; }

    /// <summary>When it was entered.</summary>
    public Instant EnteredAt { get; init; }
}

/// <summary>Answers she has not sent yet.</summary>
/// <param name="Answers">By code of the question.</param>
/// <param name="Version">The version of the questions they answer.</param>
/// <param name="SavedAt">When they were last saved.</param>
public sealed record ScreeningDraft(
    IReadOnlyDictionary<string, GivenAnswer> Answers,
    int Version,
    Instant SavedAt
);

/// <summary>Screenings: drafts, answers and outcomes.</summary>
public static class ScreeningStore
{
    private static readonly JsonSerializerOptions Json = new JsonSerializerOptions(
        JsonSerializerDefaults.Web
    ).ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    /// <summary>Records an outcome without its answers: from a file.</summary>
    public static Task<long> AddOutcomeAsync(
        Write write,
        long clientId,
        LocalDate answeredOn,
        ScreeningOutcome outcome,
        Instant at,
        long? by
    ) => AddAsync(write, clientId, answeredOn, outcome, null, null, at, by);

    /// <summary>Records answers with what came of them; the draft is gone then.</summary>
    public static async Task<long> AddAnswersAsync(
        Write write,
        long clientId,
        LocalDate answeredOn,
        ScreeningOutcome outcome,
        IReadOnlyDictionary<string, GivenAnswer> answers,
        int version,
        Instant at,
        long by
    )
    {
        await write.ExecuteAsync(
            "delete from screening_drafts where client_id = @clientId",
            new { clientId }
        );
        return await AddAsync(
            write,
            clientId,
            answeredOn,
            outcome,
            Close(write.Seal, answers),
            version,
            at,
            by
        );
    }

    /// <summary>Her screenings, newest first.</summary>
    public static Task<List<ScreeningRow>> OfAsync(Read read, long clientId) =>
        read.ListAsync<ScreeningRow>(
            """
            select id, answered_on as AnsweredOn, outcome, answers, questions_version as QuestionsVersion,
                   entered_at as EnteredAt
              from screenings where client_id = @clientId order by answered_on desc, id desc
            """,
            new { clientId }
        );

    /// <summary>The answers of a row; empty when only the outcome was recorded.</summary>
    public static IReadOnlyDictionary<string, GivenAnswer> Answers(Seal seal, ScreeningRow row) =>
        row.Answers is { } text ? Open(seal, text) : new Dictionary<string, GivenAnswer>();

    /// <summary>What she has answered so far; null when there is nothing.</summary>
    public static async Task<ScreeningDraft?> DraftAsync(Read read, long clientId) =>
        await read.FindAsync<DraftRow>(
            """
            select answers, questions_version as QuestionsVersion, saved_at as SavedAt
              from screening_drafts where client_id = @clientId
            """,
            new { clientId }
        )
            is { } row
            ? new(Open(read.Seal, row.Answers), row.QuestionsVersion, row.SavedAt)
            : null;

    /// <summary>Keeps what she has answered so far.</summary>
    public static Task SaveDraftAsync(
        Write write,
        long clientId,
        IReadOnlyDictionary<string, GivenAnswer> answers,
        int version,
        Instant at
    ) =>
        write.ExecuteAsync(
            """
            insert into screening_drafts (client_id, answers, questions_version, saved_at)
            values (@clientId, @answers, @version, @at)
            on conflict (client_id) do update
               set answers = excluded.answers, questions_version = excluded.questions_version, saved_at = excluded.saved_at
            """,
            new
            {
                clientId,
                answers = Close(write.Seal, answers),
                version,
                at,
            }
        );

    /// <summary>The last day on which she said that nothing had changed; null when she never did.</summary>
    public static Task<LocalDate?> NothingChangedOnAsync(Read read, long clientId) =>
        read.FindAsync<LocalDate?>(
            "select on_date from nothing_changed where client_id = @clientId order by on_date desc limit 1",
            new { clientId }
        );

    /// <summary>She said that nothing had changed; saying it twice on a day changes nothing.</summary>
    public static Task NothingChangedAsync(Write write, long clientId, LocalDate on, Instant at) =>
        write.ExecuteAsync(
            """
            insert into nothing_changed (client_id, on_date, entered_at) values (@clientId, @on, @at)
            on conflict do nothing
            """,
            new
            {
                clientId,
                on,
                at,
            }
        );

    private static Task<long> AddAsync(
        Write write,
        long clientId,
        LocalDate answeredOn,
        ScreeningOutcome outcome,
        string? answers,
        int? version,
        Instant at,
        long? by
    ) =>
        write.InsertAsync(
            """
            insert into screenings (client_id, answered_on, outcome, answers, questions_version, entered_at, entered_by)
            values (@clientId, @answeredOn, @outcome, @answers, @version, @at, @by)
            """,
            new
            {
                clientId,
                answeredOn,
                outcome = Outcomes.Close(write.Seal, outcome),
                answers,
                version,
                at,
                by,
            }
        );

    private static string Close(Seal seal, IReadOnlyDictionary<string, GivenAnswer> answers) =>
        seal.Close(JsonSerializer.Serialize(answers, Json));

    private static Dictionary<string, GivenAnswer> Open(Seal seal, string text) =>
        JsonSerializer.Deserialize<Dictionary<string, GivenAnswer>>(seal.Open(text), Json)!;

    private sealed record DraftRow
    {
        public string Answers { get; init; } = "";
        public int QuestionsVersion { get; init; }
        public Instant SavedAt { get; init; }
    }
}
