using NodaTime;
using Studio.Api.Data;
using Studio.Core.Passes;
using Studio.Core.Staff;

namespace Studio.Api.Passes;

/// <summary>Kinds of pass, as data.</summary>
public static class PassKindStore
{
    /// <summary>Every kind, those on sale first, then by name.</summary>
    public static async Task<List<PassKindMessage>> AllAsync(Read read)
    {
        var kinds = await read.ListAsync<KindRow>(
            """
            select id, name, form, credits, runs_days as RunsDays, price, currency, tax_per_mille as TaxPerMille,
                   carries_over as CarriesOver, on_sale as OnSale
              from pass_kinds order by on_sale desc, name, id
            """
        );
        var classes = await LinksAsync(
            read,
            """
            select k.kind_id as Id, k.class_id as Link, c.name
              from pass_kind_classes k join classes c on c.id = k.class_id order by c.name
            """
        );
        var sessions = await LinksAsync(
            read,
            """
            select k.kind_id as Id, k.session_id as Link, '' as name
              from pass_kind_sessions k join sessions s on s.id = k.session_id order by s.starts_at
            """
        );
        return
        [
            .. kinds.Select(k => new PassKindMessage
            {
                Id = k.Id,
                Name = k.Name,
                Form = k.Form,
                Credits = k.Credits,
                RunsDays = k.RunsDays,
                Price = k.Price,
                PriceText = Currency.Text(k.Price, k.Currency),
                Currency = k.Currency,
                TaxPerMille = k.TaxPerMille,
                CarriesOver = k.CarriesOver,
                OnSale = k.OnSale,
                ClassIds = [.. classes[k.Id].Select(c => c.Link)],
                SessionIds = [.. sessions[k.Id].Select(s => s.Link)],
                Says = Says(k, [.. classes[k.Id].Select(c => c.Name)], sessions[k.Id].Count()),
            }),
        ];
    }

    /// <summary>One kind, or null.</summary>
    public static async Task<PassKindMessage?> FindAsync(Read read, long id) =>
        (await AllAsync(read)).Find(k => k.Id == id);

    /// <summary>The days of open sessions, by session; one that is not there is not held or does not exist.</summary>
    public static async Task<Dictionary<long, LocalDate>> DaysAsync(
        Read read,
        IReadOnlyCollection<long> sessionIds
    ) =>
        (
            await read.ListAsync<DayRow>(
                "select id, on_date as OnDate from sessions where id in @sessionIds and status = 'open'",
                new { sessionIds }
            )
        ).ToDictionary(s => s.Id, s => s.OnDate);

    /// <summary>Whether another kind on sale has this name.</summary>
    public static async Task<bool> NameTakenAsync(Read read, string name, long exceptId) =>
        await read.ValueAsync<long>(
            "select count(*) from pass_kinds where on_sale = 1 and lower(name) = lower(@name) and id <> @exceptId",
            new { name, exceptId }
        ) > 0;

    /// <summary>Enters a kind.</summary>
    public static async Task<long> AddAsync(Write write, PassKindRequest kind, Instant at, long? by)
    {
        var id = await write.InsertAsync(
            """
            insert into pass_kinds (name, form, credits, runs_days, price, currency, tax_per_mille, carries_over, on_sale,
                                    made_at, made_by)
            values (@name, @form, @credits, @RunsDays, @Price, @Currency, @TaxPerMille, @CarriesOver, @OnSale, @at, @by)
            """,
            Parameters(kind, 0, at, by)
        );
        await LinkAsync(write, id, kind);
        return id;
    }

    /// <summary>Changes a kind; what was sold of it keeps its terms.</summary>
    public static async Task ChangeAsync(Write write, long id, PassKindRequest kind)
    {
        await write.ExecuteAsync(
            """
            update pass_kinds
               set name = @name, form = @form, credits = @credits, runs_days = @RunsDays, price = @Price,
                   currency = @Currency, tax_per_mille = @TaxPerMille, carries_over = @CarriesOver, on_sale = @OnSale
             where id = @id
            """,
            Parameters(kind, id, null, null)
        );
        await write.ExecuteAsync("delete from pass_kind_classes where kind_id = @id", new { id });
        await write.ExecuteAsync("delete from pass_kind_sessions where kind_id = @id", new { id });
        await LinkAsync(write, id, kind);
    }

    private static async Task LinkAsync(Write write, long id, PassKindRequest kind)
    {
        foreach (var cls in kind.ClassIds.Distinct())
            await write.ExecuteAsync(
                "insert into pass_kind_classes (kind_id, class_id) values (@id, @cls)",
                new { id, cls }
            );
        foreach (var session in kind.SessionIds.Distinct())
            await write.ExecuteAsync(
                "insert into pass_kind_sessions (kind_id, session_id) values (@id, @session)",
                new { id, session }
            );
    }

    private static object Parameters(PassKindRequest kind, long id, Instant? at, long? by) =>
        new
        {
            id,
            name = kind.Name.Trim(),
            form = PassStore.Wire(kind.Form),
            credits = kind.Form is PassForm.DropIn or PassForm.Trial ? 1 : kind.Credits,
            kind.RunsDays,
            kind.Price,
            kind.Currency,
            kind.TaxPerMille,
            kind.CarriesOver,
            kind.OnSale,
            at,
            by,
        };

    private static string Says(KindRow kind, List<string> classes, int sessions)
    {
        var gives = kind.Form switch
        {
            PassForm.Classes or PassForm.DropIn =>
                $"{PassWords.Classes(kind.Credits ?? 1)} within {Core.Pregnancies.Wording.Days(kind.RunsDays ?? 1)}",
            PassForm.Course => $"A course of {PassWords.Classes(sessions)}",
            PassForm.Monthly => "Any number of classes for a month",
            PassForm.Trial =>
                $"1 class free, once for everybody, within {Core.Pregnancies.Wording.Days(kind.RunsDays ?? 1)}",
        };
        return classes.Count == 0 || kind.Form == PassForm.Course
            ? $"{gives}."
            : $"{gives}: {string.Join(", ", classes)}.";
    }

    private static async Task<ILookup<long, LinkRow>> LinksAsync(Read read, string sql) =>
        (await read.ListAsync<LinkRow>(sql)).ToLookup(l => l.Id);

    private sealed record KindRow
    {
        public long Id { get; init; }
        public string Name { get; init; } = "";
        public PassForm Form { get; init; }
        public int? Credits { get; init; }
        public int? RunsDays { get; init; }
        public long Price { get; init; }
        public string Currency { get; init; } = "";
        public int TaxPerMille { get; init; }
        public bool CarriesOver { get; init; }
        public bool OnSale { get; init; }
    }

    private sealed record LinkRow
    {
        public long Id { get; init; }
        public long Link { get; init; }
        public string Name { get; init; } = "";
    }

    private sealed record DayRow
    {
        public long Id { get; init; }
        public LocalDate OnDate { get; init; }
    }
}
