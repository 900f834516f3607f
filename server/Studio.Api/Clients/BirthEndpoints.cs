using Microsoft.AspNetCore.Http.HttpResults;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Jobs;
using Studio.Api.Messages;
using Studio.Api.Pregnancies;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Clients;
using Studio.Core.Messages;
using Studio.Core.Pregnancies;

namespace Studio.Api.Clients;

/// <summary>A birth: reported, put right, taken back; and the call after an early one.</summary>
public static class BirthEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapBirths(this IEndpointRouteBuilder app)
    {
        var birth = app.MapGroup("/api/clients/{clientId}/birth")
            .WithTags("Pregnancies")
            .RequireAuthorization(Policies.DeskOrClient)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        birth.MapPost("/", ReportAsync).WithName("ReportBirth");
        birth.MapPut("/", CorrectAsync).WithName("CorrectBirth");
        birth.MapDelete("/", TakeBackAsync).WithName("TakeBackBirth").ProducesProblem(403);
        app.MapPost("/api/clients/{clientId}/rung", RungAsync)
            .WithName("NoteCall")
            .WithTags("Pregnancies")
            .RequireAuthorization(Policies.Desk)
            .ProducesProblem(404);
    }

    private static async Task<Results<Ok<Released>, ProblemHttpResult>> ReportAsync(
        long clientId,
        BirthRequest request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes,
        Bookings bookings,
        AdvanceSweep advance
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        var pregnancy = (await SituationStore.OfAsync(write, clientId)).Pregnancy;
        if (seen.Row.PregnancyId is not { } id || pregnancy is null or { EndedOn: not null })
            return ClientRefusals.NoPregnancy.ToProblem();
        if (pregnancy.BornOn is { } known)
            // Told again, by her and by the desk: what she has booked since stays.
            return known == request.On && pregnancy.BirthMode == request.Mode
                ? TypedResults.Ok(new Released(0, BirthRules.IsPreterm(pregnancy, known)))
                : BirthRefusals.Known(known).ToProblem();
        if (BirthRules.WhyNot(pregnancy, request.On, changes.Today(seen.Row)) is { } refusal)
            return refusal.ToProblem();
        await PregnancyStore.BirthAsync(write, id, request.On, request.Mode);
        await PregnancyStore.ToldAsync(write, id, changes.Now, reader.AccountId);
        var released = await bookings.ReleaseAsync(write, clientId, reader.AccountId, request.On);
        await MessageStore.DropAsync(write, clientId, changes.Now, MessageKinds.EndsWithABirth);
        await advance.OfAsync(write, clientId);
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Birth);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Ok(new Released(released, BirthRules.IsPreterm(pregnancy, request.On)));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> CorrectAsync(
        long clientId,
        BirthCorrection request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes,
        AdvanceSweep advance
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        var pregnancy = (await SituationStore.OfAsync(write, clientId)).Pregnancy;
        if (seen.Row.PregnancyId is not { } id || pregnancy is not { BornOn: { } was })
            return BirthRefusals.NoBirth.ToProblem();
        if (BirthRules.WhyNot(pregnancy, request.On, changes.Today(seen.Row)) is { } refusal)
            return refusal.ToProblem();
        var mode = request.Mode ?? pregnancy.BirthMode ?? BirthMode.Unknown;
        if (was == request.On && mode == pregnancy.BirthMode)
            return TypedResults.NoContent();
        await PregnancyStore.BirthAsync(write, id, request.On, mode);
        await advance.OfAsync(write, clientId);
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.BirthCorrected);
        await changes.DoneAsync(write, clientId);
        return TypedResults.NoContent();
    }

    private static async Task<Results<Ok<BroughtBack>, ProblemHttpResult>> TakeBackAsync(
        long clientId,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes,
        Bookings bookings,
        AdvanceSweep advance
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        var pregnancy = (await SituationStore.OfAsync(write, clientId)).Pregnancy;
        if (seen.Row.PregnancyId is not { } id || pregnancy is not { BornOn: not null })
            return BirthRefusals.NoBirth.ToProblem();
        var told = await PregnancyStore.ToldAtAsync(write, id);
        if (!MayTakeBack(seen, told, changes))
            return BirthRefusals.Stands.ToProblem();
        if (pregnancy.DueDate is null)
            return BirthRefusals.NoDueDate.ToProblem();
        await PregnancyStore.UnbornAsync(write, id);
        await advance.OfAsync(write, clientId);
        var back = told is { } since
            ? await bookings.BringBackAsync(write, reader, clientId, since)
            : BroughtBack.Nothing;
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.BirthTakenBack);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Ok(back);
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> RungAsync(
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
        // Two at the desk may note the same call.
        var pregnancy = (await SituationStore.OfAsync(write, clientId)).Pregnancy;
        if (seen.Row.PregnancyId is not { } id || !BirthRules.IsToBeRung(pregnancy))
            return TypedResults.NoContent();
        await PregnancyStore.RungAsync(write, id, changes.Now, reader.AccountId);
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Call);
        await changes.DoneAsync(write, clientId);
        return TypedResults.NoContent();
    }

    /// <summary>
    /// Whether this reader may take a reported birth back: the owner always, she and the desk on the day it was reported.
    /// </summary>
    internal static bool MayTakeBack(
        ClientSeen seen,
        NodaTime.Instant? told,
        HealthChanges changes
    ) =>
        seen.Audience == Audience.Owner
        || told is { } at
            && at.InZone(NodaTime.DateTimeZoneProviders.Tzdb[seen.Row.Zone]).Date
                == changes.Today(seen.Row);
}
