using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Audit;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Passes;
using Studio.Core.Staff;

namespace Studio.Api.Passes;

/// <summary>Passes of a client: sold, given to and paid back at the desk; she reads her own.</summary>
public static class PassEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapPasses(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/clients/{clientId}/passes", OfClientAsync)
            .WithName("PassesOfClient")
            .WithTags("Passes")
            .RequireAuthorization(Policies.DeskOrClient)
            .ProducesProblem(404)
            .Audited(AuditKinds.Fit);
        app.MapPost("/api/clients/{clientId}/passes", SellAsync)
            .WithName("SellPass")
            .WithTags("Passes")
            .RequireAuthorization(Policies.Desk)
            .Produces<PassMessage>(StatusCodes.Status201Created)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        var pass = app.MapGroup("/api/passes/{passId}")
            .WithTags("Passes")
            .RequireAuthorization(Policies.Desk)
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
        pass.MapPost("/goodwill", GoodwillAsync).WithName("GiveGoodwill");
        pass.MapPost("/refund", RefundAsync).WithName("RefundPass");
    }

    private static async Task<Results<Ok<List<PassMessage>>, ProblemHttpResult>> OfClientAsync(
        long clientId,
        Reader reader,
        Database database,
        StudioStore studio,
        RuleBook book
    )
    {
        await using var read = await database.ReadAsync();
        if (await ClientStore.FindAsync(read, reader, clientId) is not { } client)
            return BookingRefusals.NoSuchClient.ToProblem();
        var purse = await Purse.LoadAsync(
            read,
            clientId,
            await PolicyStore.InForceAsync(read, book)
        );
        var today = studio.Today(client.Row.Zone);
        // What can still be used first, what ends first before the rest.
        return TypedResults.Ok(
            purse
                .Passes.Select(p => Told(read, p, purse, client.Audience, today))
                .OrderBy(p => p.IsUsable ? 0 : 1)
                .ThenBy(p => p.LastDay ?? LocalDate.MaxIsoValue)
                .ThenBy(p => p.Id)
                .ToList()
        );
    }

    private static async Task<IResult> SellAsync(
        long clientId,
        SellPassRequest request,
        [FromHeader(Name = "Idempotency-Key")] string? key,
        Reader reader,
        Database database,
        StudioStore studio,
        RuleBook book,
        AnsweredRequests answered,
        IClock clock
    )
    {
        if (key is { Length: 0 or > 200 })
            return BookingRefusals.BadKey.ToProblem();
        await using var write = await database.BeginWriteAsync();
        var fingerprint = $"sell {request.KindId} {request.PaidHow} {clientId}";
        if (
            key is not null
            && await answered.EarlierAsync(write, reader.AccountId, key, fingerprint) is { } earlier
        )
            return earlier;
        if (await ClientStore.FindAsync(write, reader, clientId) is not { } client)
            return BookingRefusals.NoSuchClient.ToProblem();
        if (await PassKindStore.FindAsync(write, request.KindId) is not { OnSale: true } kind)
            return (PassRefusals.NoSuchKind with { Field = "kindId" }).ToProblem();
        if (kind.Price > 0 && request.PaidHow is null)
            return PassRefusals.SayHow.ToProblem();
        if (kind.Form == PassForm.Trial && await PassStore.HadTrialAsync(write, clientId))
            return PassRefusals.TrialOnce.ToProblem();
        var today = studio.Today(client.Row.Zone);
        var terms = new PassTerms(
            kind.Form,
            kind.Credits,
            kind.RunsDays,
            kind.Price,
            await PassKindStore.DaysAsync(write, [.. kind.SessionIds])
        );
        if (!terms.OnSale(today, request.StartsOn).TryGet(out var sold, out var refusal))
            return refusal.ToProblem();
        var id = await PassStore.SellAsync(
            write,
            new PassSale(clientId, kind, sold, kind.Price > 0 ? request.PaidHow : null, today),
            clock.GetCurrentInstant(),
            reader.AccountId
        );
        var pass = await ToldAsync(write, id, client, today, book);
        if (key is not null)
            await answered.KeepAsync(
                write,
                reader.AccountId,
                key,
                fingerprint,
                StatusCodes.Status201Created,
                pass
            );
        write.Tell("client", clientId);
        await write.CommitAsync();
        return TypedResults.Created($"/api/clients/{clientId}/passes", pass);
    }

    private static async Task<Results<Ok<PassMessage>, ProblemHttpResult>> GoodwillAsync(
        long passId,
        GoodwillRequest request,
        Reader reader,
        Database database,
        StudioStore studio,
        RuleBook book,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await HersAsync(write, reader, passId, clock) is not var (client, row))
            return PassRefusals.NoSuchPass.ToProblem();
        if (
            PassRules.WhyNotAdd(row.Pass, new LedgerEntry(EntryKind.Goodwill, request.Credits)) is
            { } refusal
        )
            return refusal.ToProblem();
        await PassStore.AddAsync(
            write,
            new PassEntryRow
            {
                PassId = passId,
                Kind = EntryKind.Goodwill,
                Credits = request.Credits,
                Reason = request.Reason.Trim(),
            },
            null,
            clock.GetCurrentInstant(),
            reader.AccountId
        );
        return await DoneAsync(write, client, passId, studio, book);
    }

    private static async Task<Results<Ok<PassMessage>, ProblemHttpResult>> RefundAsync(
        long passId,
        RefundRequest request,
        Reader reader,
        Database database,
        StudioStore studio,
        RuleBook book,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await HersAsync(write, reader, passId, clock) is not var (client, row))
            return PassRefusals.NoSuchPass.ToProblem();
        if (request.Amount > 0 && request.PaidHow is null)
            return PassRefusals.SayHow.ToProblem();
        if (request.Amount > row.Price - row.PaidBack)
            return PassRefusals
                .TooMuch($"{Currency.Text(row.Price - row.PaidBack, row.Currency)} {row.Currency}")
                .ToProblem();
        if (
            PassRules.WhyNotAdd(row.Pass, new LedgerEntry(EntryKind.Refunded, -row.Pass.Balance)) is
            { } refusal
        )
            return refusal.ToProblem();
        var now = clock.GetCurrentInstant();
        long? taking =
            request.Amount > 0
                ? await PassStore.TakeAsync(
                    write,
                    new Taking(
                        studio.Today(client.Row.Zone),
                        row.KindId,
                        row.Name,
                        request.PaidHow!.Value,
                        -request.Amount,
                        row.Currency,
                        row.TaxPerMille,
                        -PassRules.TaxPaidBack(row.PaidBack, request.Amount, row.TaxPerMille)
                    ),
                    now,
                    reader.AccountId
                )
                : null;
        await PassStore.AddAsync(
            write,
            new PassEntryRow
            {
                PassId = passId,
                Kind = EntryKind.Refunded,
                Credits = -row.Pass.Balance,
                Reason = request.Reason.Trim(),
            },
            taking,
            now,
            reader.AccountId
        );
        return await DoneAsync(write, client, passId, studio, book);
    }

    // What a hold gave back is put down first, so that a balance is what it should be before it is changed by hand.
    private static async Task<(ClientSeen Client, PassRow Pass)?> HersAsync(
        Write write,
        Reader reader,
        long passId,
        IClock clock
    )
    {
        if (
            await PassStore.FindAsync(write, passId) is not { } found
            || await ClientStore.FindAsync(write, reader, found.ClientId) is not { } client
        )
            return null;
        await PassLedger.ExcuseHeldAsync(write, found.ClientId, clock.GetCurrentInstant(), null);
        return (client, (await PassStore.FindAsync(write, passId))!);
    }

    private static async Task<Ok<PassMessage>> DoneAsync(
        Write write,
        ClientSeen client,
        long passId,
        StudioStore studio,
        RuleBook book
    )
    {
        var pass = await ToldAsync(write, passId, client, studio.Today(client.Row.Zone), book);
        write.Tell("client", client.Row.Id);
        await write.CommitAsync();
        return TypedResults.Ok(pass);
    }

    private static async Task<PassMessage> ToldAsync(
        Read read,
        long passId,
        ClientSeen client,
        LocalDate today,
        RuleBook book
    )
    {
        var purse = await Purse.LoadAsync(
            read,
            client.Row.Id,
            await PolicyStore.InForceAsync(read, book)
        );
        return Told(read, purse.Passes.Single(p => p.Id == passId), purse, client.Audience, today);
    }

    private static PassMessage Told(
        Read read,
        PassRow row,
        Purse purse,
        Audience audience,
        LocalDate today
    )
    {
        var last = purse.LastDay(row.Pass);
        var balance = 0;
        return new PassMessage
        {
            Id = row.Id,
            Name = row.Name,
            Form = row.Form,
            Classes = row.ClassNames,
            Balance = row.Pass.IsUnlimited ? null : row.Pass.Balance,
            StartsOn = row.StartsOn,
            LastDay = last,
            PutOffDays = purse.PutOffDays(row.Pass),
            PutOffBecause =
                row.Form == PassForm.Course
                    ? []
                    :
                    [
                        .. purse
                            .Causes.Where(c =>
                                (c.Still.To is not { } to || to >= row.StartsOn)
                                && (last is not { } end || c.Still.From <= end)
                            )
                            .OrderBy(c => c.Still.From)
                            .Select(c => PassWords.Still(c.Cause, c.Still, audience))
                            .Distinct(),
                    ],
            IsUsable =
                !row.Pass.IsClosed
                && (row.Pass.IsUnlimited || row.Pass.Balance > 0)
                && (last is not { } ends || ends >= today),
            Says = PassWords.Left(row.Pass, last, today),
            SoldOn = row.SoldOn,
            SoldBy = row.SoldBy,
            PaidHow = row.PaidHow,
            Price = row.Price,
            PriceText = Currency.Text(row.Price, row.Currency),
            TaxText = Currency.Text(PassRules.TaxIn(row.Price, row.TaxPerMille), row.Currency),
            TaxPerMille = row.TaxPerMille,
            Currency = row.Currency,
            LeftToPayBack = row.Price - row.PaidBack,
            Ledger =
            [
                .. row.Entries.Select(e => new PassEntryMessage
                {
                    Id = e.Id,
                    Kind = e.Kind,
                    Says = PassWords.Line(e.Kind, e.Why),
                    Credits = e.Credits,
                    Balance = balance += e.Credits,
                    At = e.At,
                    ClassName = e.ClassName,
                    On = e.OnDate,
                    Reason = e.Reason is { } reason ? read.Seal.Open(reason) : null,
                    PaidBack = e.Gross is { } gross ? Currency.Text(-gross, row.Currency) : null,
                    By = e.By,
                }),
            ],
        };
    }
}
