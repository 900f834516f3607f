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
using Studio.Core.Catalogue;
using Studio.Core.Clients;

namespace Studio.Api.Clients;

/// <summary>A loss, set quietly, and the way back from it.</summary>
public static class EndingEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapEndings(this IEndpointRouteBuilder app)
    {
        var her = app.MapGroup("/api/clients/{clientId}")
            .WithTags("Pregnancies")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        her.MapPost("/loss", LossAsync)
            .WithName("EndPregnancy")
            .RequireAuthorization(Policies.DeskOrClient);
        her.MapPost("/return", ReturnAsync)
            .WithName("OpenWayBack")
            .RequireAuthorization(Policies.Owner);
    }

    private static async Task<Results<Ok<Released>, ProblemHttpResult>> LossAsync(
        long clientId,
        LossRequest request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes,
        Bookings bookings
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            await ClientStore.FindAsync(write, reader, clientId)
            is not { Audience: Audience.Owner or Audience.Herself } seen
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        var pregnancy = (await SituationStore.OfAsync(write, clientId)).Pregnancy;
        if (seen.Row.PregnancyId is not { } id || pregnancy is null)
            return ClientRefusals.NoPregnancy.ToProblem();
        if (pregnancy.EndedOn is not null)
            return TypedResults.Ok(new Released(0, false));
        var today = changes.Today(seen.Row);
        var on = request.On ?? today;
        if (on > today)
            return ClientRefusals
                .Invalid("in-future", "The date lies in the future.", "on")
                .ToProblem();
        if (pregnancy.BornOn is { } born)
        {
            if (on < born)
                return BirthRefusals.BeforeBirth(born).ToProblem();
            id = await PregnancyStore.EndAfterBirthAsync(write, clientId, id, pregnancy, on);
        }
        else
            await PregnancyStore.EndAsync(write, id, on);
        await PregnancyStore.ToldAsync(write, id, changes.Now, reader.AccountId);
        var released = await bookings.ReleaseAsync(write, clientId, reader.AccountId, on);
        await MessageStore.DropAsync(write, clientId, changes.Now);
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Ending);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Ok(new Released(released, false));
    }

    private static async Task<Results<Ok<BroughtBack>, ProblemHttpResult>> ReturnAsync(
        long clientId,
        WayBackRequest request,
        Reader reader,
        Database database,
        HealthAudit audit,
        HealthChanges changes,
        Bookings bookings,
        AdvanceSweep advance,
        RuleBook book
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } seen)
            return BookingRefusals.NoSuchClient.ToProblem();
        if (seen.Row is not { Ended: true, PregnancyId: { } ended })
            return BirthRefusals.NotEnded.ToProblem();
        var back = BroughtBack.Nothing;
        if (request.SetByMistake == true)
        {
            var told = await PregnancyStore.ToldAtAsync(write, ended);
            await PregnancyStore.ReopenAsync(write, clientId, ended);
            await advance.OfAsync(write, clientId);
            if (told is { } since)
                back = await bookings.BringBackAsync(write, reader, clientId, since);
        }
        else
        {
            var today = changes.Today(seen.Row);
            if (
                !ClientIntake
                    .Reckon(
                        request.Dating,
                        request.BornOn,
                        request.BirthMode,
                        request.Babies,
                        today
                    )
                    .TryGet(out var dates, out var refusal)
            )
                return refusal.ToProblem();
            if (dates.Pregnancy is not { } pregnancy)
                return BirthRefusals.NoDates.ToProblem();
            var id = await Returns.BeginAsync(write, book, clientId, pregnancy, today, changes.Now);
            if (dates.Evidence is { } evidence)
                await PregnancyStore.AddEvidenceAsync(
                    write,
                    id,
                    evidence,
                    changes.Now,
                    reader.AccountId
                );
            await advance.OfAsync(write, clientId);
        }
        await audit.ChangedAsync(write, reader, clientId, AuditKinds.Return);
        await changes.DoneAsync(write, clientId);
        return TypedResults.Ok(back);
    }
}
