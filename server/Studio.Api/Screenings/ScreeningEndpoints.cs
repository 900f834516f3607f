using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Screenings;

namespace Studio.Api.Screenings;

/// <summary>The health questions: on her phone, or on a tablet at the desk that is turned to her.</summary>
public static class ScreeningEndpoints
{
    private static readonly Refusal OldQuestions = new(
        RefusalKind.Conflict,
        "questions-changed",
        "The questions have changed since this page was opened. Load it again; your answers so far are kept.",
        "version"
    );

    /// <summary>Maps the routes.</summary>
    public static void MapScreenings(this IEndpointRouteBuilder app)
    {
        var her = app.MapGroup("/api/clients/{clientId}")
            .WithTags("Screening")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        her.MapGet("/screening", FormAsync)
            .WithName("ScreeningForm")
            .RequireAuthorization(Policies.DeskOrClient)
            .Audited(AuditKinds.Screening);
        her.MapPut("/screening/draft", SaveAsync)
            .WithName("SaveScreeningDraft")
            .RequireAuthorization(Policies.OwnerOrClient);
        her.MapPost("/screening/nothing-changed", NothingChangedAsync)
            .WithName("NothingChanged")
            .RequireAuthorization(Policies.DeskOrClient);
        her.MapGet("/screenings", ListAsync)
            .WithName("ScreeningsOfClient")
            .RequireAuthorization(Policies.SignedIn)
            .Audited(AuditKinds.Screening);
        her.MapPost("/screenings", AnswerAsync)
            .WithName("AnswerScreening")
            .RequireAuthorization(Policies.DeskOrClient);
    }

    private static async Task<Results<Ok<ScreeningForm>, ProblemHttpResult>> FormAsync(
        long clientId,
        Reader reader,
        Database database,
        RuleBook book,
        HealthChanges changes
    )
    {
        await using var read = await database.ReadAsync();
        if (await ClientStore.FindAsync(read, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        var today = changes.Today(seen.Row);
        var her = await SituationStore.OfAsync(read, clientId);
        var policies = await PolicyStore.InForceAsync(read, book);
        var asked = ScreeningRules.Asked(her, today, book.Stages, policies);
        var draft = seen.Audience is Audience.Owner or Audience.Herself
            ? await ScreeningStore.DraftAsync(read, clientId)
            : null;
        return TypedResults.Ok(
            new ScreeningForm
            {
                Version = book.Questions.Version,
                AskedBecause = asked,
                Says = ScreeningWords.Asked(asked),
                Questions = ScreeningWords.Questions(
                    book.Questions.For(book.Stages.On(her.Pregnancy, today).Phase)
                ),
                // Answers to questions that have changed since are asked for again.
                Draft =
                    draft is not null && draft.Version == book.Questions.Version
                        ? OnTheWire(draft.Answers)
                        : null,
                SavedAt = draft?.SavedAt,
                AsksWhetherChanged =
                    asked.Count == 0
                    && policies.AsksEachWeek
                    && WeeklyQuestion.IsAsked(
                        today,
                        (
                            await SessionStore.ListAsync(
                                read,
                                new SessionsWanted { ClientId = clientId }
                            )
                        ).ConvertAll(s => s.OnDate),
                        Latest(
                            her.Screening?.AnsweredOn,
                            await ScreeningStore.NothingChangedOnAsync(read, clientId)
                        )
                    ),
                EmergencyNumber = await EmergencyAsync(read, seen.Row),
            }
        );
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> SaveAsync(
        long clientId,
        AnswersRequest request,
        Reader reader,
        Database database,
        RuleBook book,
        HealthChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await ClientStore.FindAsync(write, reader, clientId)
            is not { Audience: Audience.Owner or Audience.Herself } seen
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        var answers = request.Given();
        if (
            await WhyNotAsync(write, clientId, seen.Row, request, book, changes, finished: false) is
            { } refusal
        )
            return refusal.ToProblem();
        await ScreeningStore.SaveDraftAsync(write, clientId, answers, request.Version, changes.Now);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<Created<ScreeningAnswer>, ProblemHttpResult>> AnswerAsync(
        long clientId,
        AnswersRequest request,
        Reader reader,
        Database database,
        RuleBook book,
        HealthAudit audit,
        HealthChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        if (seen.Row.Ended)
            return ClientRefusals.ClosedAfterLoss.ToProblem();
        if (
            await WhyNotAsync(write, clientId, seen.Row, request, book, changes, finished: true) is
            { } refusal
        )
            return refusal.ToProblem();
        var today = changes.Today(seen.Row);
        var answers = request.Given();
        var pregnancy = (await SituationStore.OfAsync(write, clientId)).Pregnancy;
        var result = ScreeningOutcomes.Of(
            answers,
            book.Stages.On(pregnancy, today),
            book,
            await PolicyStore.InForceAsync(write, book)
        );
        var id = await ScreeningIntake.AddAsync(
            write,
            clientId,
            answers,
            book.Questions,
            result,
            today,
            changes.Now,
            reader.AccountId
        );
        var onHold = result.Signs.Any(s => s.Stops);
        var desk = seen.Audience == Audience.FrontDesk;
        var answer = new ScreeningAnswer
        {
            Id = id,
            Outcome = result.Outcome,
            Says = desk
                ? ScreeningWords.ForDesk(result.Outcome)
                : ScreeningWords.Says(result.Outcome, onHold),
            Reasons = desk ? null : ScreeningWords.Reasons(result),
            OnHold = onHold,
            EmergencyNumber = await EmergencyAsync(write, seen.Row),
        };
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Screening);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Created($"/api/clients/{clientId}/screenings", answer);
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> NothingChangedAsync(
        long clientId,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        await ScreeningStore.NothingChangedAsync(
            write,
            clientId,
            changes.Today(seen.Row),
            changes.Now
        );
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Screening);
        write.Tell("client", clientId);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<Ok<List<AnsweredScreening>>, ProblemHttpResult>> ListAsync(
        long clientId,
        Reader reader,
        Database database
    )
    {
        await using var read = await database.ReadAsync();
        if (
            await ClientStore.FindAsync(read, clientId) is not { } row
            || !reader.ReadsLetters(clientId, row.Ended)
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        var byStaff = (await HealthStore.FactorsAsync(read, clientId))
            .Where(f => f.ScreeningId is null && f.ToOn is null)
            .Select(f => f.Code)
            .ToHashSet(StringComparer.Ordinal);
        return TypedResults.Ok(
            (await ScreeningStore.OfAsync(read, clientId))
                .Select(s =>
                {
                    var answers = ScreeningStore.Answers(read.Seal, s);
                    return new AnsweredScreening
                    {
                        Id = s.Id,
                        AnsweredOn = s.AnsweredOn,
                        Outcome = Outcomes.Open(read.Seal, s.Outcome),
                        Version = s.QuestionsVersion,
                        Answers = OnTheWire(answers),
                        Differs =
                        [
                            .. answers
                                .Where(a =>
                                    a.Value.Value == ScreeningAnswers.No && byStaff.Contains(a.Key)
                                )
                                .Select(a => a.Key),
                        ],
                    };
                })
                .ToList()
        );
    }

    private static async Task<Refusal?> WhyNotAsync(
        Read read,
        long clientId,
        ClientRow row,
        AnswersRequest request,
        RuleBook book,
        HealthChanges changes,
        bool finished
    ) =>
        request.Version != book.Questions.Version
            ? OldQuestions
            : ScreeningAnswers.WhyNot(
                request.Given(),
                book.Questions,
                book.Stages.On(
                    (await SituationStore.OfAsync(read, clientId)).Pregnancy,
                    changes.Today(row)
                ).Phase,
                changes.Today(row),
                finished
            );

    private static Task<string> EmergencyAsync(Read read, ClientRow row) =>
        read.ValueAsync<string>(
            "select emergency_number from locations where id = @HomeLocationId",
            row
        );

    private static NodaTime.LocalDate? Latest(NodaTime.LocalDate? one, NodaTime.LocalDate? other) =>
        one is null || other > one ? other : one;

    private static Dictionary<string, AnswerMessage> OnTheWire(
        IReadOnlyDictionary<string, GivenAnswer> answers
    ) =>
        answers.ToDictionary(
            a => a.Key,
            a => new AnswerMessage { Value = a.Value.Value, Since = a.Value.Since },
            StringComparer.Ordinal
        );
}
