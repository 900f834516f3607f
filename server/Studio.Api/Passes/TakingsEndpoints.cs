using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using NodaTime.Text;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Staff;
using Studio.Api.Studios;
using Studio.Core.Catalogue;
using Studio.Core.Passes;
using Studio.Core.Staff;

namespace Studio.Api.Passes;

/// <summary>What was taken by day, and what the studio owes in classes, as files for the owner.</summary>
public static class TakingsEndpoints
{
    private static readonly string[] TakingColumns =
    [
        "date",
        "pass",
        "paid_how",
        "currency",
        "tax_percent",
        "entries",
        "taken",
        "paid_back",
        "gross",
        "tax",
        "net",
    ];

    private static readonly string[] OutstandingColumns =
    [
        "client",
        "pass",
        "sold_on",
        "last_day",
        "days_put_off",
        "classes_left",
        "price",
        "paid_back",
        "currency",
    ];

    /// <summary>Maps the routes.</summary>
    public static void MapTakings(this IEndpointRouteBuilder app)
    {
        var files = app.MapGroup("/api")
            .WithTags("Passes")
            .RequireAuthorization(Policies.Owner)
            .ProducesProblem(400);
        files
            .MapGet("/takings/file", TakingsAsync)
            .WithName("TakingsFile")
            .Produces<string>(StatusCodes.Status200OK, "text/csv");
        files
            .MapGet("/outstanding-credits/file", OutstandingAsync)
            .WithName("OutstandingCreditsFile")
            .Produces<string>(StatusCodes.Status200OK, "text/csv");
    }

    private static async Task<IResult> TakingsAsync(
        QueryDay? from,
        QueryDay? to,
        Database database,
        StudioStore studio
    )
    {
        var today = (await studio.AboutAsync()).Today;
        var asked = StaffSpan.Of(from, to, today, day => day.With(DateAdjusters.StartOfMonth));
        if (!asked.TryGet(out var span, out var refusal))
            return refusal.ToProblem();
        await using var read = await database.ReadAsync();
        var days = await read.ListAsync<TakingRow>(
            """
            select on_day as OnDay, name, paid_how as PaidHow, currency, tax_per_mille as TaxPerMille,
                   count(*) as Entries, sum(max(gross, 0)) as Taken, sum(max(-gross, 0)) as PaidBack,
                   sum(gross) as Gross, sum(tax) as Tax
              from takings
             where on_day between @From and @To
             group by on_day, name, paid_how, currency, tax_per_mille
             order by on_day, name, paid_how, currency, tax_per_mille
            """,
            new { span.From, span.To }
        );
        return File(
            string.Create(
                CultureInfo.InvariantCulture,
                $"takings-{LocalDatePattern.Iso.Format(span.From)}-to-{LocalDatePattern.Iso.Format(span.To)}.csv"
            ),
            CsvFile.Of(
                TakingColumns,
                days.Select(d =>
                    new[]
                    {
                        LocalDatePattern.Iso.Format(d.OnDay),
                        CsvFile.Plain(d.Name),
                        PassStore.Wire(d.PaidHow),
                        d.Currency,
                        (d.TaxPerMille / 10m).ToString("0.0", CultureInfo.InvariantCulture),
                        CsvFile.Number(d.Entries),
                        Currency.Text(d.Taken, d.Currency),
                        Currency.Text(d.PaidBack, d.Currency),
                        Currency.Text(d.Gross, d.Currency),
                        Currency.Text(d.Tax, d.Currency),
                        Currency.Text(d.Gross - d.Tax, d.Currency),
                    }
                )
            )
        );
    }

    // Credits that can still be used; what has run out is owed to nobody.
    private static async Task<IResult> OutstandingAsync(
        Database database,
        StudioStore studio,
        RuleBook book
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var read = await database.ReadAsync();
        var purses = await Purse.LoadAsync(read, null, await PolicyStore.InForceAsync(read, book));
        var names = (
            await read.ListAsync<NameRow>("select id, name from clients where erased_at is null")
        ).ToDictionary(c => c.Id, c => c.Name);
        var left = purses
            .Values.SelectMany(purse => purse.Passes.Select(pass => (purse, pass)))
            .Where(p => !p.pass.Pass.IsUnlimited && p.pass.Pass.Balance > 0)
            .Select(p =>
                (p.pass, Last: p.purse.LastDay(p.pass.Pass), Off: p.purse.PutOffDays(p.pass.Pass))
            )
            .Where(p => p.Last is not { } last || last >= today)
            .Where(p => names.ContainsKey(p.pass.ClientId))
            .OrderBy(p => names[p.pass.ClientId], StringComparer.Ordinal)
            .ThenBy(p => p.pass.Id);
        return File(
            $"outstanding-credits-{LocalDatePattern.Iso.Format(today)}.csv",
            CsvFile.Of(
                OutstandingColumns,
                left.Select(p =>
                    new[]
                    {
                        CsvFile.Plain(names[p.pass.ClientId]),
                        CsvFile.Plain(p.pass.Name),
                        LocalDatePattern.Iso.Format(p.pass.SoldOn),
                        p.Last is { } last ? LocalDatePattern.Iso.Format(last) : "not for now",
                        CsvFile.Number(p.Off),
                        CsvFile.Number(p.pass.Pass.Balance),
                        Currency.Text(p.pass.Price, p.pass.Currency),
                        Currency.Text(p.pass.PaidBack, p.pass.Currency),
                        p.pass.Currency,
                    }
                )
            )
        );
    }

    private static FileContentHttpResult File(string name, byte[] bytes) =>
        TypedResults.File(bytes, "text/csv; charset=utf-8", name);

    private sealed record TakingRow
    {
        public LocalDate OnDay { get; init; }
        public string Name { get; init; } = "";
        public PaidHow PaidHow { get; init; }
        public string Currency { get; init; } = "";
        public int TaxPerMille { get; init; }
        public long Entries { get; init; }
        public long Taken { get; init; }
        public long PaidBack { get; init; }
        public long Gross { get; init; }
        public long Tax { get; init; }
    }

    private sealed record NameRow
    {
        public long Id { get; init; }
        public string Name { get; init; } = "";
    }
}
