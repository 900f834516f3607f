using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Jobs;
using Studio.Api.Rosters;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Api.Pregnancies;

/// <summary>Dating, and the due dates of a client.</summary>
public static class DatingEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapDating(this IEndpointRouteBuilder app)
    {
        var dating = app.MapGroup("/api").WithTags("Pregnancies").ProducesProblem(400);
        dating
            .MapPost("/dating", Reckon)
            .WithName("ReckonDueDate")
            .RequireAuthorization(Policies.SignedIn);
        dating
            .MapGet("/clients/{clientId}/datings", HistoryAsync)
            .WithName("DatingHistory")
            .RequireAuthorization(Policies.DeskOrClient)
            .ProducesProblem(404)
            .Audited(AuditKinds.Dates);
        dating
            .MapPost("/clients/{clientId}/datings", AddAsync)
            .WithName("AddDating")
            .RequireAuthorization(Policies.DeskOrClient)
            .ProducesProblem(404)
            .ProducesProblem(409);
    }

    private static Results<Ok<DatingAnswer>, ProblemHttpResult> Reckon(
        DatingRequest request,
        RuleBook book
    )
    {
        if (!request.ToEvidence().TryGet(out var evidence, out var refusal))
            return refusal.ToProblem();
        if (!Dating.Reckon(evidence).TryGet(out var due, out refusal))
            return refusal.ToProblem();
        if (!Dating.AgeOn(request.On, due.On).TryGet(out var age, out refusal))
            return refusal.ToProblem();
        var situation = book.Stages.On(new Pregnancy { DueDate = due.On }, request.On);
        return TypedResults.Ok(
            new DatingAnswer
            {
                DueDate = due.On,
                Basis = due.Basis,
                Explanation = due.Explanation,
                GestationalAge = new AgeMessage(age.Weeks, age.DaysOver),
                Stage = situation.Stage!.Code,
                StageName = situation.Stage.Name,
                Term = situation.Term,
            }
        );
    }

    private static async Task<Results<Ok<DatingHistory>, ProblemHttpResult>> HistoryAsync(
        long clientId,
        Reader reader,
        Database database
    )
    {
        await using var read = await database.ReadAsync();
        if (await ClientStore.FindAsync(read, reader, clientId) is not { } client)
            return BookingRefusals.NoSuchClient.ToProblem();
        return TypedResults.Ok(
            client.Row is { PregnancyId: { } pregnancy, Ended: false }
                ? await PregnancyStore.HistoryAsync(read, pregnancy)
                : new DatingHistory { Revisions = [], Evidence = [] }
        );
    }

    private static async Task<Results<Created<DatingChange>, ProblemHttpResult>> AddAsync(
        long clientId,
        EvidenceRequest request,
        Reader reader,
        Database database,
        RuleBook book,
        FlagSweep flags,
        AdvanceSweep advance,
        Bookings bookings,
        HealthAudit audit,
        IClock clock
    )
    {
        if (!request.ToEvidence().TryGet(out var given, out var refusal))
            return refusal.ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } client)
            return BookingRefusals.NoSuchClient.ToProblem();
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[client.Row.Zone]).Date;
        if (client is { Row.Ended: true, Audience: not Audience.Owner })
            return ClientRefusals.ClosedAfterLoss.ToProblem();
        if (
            !(await PregnancyForAsync(write, book, client.Row, given, today, now)).TryGet(
                out var pregnancyId,
                out refusal
            )
        )
            return refusal.ToProblem();

        var answer = await PregnancyStore.AddEvidenceAsync(
            write,
            pregnancyId,
            given,
            now,
            reader.AccountId
        );
        if (!answer.TryGet(out var change, out refusal))
            return refusal.ToProblem();
        var born = (await SituationStore.OfAsync(write, clientId)).Pregnancy?.BornOn;
        if (Dating.AgeOn(born ?? today, change.DueDate).Refusal is { } impossible)
            return impossible.ToProblem();

        await advance.OfAsync(write, clientId);
        await bookings.FillWaitedForAsync(write, clientId);
        await flags.RefreshAsync(write, [clientId]);
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Dates);
        write.Tell("client", clientId);
        var unsuitable = await UnsuitableAsync(write, clientId, book, now);
        await write.CommitAsync();
        return TypedResults.Created(
            $"/api/clients/{clientId}/datings",
            change with
            {
                BookingsNowUnsuitable = unsuitable,
            }
        );
    }

    // The current pregnancy, or a new one: at first, after a loss, and when the date lies wholly after a birth.
    private static async Task<Answer<long>> PregnancyForAsync(
        Write write,
        RuleBook book,
        ClientRow client,
        DatingEvidence given,
        LocalDate today,
        Instant at
    )
    {
        if (!Dating.Reckon(given).TryGet(out var due, out var refusal))
        {
            // Half of a pair (a scan that only makes sense beside the period) is judged with everything else given.
            var nothing =
                given is { LastPeriod: null, Transfer: null, Stated: null, Scans.Count: 0 };
            return !nothing && client is { PregnancyId: { } open, Ended: false } ? open : refusal;
        }

        var born = (await SituationStore.OfAsync(write, client.Id)).Pregnancy?.BornOn;
        var begins = due.On.PlusDays(-GestationalAge.AtDueDate);
        return client is { PregnancyId: { } current, Ended: false } && !(born <= begins)
            ? current
            : await Returns.BeginAsync(
                write,
                book,
                client.Id,
                new Pregnancy { DueDate = due.On },
                today,
                at
            );
    }

    private static async Task<int> UnsuitableAsync(
        Read read,
        long clientId,
        RuleBook book,
        Instant now
    )
    {
        var fits = await Fits.LoadAsync(read, book, [clientId]);
        var mine = await BookingStore.OfAsync(read, clientId);
        return (await SessionStore.ListAsync(read, new SessionsWanted { ClientId = clientId }))
            .Where(s =>
                s.StartsAt > now
                && mine.Exists(b => b.SessionId == s.Id && b.Status == BookingStatus.Booked)
            )
            .Count(s => fits.Of(clientId, s).Verdict >= Suits.NeedsClearance);
    }
}
