using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>Rates and pay: all of it for the owner, her own lines for an instructor.</summary>
public static class PayEndpoints
{
    private static readonly Refusal NoSuchRate = new(
        RefusalKind.NotFound,
        "no-such-rate",
        "There is no such rate, or it was withdrawn already."
    );

    /// <summary>Maps the routes.</summary>
    public static void MapPay(this IEndpointRouteBuilder app)
    {
        var pay = app.MapGroup("/api/pay")
            .WithTags("Pay")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400);
        pay.MapGet("/", AllAsync).WithName("Pay");
        pay.MapGet("/file", AllFileAsync)
            .WithName("PayFile")
            .Produces<string>(StatusCodes.Status200OK, "text/csv");
        pay.MapGet("/rates", RatesAsync).WithName("PayRates");
        pay.MapPost("/rates", AddRateAsync).WithName("AddPayRate").ProducesProblem(404);
        pay.MapPost("/rates/{rateId}/withdraw", WithdrawAsync)
            .WithName("WithdrawPayRate")
            .ProducesProblem(404);

        var hers = app.MapGroup("/api/instructors/{instructorId}/pay")
            .WithTags("Pay")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(400)
            .ProducesProblem(404);
        hers.MapGet("/", HersAsync).WithName("PayOfInstructor");
        hers.MapGet("/file", HerFileAsync)
            .WithName("PayFileOfInstructor")
            .Produces<string>(StatusCodes.Status200OK, "text/csv");
    }

    private static async Task<Results<Ok<PayMessage>, ProblemHttpResult>> AllAsync(
        QueryDay? from,
        QueryDay? to,
        Database database,
        StudioStore studio,
        IClock clock
    ) =>
        (await OfAsync(null, from, to, database, studio, clock)).TryGet(
            out var pay,
            out var refusal
        )
            ? TypedResults.Ok(pay)
            : refusal.ToProblem();

    private static async Task<IResult> AllFileAsync(
        QueryDay? from,
        QueryDay? to,
        Database database,
        StudioStore studio,
        IClock clock
    ) => File(await OfAsync(null, from, to, database, studio, clock));

    private static async Task<Results<Ok<PayMessage>, ProblemHttpResult>> HersAsync(
        long instructorId,
        QueryDay? from,
        QueryDay? to,
        Reader reader,
        Database database,
        StudioStore studio,
        IClock clock
    ) =>
        !reader.MayKeep(instructorId) ? StaffRefusals.NoSuchInstructor.ToProblem()
        : (await OfAsync(instructorId, from, to, database, studio, clock)).TryGet(
            out var pay,
            out var refusal
        )
            ? TypedResults.Ok(pay)
        : refusal.ToProblem();

    private static async Task<IResult> HerFileAsync(
        long instructorId,
        QueryDay? from,
        QueryDay? to,
        Reader reader,
        Database database,
        StudioStore studio,
        IClock clock
    ) =>
        reader.MayKeep(instructorId)
            ? File(await OfAsync(instructorId, from, to, database, studio, clock))
            : StaffRefusals.NoSuchInstructor.ToProblem();

    private static async Task<List<PayRateMessage>> RatesAsync(Database database)
    {
        await using var read = await database.ReadAsync();
        return await PayStore.RatesAsync(read);
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> AddRateAsync(
        PayRateRequest request,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        if (!Currency.Exists(request.Currency))
            return new Refusal(
                RefusalKind.Invalid,
                "no-such-currency",
                $"There is no currency {request.Currency}. Write its three letters as in EUR.",
                "currency"
            ).ToProblem();
        if (request.Heads is not null && request.Per != PayPer.Head)
            return new Refusal(
                RefusalKind.Invalid,
                "counts-nobody",
                "Only a rate per head counts people. Leave out whom it counts, or make it per head.",
                "heads"
            ).ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (
            request.InstructorId is { } instructor
            && await StaffStore.FindAsync(write, instructor) is null
        )
            return (StaffRefusals.NoSuchInstructor with { Field = "instructorId" }).ToProblem();
        if (
            request.ClassId is { } cls
            && !(await StudioStore.ClassesAsync(write)).Exists(c => c.Id == cls)
        )
            return new Refusal(
                RefusalKind.NotFound,
                "no-such-class",
                "There is no such class.",
                "classId"
            ).ToProblem();
        var id = await PayStore.AddAsync(
            write,
            new PayRate
            {
                Id = 0,
                InstructorId = request.InstructorId,
                ClassId = request.ClassId,
                Per = request.Per,
                Heads = request.Per == PayPer.Head ? request.Heads ?? HeadCount.CheckedIn : null,
                Amount = request.Amount,
                Currency = request.Currency,
                From = request.From,
            },
            clock.GetCurrentInstant(),
            reader.AccountId
        );
        write.Tell("staff");
        await write.CommitAsync();
        return TypedResults.Created("/api/pay/rates", new Made(id));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> WithdrawAsync(
        long rateId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            !await PayStore.WithdrawAsync(
                write,
                rateId,
                clock.GetCurrentInstant(),
                reader.AccountId
            )
        )
            return NoSuchRate.ToProblem();
        write.Tell("staff");
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static IResult File(Answer<PayMessage> answer) =>
        answer.TryGet(out var pay, out var refusal)
            ? TypedResults.File(
                PayFile.Of(pay.Lines),
                "text/csv; charset=utf-8",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"pay-{LocalDatePattern.Iso.Format(pay.From)}-to-{LocalDatePattern.Iso.Format(pay.To)}.csv"
                )
            )
            : refusal.ToProblem();

    private static async Task<Answer<PayMessage>> OfAsync(
        long? instructorId,
        QueryDay? from,
        QueryDay? to,
        Database database,
        StudioStore studio,
        IClock clock
    )
    {
        var today = (await studio.AboutAsync()).Today;
        var asked = StaffSpan.Of(from, to, today, day => day.With(DateAdjusters.StartOfMonth));
        if (!asked.TryGet(out var span, out var refusal))
            return refusal;
        await using var read = await database.ReadAsync();
        if (instructorId is { } one && await StaffStore.FindAsync(read, one) is null)
            return StaffRefusals.NoSuchInstructor;
        var held = await PayStore.HeldAsync(
            read,
            span.From,
            span.To,
            clock.GetCurrentInstant(),
            instructorId
        );
        var lines = PayRules.Lines(
            held.Select(h => h.Paid),
            await PayStore.CountingAsync(read),
            span.From,
            span.To
        );
        var names = held.DistinctBy(h => h.InstructorId)
            .ToDictionary(h => h.InstructorId, h => h.InstructorName);
        return new PayMessage
        {
            From = span.From,
            To = span.To,
            Lines = [.. held.Zip(lines, Told)],
            ByInstructor =
            [
                .. lines
                    .GroupBy(l => l.Session.InstructorId)
                    .OrderBy(g => names[g.Key], StringComparer.Ordinal)
                    .ThenBy(g => g.Key)
                    .SelectMany(g => PayRules.Totals(g).Select(t => Told(t, g.Key, names[g.Key]))),
            ],
            Totals = [.. PayRules.Totals(lines).Select(t => Told(t, null, null))],
            WithoutRate = lines.Count(l => l.Rate is null),
        };
    }

    private static PayTotalMessage Told(PayTotal total, long? instructorId, string? name) =>
        new(
            instructorId,
            name,
            total.Currency,
            total.Sessions,
            total.Amount,
            Currency.Text(total.Amount, total.Currency)
        );

    private static PayLineMessage Told(HeldSessionRow held, PayLine line) =>
        new()
        {
            SessionId = held.Id,
            On = held.OnDate,
            StartsLocal = held.StartsLocal.ToString("HH:mm", null),
            InstructorId = held.InstructorId,
            InstructorName = held.InstructorName,
            ClassName = held.ClassName,
            LocationName = held.LocationName,
            Minutes = line.Session.Minutes,
            Heads = line.Heads,
            Per = line.Rate?.Per,
            Rate = line.Rate is { } rate ? Currency.Text(rate.Amount, rate.Currency) : null,
            Currency = line.Rate?.Currency,
            Amount = line.Amount,
            AmountText = line.Amount is { } amount
                ? Currency.Text(amount, line.Rate!.Currency)
                : null,
        };
}
