using NodaTime;
using Studio.Api.Data;
using Studio.Core;
using Studio.Core.Pregnancies;

namespace Studio.Api.Pregnancies;

/// <summary>Pregnancies, everything given about their dates, and every due date that was in force.</summary>
public static class PregnancyStore
{
    /// <summary>Begins a pregnancy's record; an earlier one stays, no longer current.</summary>
    public static async Task<long> BeginAsync(Write write, long clientId, Pregnancy pregnancy)
    {
        await write.ExecuteAsync(
            "update pregnancies set is_current = 0 where client_id = @clientId and is_current = 1",
            new { clientId }
        );
        return await write.InsertAsync(
            """
            insert into pregnancies (client_id, due_date, babies, born_on, birth_mode, ended_on, papers_from)
            values (@clientId, @DueDate, @Babies, @BornOn, @mode, @EndedOn, @PapersFrom)
            """,
            new
            {
                clientId,
                pregnancy.DueDate,
                pregnancy.Babies,
                pregnancy.BornOn,
                mode = OnTheWire(pregnancy.BirthMode),
                pregnancy.EndedOn,
                pregnancy.PapersFrom,
            }
        );
    }

    /// <summary>Everything given about a pregnancy's dates, as the dating rules take it.</summary>
    public static async Task<DatingEvidence> EvidenceAsync(Read read, long pregnancyId)
    {
        var rows = await EvidenceRowsAsync(read, pregnancyId);
        // Of a kind that can hold only once, the word given last counts; scans are all kept.
        var period = rows.FindLast(r => r.Kind == "lastPeriod");
        var transfer = rows.FindLast(r => r.Kind == "transfer");
        return new DatingEvidence
        {
            LastPeriod = period is null ? null : new LastPeriod(period.Day, period.CycleDays),
            Scans =
            [
                .. rows.Where(r => r.Kind == "scan")
                    .Select(r => new Scan(r.Day, new GestationalAge(r.MeasuredDays!.Value))),
            ],
            Transfer = transfer is null
                ? null
                : new EmbryoTransfer(transfer.Day, transfer.EmbryoDays!.Value),
            Stated = rows.FindLast(r => r.Kind == "stated")?.Day,
        };
    }

    /// <summary>
    /// Adds what was newly given, reckons the due date from everything, and puts it in force when it is another one.
    /// </summary>
    public static async Task<Answer<DatingChange>> AddEvidenceAsync(
        Write write,
        long pregnancyId,
        DatingEvidence given,
        Instant at,
        long? by
    )
    {
        foreach (var row in Rows(given))
            await write.ExecuteAsync(
                """
                insert into dating_evidence (pregnancy_id, kind, day, cycle_days, measured_days, embryo_days,
                                             entered_at, entered_by)
                values (@pregnancyId, @Kind, @Day, @CycleDays, @MeasuredDays, @EmbryoDays, @at, @by)
                """,
                new
                {
                    pregnancyId,
                    row.Kind,
                    row.Day,
                    row.CycleDays,
                    row.MeasuredDays,
                    row.EmbryoDays,
                    at,
                    by,
                }
            );

        if (
            !Dating
                .Reckon(await EvidenceAsync(write, pregnancyId))
                .TryGet(out var due, out var refusal)
        )
            return refusal;
        var before = await write.FindAsync<LocalDate?>(
            "select due_date from pregnancies where id = @pregnancyId",
            new { pregnancyId }
        );
        await write.ExecuteAsync(
            """
            insert into due_dates (pregnancy_id, due_date, basis, explanation, entered_at, entered_by)
            values (@pregnancyId, @On, @basis, @Explanation, @at, @by)
            """,
            new
            {
                pregnancyId,
                due.On,
                basis = OnTheWire(due.Basis),
                due.Explanation,
                at,
                by,
            }
        );
        await write.ExecuteAsync(
            "update pregnancies set due_date = @On where id = @pregnancyId",
            new { pregnancyId, due.On }
        );
        return new DatingChange(due.On, due.Basis, due.Explanation, before != due.On, 0);
    }

    /// <summary>The due date in force, with its basis and explanation.</summary>
    public static async Task<DatingRevision?> InForceAsync(Read read, long pregnancyId) =>
        (await RevisionsAsync(read, pregnancyId)).FirstOrDefault();

    /// <summary>All that is known of a pregnancy's dates.</summary>
    public static async Task<DatingHistory> HistoryAsync(Read read, long pregnancyId) =>
        new()
        {
            Revisions = await RevisionsAsync(read, pregnancyId),
            Evidence =
            [
                .. (await EvidenceRowsAsync(read, pregnancyId))
                    .AsEnumerable()
                    .Reverse()
                    .Select(r => new EvidenceMessage
                    {
                        Kind = r.Kind,
                        Day = r.Day,
                        Detail =
                            r.CycleDays is { } cycle ? $"cycle of {cycle} days"
                            : r.MeasuredDays is { } measured
                                ? $"measured {new GestationalAge(measured)}"
                            : r.EmbryoDays is { } embryo ? $"day-{embryo} embryo"
                            : null,
                        EnteredAt = r.EnteredAt,
                        EnteredBy = r.EnteredBy,
                    }),
            ],
        };

    /// <summary>Records a birth.</summary>
    public static Task BirthAsync(Write write, long pregnancyId, LocalDate on, BirthMode mode) =>
        write.ExecuteAsync(
            "update pregnancies set born_on = @on, birth_mode = @mode where id = @pregnancyId",
            new
            {
                pregnancyId,
                on,
                mode = OnTheWire((BirthMode?)mode),
            }
        );

    /// <summary>Takes a birth back: she is expecting again.</summary>
    public static Task UnbornAsync(Write write, long pregnancyId) =>
        write.ExecuteAsync(
            """
            update pregnancies
               set rung_at = null, rung_by = null, born_on = null, birth_mode = null, told_at = null, told_by = null
             where id = @pregnancyId
            """,
            new { pregnancyId }
        );

    /// <summary>Records when a birth or the end was told, and by whom.</summary>
    public static Task ToldAsync(Write write, long pregnancyId, Instant at, long by) =>
        write.ExecuteAsync(
            "update pregnancies set told_at = @at, told_by = @by where id = @pregnancyId",
            new
            {
                pregnancyId,
                at,
                by,
            }
        );

    /// <summary>When the birth or the end was told; null when it came with her record.</summary>
    public static async Task<Instant?> ToldAtAsync(Read read, long pregnancyId) =>
        (
            await read.ListAsync<Told>(
                "select told_at as At from pregnancies where id = @pregnancyId",
                new { pregnancyId }
            )
        )
            .Single()
            .At;

    /// <summary>Notes that somebody rang her.</summary>
    public static Task RungAsync(Write write, long pregnancyId, Instant at, long by) =>
        write.ExecuteAsync(
            "update pregnancies set rung_at = @at, rung_by = @by where id = @pregnancyId",
            new
            {
                pregnancyId,
                at,
                by,
            }
        );

    /// <summary>Records a loss after a birth, in place of the record with the birth, which is kept; the new record's key.</summary>
    public static async Task<long> EndAfterBirthAsync(
        Write write,
        long clientId,
        long pregnancyId,
        Pregnancy pregnancy,
        LocalDate on
    )
    {
        var id = await BeginAsync(
            write,
            clientId,
            new Pregnancy
            {
                DueDate = pregnancy.DueDate ?? pregnancy.BornOn,
                Babies = pregnancy.Babies,
                EndedOn = on,
                PapersFrom = pregnancy.PapersFrom,
            }
        );
        await write.ExecuteAsync(
            "update pregnancies set instead_of = @pregnancyId where id = @id",
            new { id, pregnancyId }
        );
        return id;
    }

    /// <summary>There was no loss: the record is as it was before one was set.</summary>
    public static async Task ReopenAsync(Write write, long clientId, long pregnancyId)
    {
        var before = await write.ListAsync<long>(
            "select instead_of from pregnancies where id = @pregnancyId and instead_of is not null",
            new { pregnancyId }
        );
        if (before is [var born])
        {
            await write.ExecuteAsync(
                "update pregnancies set is_current = 0 where client_id = @clientId",
                new { clientId }
            );
            await write.ExecuteAsync(
                "update pregnancies set is_current = 1 where id = @born",
                new { born }
            );
        }
        else
            await write.ExecuteAsync(
                "update pregnancies set ended_on = null, told_at = null, told_by = null where id = @pregnancyId",
                new { pregnancyId }
            );
    }

    /// <summary>Records that a pregnancy ended.</summary>
    public static Task EndAsync(Write write, long pregnancyId, LocalDate on) =>
        write.ExecuteAsync(
            """
            update pregnancies set ended_on = @on, stage = null, gestational_day = null where id = @pregnancyId
            """,
            new { pregnancyId, on }
        );

    /// <summary>A birth mode as it is stored.</summary>
    public static string? OnTheWire(BirthMode? mode) => mode?.ToString().ToLowerInvariant();

    private static string OnTheWire(DatingBasis basis) =>
        System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(basis.ToString());

    private static Task<List<DatingRevision>> RevisionsAsync(Read read, long pregnancyId) =>
        read.ListAsync<DatingRevision>(
            """
            select d.due_date as DueDate, d.basis, d.explanation, d.entered_at as EnteredAt, a.name as EnteredBy
              from due_dates d left join accounts a on a.id = d.entered_by
             where d.pregnancy_id = @pregnancyId
             order by d.id desc
            """,
            new { pregnancyId }
        );

    private static Task<List<EvidenceRow>> EvidenceRowsAsync(Read read, long pregnancyId) =>
        read.ListAsync<EvidenceRow>(
            """
            select e.kind, e.day, e.cycle_days as CycleDays, e.measured_days as MeasuredDays,
                   e.embryo_days as EmbryoDays, e.entered_at as EnteredAt, a.name as EnteredBy
              from dating_evidence e left join accounts a on a.id = e.entered_by
             where e.pregnancy_id = @pregnancyId
             order by e.id
            """,
            new { pregnancyId }
        );

    private static IEnumerable<EvidenceRow> Rows(DatingEvidence given)
    {
        if (given.LastPeriod is { } period)
            yield return new EvidenceRow
            {
                Kind = "lastPeriod",
                Day = period.FirstDay,
                CycleDays = period.CycleDays,
            };
        foreach (var scan in given.Scans)
            yield return new EvidenceRow
            {
                Kind = "scan",
                Day = scan.On,
                MeasuredDays = scan.Measured.Days,
            };
        if (given.Transfer is { } transfer)
            yield return new EvidenceRow
            {
                Kind = "transfer",
                Day = transfer.On,
                EmbryoDays = transfer.EmbryoDays,
            };
        if (given.Stated is { } stated)
            yield return new EvidenceRow { Kind = "stated", Day = stated };
    }

    private sealed record Told
    {
        public Instant? At { get; init; }
    }

    private sealed record EvidenceRow
    {
        public string Kind { get; init; } = "";
        public LocalDate Day { get; init; }
        public int? CycleDays { get; init; }
        public int? MeasuredDays { get; init; }
        public int? EmbryoDays { get; init; }
        public Instant EnteredAt { get; init; }
        public string? EnteredBy { get; init; }
    }
}
