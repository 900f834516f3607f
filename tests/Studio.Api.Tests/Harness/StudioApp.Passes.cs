using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Harness;

public sealed partial class StudioApp
{
    /// <summary>A kind of pass: some classes within some days, good for these classes (all when none).</summary>
    public async Task<long> HasPassKind(
        int credits = 5,
        int days = 56,
        long price = 6000,
        params long[] classes
    )
    {
        var id = await Insert(
            """
            insert into pass_kinds (name, form, credits, runs_days, price, currency, tax_per_mille, carries_over, on_sale, made_at)
            values (@name, 'classes', @credits, @days, @price, 'EUR', 230, 1, 1, @at)
            """,
            new
            {
                name = $"Pass {Guid.NewGuid():n}",
                credits,
                days,
                price,
                at = Clock.GetCurrentInstant(),
            }
        );
        foreach (var cls in classes)
            await Execute(
                "insert into pass_kind_classes (kind_id, class_id) values (@id, @cls)",
                new { id, cls }
            );
        return id;
    }

    /// <summary>Money taken, or paid back where it is negative.</summary>
    public Task<long> HasTaking(long kind, long gross) =>
        Insert(
            """
            insert into takings (on_day, kind_id, name, paid_how, gross, currency, tax_per_mille, tax, at)
            values (@Today, @kind, 'Pass', 'cash', @gross, 'EUR', 0, 0, @at)
            """,
            new
            {
                Today,
                kind,
                gross,
                at = Clock.GetCurrentInstant(),
            }
        );

    /// <summary>A pass sold to her at the desk; its key.</summary>
    public async Task<long> HasPass(
        long client,
        int credits = 5,
        int days = 56,
        long price = 6000,
        params long[] classes
    )
    {
        _seller ??= await SignedInAs(Role.FrontDesk);
        return (
            await _seller.Sold(client, await HasPassKind(credits, days, price, classes))
        ).Number("id");
    }

    private HttpClient? _seller;
}

/// <summary>Passes as a page sells and reads them.</summary>
public static class PassWeb
{
    /// <summary>Sells a pass for cash; the pass.</summary>
    public static async Task<JsonNode> Sold(this HttpClient desk, long client, long kind)
    {
        using var answer = await desk.Post(
            $"/api/clients/{client}/passes",
            new { kindId = kind, paidHow = "cash" }
        );
        return await answer.Is(201);
    }

    /// <summary>A pass of hers as this person reads it.</summary>
    public static async Task<JsonNode> Pass(this HttpClient browser, long client, long pass) =>
        (await browser.Read($"/api/clients/{client}/passes"))
            .AsArray()
            .Single(p => p!.Number("id") == pass)!;

    /// <summary>Credits left on it.</summary>
    public static async Task<long> Left(this HttpClient browser, long client, long pass) =>
        (await browser.Pass(client, pass)).Number("balance");
}
