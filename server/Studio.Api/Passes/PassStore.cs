using System.Text.Json;
using NodaTime;
using Studio.Api.Data;
using Studio.Core.Passes;

namespace Studio.Api.Passes;

/// <summary>A line of a ledger as it stands in the table.</summary>
public sealed record PassEntryRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Its pass.</summary>
    public long PassId { get; init; }

    /// <summary>Why it stands there.</summary>
    public EntryKind Kind { get; init; }

    /// <summary>Credits more or fewer.</summary>
    public int Credits { get; init; }

    /// <summary>The booking.</summary>
    public long? BookingId { get; init; }

    /// <summary>Why a credit came back.</summary>
    public CameBack? Why { get; init; }

    /// <summary>In the studio's words, sealed.</summary>
    public string? Reason { get; init; }

    /// <summary>What was taken by it: negative for what was paid back; null for nothing.</summary>
    public long? Gross { get; init; }

    /// <summary>When.</summary>
    public Instant At { get; init; }

    /// <summary>Who; null for the program.</summary>
    public string? By { get; init; }

    /// <summary>The class of its booking.</summary>
    public string? ClassName { get; init; }

    /// <summary>The date of its booking's session.</summary>
    public LocalDate? OnDate { get; init; }
}

/// <summary>A pass as it was sold, with its ledger.</summary>
public sealed record PassRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Whose.</summary>
    public long ClientId { get; init; }

    /// <summary>Its kind.</summary>
    public long KindId { get; init; }

    /// <summary>Name of its kind when it was sold.</summary>
    public string Name { get; init; } = "";

    /// <summary>What it gives.</summary>
    public PassForm Form { get; init; }

    /// <summary>First day.</summary>
    public LocalDate StartsOn { get; init; }

    /// <summary>Days it runs.</summary>
    public int RunsDays { get; init; }

    /// <summary>After a birth it is good for every class.</summary>
    public bool CarriesOver { get; init; }

    /// <summary>With tax, in the smallest unit.</summary>
    public long Price { get; init; }

    /// <summary>ISO 4217.</summary>
    public string Currency { get; init; } = "";

    /// <summary>Rate of the tax, in thousandths.</summary>
    public int TaxPerMille { get; init; }

    /// <summary>How it was paid.</summary>
    public PaidHow? PaidHow { get; init; }

    /// <summary>Day of the sale.</summary>
    public LocalDate SoldOn { get; init; }

    /// <summary>Who sold it.</summary>
    public string? SoldBy { get; init; }

    /// <summary>Its ledger, oldest first.</summary>
    public IReadOnlyList<PassEntryRow> Entries { get; init; } = [];

    /// <summary>Names of the classes it is good for; none: every class.</summary>
    public IReadOnlyList<string> ClassNames { get; init; } = [];

    /// <summary>As rules know it.</summary>
    public Pass Pass { get; init; } =
        new()
        {
            Id = 0,
            Form = PassForm.Classes,
            StartsOn = default,
            RunsDays = 1,
        };

    /// <summary>What was paid back of it, in the smallest unit.</summary>
    public long PaidBack => -Entries.Sum(e => e.Gross ?? 0);
}

/// <summary>A sale to write down.</summary>
/// <param name="ClientId">To whom.</param>
/// <param name="Kind">The kind, whose terms are copied.</param>
/// <param name="Sold">What it gives.</param>
/// <param name="PaidHow">How it was paid; null when it cost nothing.</param>
/// <param name="On">Day of the sale.</param>
public sealed record PassSale(
    long ClientId,
    PassKindMessage Kind,
    PassSold Sold,
    PaidHow? PaidHow,
    LocalDate On
);

/// <summary>Passes and their ledgers.</summary>
public static class PassStore
{
    /// <summary>Passes of some clients, or of everybody, in the order in which they were sold.</summary>
    public static async Task<List<PassRow>> OfAsync(Read read, IReadOnlyCollection<long>? clientIds)
    {
        var hers = clientIds is null ? "" : "where p.client_id in @clientIds";
        var parameters = new { clientIds };
        var rows = await read.ListAsync<PassRow>(
            $"""
            select p.id, p.client_id as ClientId, p.kind_id as KindId, p.name, p.form, p.starts_on as StartsOn,
                   p.runs_days as RunsDays, p.carries_over as CarriesOver, p.price, p.currency,
                   p.tax_per_mille as TaxPerMille, p.paid_how as PaidHow, p.sold_on as SoldOn, a.name as SoldBy
              from passes p left join accounts a on a.id = p.sold_by {hers} order by p.id
            """,
            parameters
        );
        if (rows.Count == 0)
            return [];
        var entries = (
            await read.ListAsync<PassEntryRow>(
                $"""
                select e.id, e.pass_id as PassId, e.kind, e.credits, e.booking_id as BookingId, e.why, e.reason,
                       t.gross, e.at, a.name as "By", c.name as ClassName, s.on_date as OnDate
                  from pass_entries e
                  join passes p on p.id = e.pass_id
                  left join takings t on t.id = e.taking_id
                  left join accounts a on a.id = e.by
                  left join bookings b on b.id = e.booking_id
                  left join sessions s on s.id = b.session_id
                  left join classes c on c.id = s.class_id
                  {hers} order by e.id
                """,
                parameters
            )
        ).ToLookup(e => e.PassId);
        var classes = (
            await read.ListAsync<LinkRow>(
                $"""
                select l.pass_id as PassId, l.class_id as Id, c.name
                  from pass_classes l join passes p on p.id = l.pass_id join classes c on c.id = l.class_id
                  {hers} order by c.name
                """,
                parameters
            )
        ).ToLookup(l => l.PassId);
        var sessions = (
            await read.ListAsync<LinkRow>(
                $"""
                select l.pass_id as PassId, l.session_id as Id, '' as name
                  from pass_sessions l join passes p on p.id = l.pass_id {hers}
                """,
                parameters
            )
        ).ToLookup(l => l.PassId);
        var births = (
            await read.ListAsync<BirthRow>(
                $"""
                select p.client_id as ClientId, p.born_on as BornOn from pregnancies p
                 where p.born_on is not null {(
                    clientIds is null ? "" : "and p.client_id in @clientIds"
                )}
                """,
                parameters
            )
        ).ToLookup(b => b.ClientId, b => b.BornOn);
        return
        [
            .. rows.Select(row =>
                row with
                {
                    Entries = [.. entries[row.Id]],
                    ClassNames = [.. classes[row.Id].Select(c => c.Name)],
                    Pass = new Pass
                    {
                        Id = row.Id,
                        Form = row.Form,
                        StartsOn = row.StartsOn,
                        RunsDays = row.RunsDays,
                        Classes = classes[row.Id].Select(c => c.Id).ToHashSet(),
                        Sessions = sessions[row.Id].Select(s => s.Id).ToHashSet(),
                        GoodForAllFrom = row.CarriesOver
                            ? births[row.ClientId]
                                .Where(b => b >= row.SoldOn)
                                .Select(b => (LocalDate?)b)
                                .Min()
                            : null,
                        Ledger =
                        [
                            .. entries[row.Id]
                                .Select(e => new LedgerEntry(e.Kind, e.Credits, e.BookingId)),
                        ],
                    },
                }
            ),
        ];
    }

    /// <summary>One pass, or null.</summary>
    public static async Task<PassRow?> FindAsync(Read read, long id) =>
        await read.FindAsync<long?>("select client_id from passes where id = @id", new { id })
            is { } client
            ? (await OfAsync(read, [client])).Find(p => p.Id == id)
            : null;

    /// <summary>
    /// What the standing still of these clients' passes follows from (everybody's when null): holds, births and losses,
    /// by client.
    /// </summary>
    public static async Task<ILookup<long, StillFact>> StillFactsAsync(
        Read read,
        IReadOnlyCollection<long>? clientIds
    ) =>
        (
            await read.ListAsync<StillFact>(
                $"""
                select t.client_id as ClientId, 1 as IsHold, t.from_on as FromOn, t.lifted_on as LiftedOn,
                       null as DueDate, null as BornOn, null as EndedOn, null as BackOn
                  from holds t {(clientIds is null ? "" : "where t.client_id in @clientIds")}
                union all
                select t.client_id, 0, null, null, t.due_date, t.born_on, t.ended_on,
                       (select n.papers_from from pregnancies n
                         where n.client_id = t.client_id and n.id > t.id order by n.id limit 1)
                  from pregnancies t
                 where (t.is_current = 1 or t.born_on is not null or t.ended_on is not null) {(
                    clientIds is null ? "" : "and t.client_id in @clientIds"
                )}
                """,
                new { clientIds }
            )
        ).ToLookup(f => f.ClientId);

    /// <summary>Whether she has had a trial.</summary>
    public static async Task<bool> HadTrialAsync(Read read, long clientId) =>
        await read.ValueAsync<long>(
            "select count(*) from passes where client_id = @clientId and form = 'trial'",
            new { clientId }
        ) > 0;

    /// <summary>Writes a sale down: what was taken, the pass with its terms, and the first line of its ledger.</summary>
    public static async Task<long> SellAsync(Write write, PassSale sale, Instant at, long? by)
    {
        long? taking = sale.PaidHow is { } how
            ? await TakeAsync(
                write,
                new Taking(
                    sale.On,
                    sale.Kind.Id,
                    sale.Kind.Name,
                    how,
                    sale.Kind.Price,
                    sale.Kind.Currency,
                    sale.Kind.TaxPerMille,
                    PassRules.TaxIn(sale.Kind.Price, sale.Kind.TaxPerMille)
                ),
                at,
                by
            )
            : null;
        var id = await write.InsertAsync(
            """
            insert into passes (client_id, kind_id, name, form, starts_on, runs_days, carries_over, price, currency,
                                tax_per_mille, paid_how, taking_id, sold_on, sold_at, sold_by)
            values (@ClientId, @kind, @Name, @form, @StartsOn, @RunsDays, @CarriesOver, @Price, @Currency,
                    @TaxPerMille, @paidHow, @taking, @On, @at, @by)
            """,
            new
            {
                sale.ClientId,
                kind = sale.Kind.Id,
                sale.Kind.Name,
                form = Wire(sale.Kind.Form),
                sale.Sold.StartsOn,
                sale.Sold.RunsDays,
                sale.Kind.CarriesOver,
                sale.Kind.Price,
                sale.Kind.Currency,
                sale.Kind.TaxPerMille,
                paidHow = sale.PaidHow is { } paid ? Wire(paid) : null,
                taking,
                sale.On,
                at,
                by,
            }
        );
        foreach (var cls in sale.Kind.ClassIds)
            await write.ExecuteAsync(
                "insert into pass_classes (pass_id, class_id) values (@id, @cls)",
                new { id, cls }
            );
        foreach (var session in sale.Sold.Sessions)
            await write.ExecuteAsync(
                "insert into pass_sessions (pass_id, session_id) values (@id, @session)",
                new { id, session }
            );
        await AddAsync(
            write,
            new PassEntryRow
            {
                PassId = id,
                Kind = EntryKind.Sold,
                Credits = sale.Sold.Credits,
            },
            null,
            at,
            by
        );
        return id;
    }

    /// <summary>Adds a line to a ledger. The schema refuses one that does not add up.</summary>
    public static Task AddAsync(
        Write write,
        PassEntryRow entry,
        long? takingId,
        Instant at,
        long? by
    ) =>
        write.ExecuteAsync(
            """
            insert into pass_entries (pass_id, kind, credits, booking_id, why, reason, taking_id, at, by)
            values (@PassId, @kind, @Credits, @BookingId, @why, @reason, @takingId, @at, @by)
            """,
            new
            {
                entry.PassId,
                kind = Wire(entry.Kind),
                entry.Credits,
                entry.BookingId,
                why = entry.Why is { } why ? Wire(why) : null,
                reason = entry.Reason is { } reason ? write.Seal.Close(reason) : null,
                takingId,
                at,
                by,
            }
        );

    /// <summary>Writes down what was taken, or, negative, paid back.</summary>
    public static Task<long> TakeAsync(Write write, Taking taking, Instant at, long? by) =>
        write.InsertAsync(
            """
            insert into takings (on_day, kind_id, name, paid_how, gross, currency, tax_per_mille, tax, at, by)
            values (@On, @KindId, @Name, @how, @Gross, @Currency, @TaxPerMille, @Tax, @at, @by)
            """,
            new
            {
                taking.On,
                taking.KindId,
                taking.Name,
                how = Wire(taking.PaidHow),
                taking.Gross,
                taking.Currency,
                taking.TaxPerMille,
                taking.Tax,
                at,
                by,
            }
        );

    /// <summary>The credit that stands against a booking, or null: its pass, and -1 or, of a monthly pass, 0.</summary>
    public static Task<StandingCredit?> StandingAsync(Read read, long bookingId) =>
        read.FindAsync<StandingCredit>(
            """
            select e.pass_id as PassId, e.credits, p.name from pass_entries e join passes p on p.id = e.pass_id
             where e.booking_id = @bookingId and e.kind = 'spent'
               and not exists (select 1 from pass_entries r where r.booking_id = e.booking_id and r.kind = 'returned')
            """,
            new { bookingId }
        );

    /// <summary>
    /// Bookings of hers with a credit standing that she could not use: sessions since a day to which she did not come,
    /// their seats given up late or never.
    /// </summary>
    public static Task<List<long>> UnusedSinceAsync(
        Read read,
        long clientId,
        LocalDate since,
        Instant now
    ) =>
        read.ListAsync<long>(
            """
            select b.id from pass_entries e
              join bookings b on b.id = e.booking_id
              join sessions s on s.id = b.session_id
             where b.client_id = @clientId and e.kind = 'spent' and s.on_date >= @since
               and (b.status = 'cancelled' or (b.status = 'booked' and b.checked_in_at is null and s.starts_at <= @now))
               and not exists (select 1 from pass_entries r where r.booking_id = b.id and r.kind = 'returned')
             order by b.id
            """,
            new
            {
                clientId,
                since,
                now,
            }
        );

    /// <summary>Bookings with a credit standing for sessions that are over, on days on which a hold of hers stood.</summary>
    public static Task<List<long>> UnusedWhileHeldAsync(Read read, long clientId, Instant now) =>
        read.ListAsync<long>(
            """
            select b.id from pass_entries e
              join bookings b on b.id = e.booking_id
              join sessions s on s.id = b.session_id
             where b.client_id = @clientId and e.kind = 'spent'
               and (b.status = 'cancelled' or (b.status = 'booked' and b.checked_in_at is null and s.ends_at <= @now))
               and exists (select 1 from holds h
                            where h.client_id = b.client_id and h.from_on <= s.on_date
                              and (h.lifted_on is null or h.lifted_on > s.on_date))
               and not exists (select 1 from pass_entries r where r.booking_id = b.id and r.kind = 'returned')
             order by b.id
            """,
            new { clientId, now }
        );

    /// <summary>"dropIn", "inTime" and so on.</summary>
    public static string Wire<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    private sealed record LinkRow
    {
        public long PassId { get; init; }
        public long Id { get; init; }
        public string Name { get; init; } = "";
    }

    private sealed record BirthRow
    {
        public long ClientId { get; init; }
        public LocalDate BornOn { get; init; }
    }
}

/// <summary>A credit that a booking has taken and not given back.</summary>
public sealed record StandingCredit
{
    /// <summary>From which pass.</summary>
    public long PassId { get; init; }

    /// <summary>-1, or 0 of a monthly pass.</summary>
    public int Credits { get; init; }

    /// <summary>The pass's name.</summary>
    public string Name { get; init; } = "";
}

/// <summary>Money taken, or, negative, paid back.</summary>
/// <param name="On">The day.</param>
/// <param name="KindId">For which kind of pass.</param>
/// <param name="Name">Its name that day.</param>
/// <param name="PaidHow">How.</param>
/// <param name="Gross">With tax, in the smallest unit.</param>
/// <param name="Currency">ISO 4217.</param>
/// <param name="TaxPerMille">Rate of the tax, in thousandths.</param>
/// <param name="Tax">The tax inside it.</param>
public sealed record Taking(
    LocalDate On,
    long KindId,
    string Name,
    PaidHow PaidHow,
    long Gross,
    string Currency,
    int TaxPerMille,
    long Tax
);

/// <summary>A hold or a pregnancy, as far as passes depend on it.</summary>
public sealed record StillFact
{
    /// <summary>Whose.</summary>
    public long ClientId { get; init; }

    /// <summary>A hold; a pregnancy otherwise.</summary>
    public bool IsHold { get; init; }

    /// <summary>First day of a hold.</summary>
    public LocalDate? FromOn { get; init; }

    /// <summary>The day it was lifted.</summary>
    public LocalDate? LiftedOn { get; init; }

    /// <summary>The due date in force.</summary>
    public LocalDate? DueDate { get; init; }

    /// <summary>The birth.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>A loss.</summary>
    public LocalDate? EndedOn { get; init; }

    /// <summary>The day she was back after it.</summary>
    public LocalDate? BackOn { get; init; }
}
