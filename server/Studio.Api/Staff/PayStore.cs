using NodaTime;
using Studio.Api.Data;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>A session that was held, with the names that go with it.</summary>
public sealed record HeldSessionRow
{
    /// <summary>The session.</summary>
    public long Id { get; init; }

    /// <summary>Who taught it.</summary>
    public long InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public string InstructorName { get; init; } = "";

    /// <summary>Its class.</summary>
    public long ClassId { get; init; }

    /// <summary>Name of its class.</summary>
    public string ClassName { get; init; } = "";

    /// <summary>Where.</summary>
    public string LocationName { get; init; } = "";

    /// <summary>Its own date.</summary>
    public LocalDate OnDate { get; init; }

    /// <summary>Start by the location's clock.</summary>
    public LocalTime StartsLocal { get; init; }

    /// <summary>Start.</summary>
    public Instant StartsAt { get; init; }

    /// <summary>End.</summary>
    public Instant EndsAt { get; init; }

    /// <summary>People checked in.</summary>
    public int CheckedIn { get; init; }

    /// <summary>People who had a seat.</summary>
    public int SeatsTaken { get; init; }

    /// <summary>As rules know it.</summary>
    public PaidSession Paid =>
        new()
        {
            Id = Id,
            InstructorId = InstructorId,
            ClassId = ClassId,
            On = OnDate,
            Minutes = (int)(EndsAt - StartsAt).TotalMinutes,
            CheckedIn = CheckedIn,
            SeatsTaken = SeatsTaken,
        };
}

/// <summary>Rates, and the sessions they are paid for.</summary>
public static class PayStore
{
    /// <summary>
    /// Sessions that are over, by their own dates, in the order of time. Heads are those who were there on the day: what
    /// was earned does not change with what became of anybody since, and a number names nobody.
    /// </summary>
    public static Task<List<HeldSessionRow>> HeldAsync(
        Read read,
        LocalDate from,
        LocalDate to,
        Instant now,
        long? instructorId = null
    ) =>
        read.ListAsync<HeldSessionRow>(
            """
            select s.id, s.instructor_id as InstructorId, i.name as InstructorName, s.class_id as ClassId,
                   c.name as ClassName, l.name as LocationName, s.on_date as OnDate, s.starts_local as StartsLocal,
                   s.starts_at as StartsAt, s.ends_at as EndsAt, s.seats_taken as SeatsTaken,
                   (select count(*) from bookings b
                     where b.session_id = s.id and b.status = 'booked' and b.checked_in_at is not null) as CheckedIn
              from sessions s
              join instructors i on i.id = s.instructor_id
              join classes c on c.id = s.class_id
              join rooms r on r.id = s.room_id
              join locations l on l.id = r.location_id
             where s.status = 'open' and s.ends_at <= @now and s.on_date between @from and @to
               and (@instructorId is null or s.instructor_id = @instructorId)
             order by s.on_date, s.starts_at, s.id
            """,
            new
            {
                from,
                to,
                now,
                instructorId,
            }
        );

    /// <summary>Every rate, also those withdrawn, the newest first.</summary>
    public static async Task<List<PayRateMessage>> RatesAsync(Read read) =>
        [
            .. (
                await read.ListAsync<RateRow>(
                    """
                    select p.id, p.instructor_id as InstructorId, i.name as InstructorName, p.class_id as ClassId,
                           c.name as ClassName, p.per, p.heads, p.amount, p.currency, p.from_on as "From",
                           p.made_at as MadeAt, p.withdrawn_at as WithdrawnAt
                      from pay_rates p
                      left join instructors i on i.id = p.instructor_id
                      left join classes c on c.id = p.class_id
                     order by p.withdrawn_at is not null, p.from_on desc, p.id desc
                    """
                )
            ).Select(r => new PayRateMessage
            {
                Id = r.Id,
                InstructorId = r.InstructorId,
                InstructorName = r.InstructorName,
                ClassId = r.ClassId,
                ClassName = r.ClassName,
                Per = r.Per,
                Heads = r.Heads,
                Amount = r.Amount,
                AmountText = Currency.Text(r.Amount, r.Currency),
                Currency = r.Currency,
                From = r.From,
                MadeAt = r.MadeAt,
                WithdrawnAt = r.WithdrawnAt,
            }),
        ];

    /// <summary>Those that count, as rules know them.</summary>
    public static async Task<List<PayRate>> CountingAsync(Read read) =>
        [
            .. (await RatesAsync(read))
                .Where(r => r.WithdrawnAt is null)
                .Select(r => new PayRate
                {
                    Id = r.Id,
                    InstructorId = r.InstructorId,
                    ClassId = r.ClassId,
                    Per = r.Per,
                    Heads = r.Heads,
                    Amount = r.Amount,
                    Currency = r.Currency,
                    From = r.From,
                }),
        ];

    /// <summary>Enters a rate.</summary>
    public static Task<long> AddAsync(Write write, PayRate rate, Instant at, long? by) =>
        write.InsertAsync(
            """
            insert into pay_rates (instructor_id, class_id, per, heads, amount, currency, from_on, made_at, made_by)
            values (@InstructorId, @ClassId, @per, @heads, @Amount, @Currency, @From, @at, @by)
            """,
            new
            {
                rate.InstructorId,
                rate.ClassId,
                per = StaffStore.Wire(rate.Per),
                heads = rate.Heads is { } heads ? StaffStore.Wire(heads) : null,
                rate.Amount,
                rate.Currency,
                rate.From,
                at,
                by,
            }
        );

    /// <summary>From now on it counts for nothing; whether it did before.</summary>
    public static async Task<bool> WithdrawAsync(Write write, long rateId, Instant at, long by) =>
        await write.ExecuteAsync(
            """
            update pay_rates set withdrawn_at = @at, withdrawn_by = @by where id = @rateId and withdrawn_at is null
            """,
            new
            {
                rateId,
                at,
                by,
            }
        ) == 1;

    private sealed record RateRow
    {
        public long Id { get; init; }
        public long? InstructorId { get; init; }
        public string? InstructorName { get; init; }
        public long? ClassId { get; init; }
        public string? ClassName { get; init; }
        public PayPer Per { get; init; }
        public HeadCount? Heads { get; init; }
        public long Amount { get; init; }
        public string Currency { get; init; } = "";
        public LocalDate From { get; init; }
        public Instant MadeAt { get; init; }
        public Instant? WithdrawnAt { get; init; }
    }
}
