using NodaTime;
using NodaTime.Text;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Catalogue;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable;

/// <summary>Lays series out as sessions and changes them, inside the caller's transaction.</summary>
public sealed class SeriesPlans(
    RuleBook book,
    IClock clock,
    StudioStore studio,
    SessionChanges changes
)
{
    private const int MostShown = 60;
    private const int WeeksShown = 26;

    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture(
        "HH:mm"
    );

    private static readonly ConflictKind[] AboutHer =
    [
        ConflictKind.InstructorTaken,
        ConflictKind.NoTimeToTravel,
        ConflictKind.NotQualified,
        ConflictKind.OnLeave,
        ConflictKind.HasLeft,
    ];

    /// <summary>"18:00" as a time; the request's shape was checked.</summary>
    public static LocalTime TimeOf(string local) => Clock.Parse(local).GetValueOrThrow();

    /// <summary>The last day that is laid out: whole weeks, this one among them.</summary>
    public static LocalDate LaidOutTo(LocalDate today, int weeks) =>
        TimetableChecks.WeekOf(today).PlusDays((7 * weeks) - 1);

    /// <summary>What a rule gives, with the conflicts of its dates named; nothing is kept.</summary>
    public async Task<Answer<SeriesPreviewMessage>> PreviewAsync(Read read, SeriesRequest request)
    {
        if (!(await AskedAsync(read, request)).TryGet(out var asked, out var refusal))
            return refusal;
        var (shape, zone, place) = asked;
        var tzdb = DateTimeZoneProviders.Tzdb[zone];
        var now = clock.GetCurrentInstant();
        var from = LocalDate.Max(shape.StartsOn, now.InZone(tzdb).Date);
        var dates = shape
            .Rule.Dates(shape.StartsOn, from, from.PlusWeeks(WeeksShown))
            .Take(MostShown + 1)
            .ToList();
        var skipped = shape.Exceptions.ToHashSet();
        var shut = place is { } there ? await ClosureStore.ShutAsync(read, there.LocationId) : [];
        var wanted = dates
            .Take(MostShown)
            .Where(d =>
                place is not null
                && !skipped.Contains(d)
                && !shut.ContainsKey(d)
                && tzdb.On(d + shape.StartsLocal).ToInstant() > now
            )
            .ToList();
        IReadOnlyList<Conflict> conflicts = [];
        if (place is { } where && wanted.Count > 0)
        {
            var preview = await changes.PreviewAsync(
                read,
                [.. wanted.Select(d => Wanted(SeriesSession.Of(shape, d), where.ClassId, null))]
            );
            if (!preview.TryGet(out var found, out refusal))
                return refusal;
            conflicts = found.Conflicts;
        }

        var weeks = (await PolicyStore.InForceAsync(read, book)).TimetableAheadWeeks;
        return new SeriesPreviewMessage
        {
            Rule = shape.Rule.Text,
            Words = RuleWords.Of(shape.Rule, shape.StartsOn, shape.StartsLocal),
            Zone = zone,
            Start = shape.StartsOn,
            GoesOn =
                dates.Count > MostShown
                || shape
                    .Rule.Dates(
                        shape.StartsOn,
                        from.PlusWeeks(WeeksShown).PlusDays(1),
                        from.PlusYears(10)
                    )
                    .Any(),
            LaidOutTo = LaidOutTo(now.InZone(tzdb).Date, weeks),
            Conflicts = conflicts,
            Dates =
            [
                .. dates
                    .Take(MostShown)
                    .Select(d =>
                        Dated(
                            shape,
                            d,
                            tzdb,
                            skipped.Contains(d) ? SeriesDateState.Skipped
                                : shut.ContainsKey(d) ? SeriesDateState.Shut
                                : SeriesDateState.Planned,
                            shut.GetValueOrDefault(d)
                        ) with
                        {
                            Conflicts =
                            [
                                .. conflicts
                                    .Where(c => c.Sessions.Contains(-1 - wanted.IndexOf(d)))
                                    .Select(c => c.Words)
                                    .Distinct(StringComparer.Ordinal),
                            ],
                        }
                    ),
            ],
        };
    }

    /// <summary>Makes a series and lays it out; its id.</summary>
    public async Task<Answer<Added>> AddAsync(Write write, SeriesRequest request, long? by)
    {
        if (!(await AskedAsync(write, request)).TryGet(out var asked, out var refusal))
            return refusal;
        if (asked.Place is not { } place)
            return request.ClassId is null
                ? TimetableRefusals.NoSuchClass
                : TimetableRefusals.NoSuchRoom;
        var today = studio.Today(asked.Zone);
        if (
            !asked
                .Shape.Dates(today, LocalDate.Max(today, asked.Shape.StartsOn).PlusYears(10))
                .Any()
        )
            return SeriesRefusals.NoDates;
        var now = clock.GetCurrentInstant();
        if (
            await SeriesStore.AddAsync(write, place.ClassId, asked.Shape, null, now, by)
            is not { } id
        )
            return SeriesRefusals.StandsAlready;
        var series = (await SeriesStore.FindAsync(write, id))!;
        var made = await changes.ApplyAsync(
            write,
            [
                .. (await DueAsync(write, series)).Select(d =>
                    Wanted(SeriesSession.Of(series.Shape, d), series.ClassId, id)
                ),
            ],
            new ChangeTerms(by, request.Anyway)
        );
        if (!made.TryGet(out var added, out refusal))
            return refusal;
        write.Tell("session");
        return new Added(id, added.Added);
    }

    /// <summary>Changes a series; when it is only looked at, nothing is kept.</summary>
    public async Task<Answer<SeriesOutcome>> ChangeAsync(
        Write write,
        SeriesRow series,
        SeriesChangeRequest request,
        bool dryRun,
        long? by
    )
    {
        var shape = series.Shape;
        var zone = DateTimeZoneProviders.Tzdb[series.Zone];
        var today = studio.Today(series.Zone);
        if (await ZoneOfRoomAsync(write, request.RoomId) is not { } otherZone)
            return TimetableRefusals.NoSuchRoom;
        if (request.Scope != SeriesScope.All && request.On is null)
            return SeriesRefusals.NotADateOfIt("on");
        if (
            request.On is { } on
            && request.Scope != SeriesScope.All
            && !shape.Rule.Dates(shape.StartsOn, on, on).Any()
        )
            return SeriesRefusals.NotADateOfIt("on");

        var at = TimeOf(request.StartsLocal);
        var rule = shape.Rule;
        if (request.Rule is { } text)
        {
            if (
                !SeriesRule
                    .Read(text, at, DateTimeZoneProviders.Tzdb[otherZone])
                    .TryGet(out var read, out var wrong)
            )
                return wrong;
            rule = read;
        }

        var changed = shape with
        {
            RoomId = request.RoomId,
            InstructorId = request.InstructorId,
            Minutes = request.Minutes,
            Seats = request.Seats,
            StartsLocal = at,
        };
        if (request.Scope == SeriesScope.ThisOne)
            return await ChangeOneAsync(write, series, changed, request, dryRun, by);

        var from = request.Scope == SeriesScope.All ? today : request.On!.Value;
        if (from < today)
            return SeriesRefusals.HasBegun;
        LocalDate? start =
            request.Scope == SeriesScope.All
                ? request.Rule is null
                    ? shape.StartsOn
                    : rule.First(shape.StartsOn)
                : request.Rule is null
                    ? from
                    : rule.First(from);
        if (start is not { } first || !rule.Dates(first, from, from.PlusYears(10)).Any())
            return SeriesRefusals.NoDates;
        changed = changed with
        {
            StartsOn = first,
            Rule =
                request.Scope == SeriesScope.FromHere && request.Rule is null
                    ? SeriesEdits.Rest(shape, from)
                    : rule,
        };
        changed = changed with
        {
            Exceptions =
            [
                .. shape.Exceptions.Where(e =>
                    request.Scope == SeriesScope.All
                    || (e >= from && changed.Rule.Dates(first, e, e).Any())
                ),
            ],
        };
        return await FollowAsync(
            write,
            series,
            changed,
            from,
            request.Scope == SeriesScope.FromHere,
            request.ByHandToo,
            dryRun,
            new ChangeTerms(by, request.Anyway)
        );
    }

    /// <summary>Ends a series; what lies after its last day is called off.</summary>
    public async Task<Answer<SeriesOutcome>> EndAsync(
        Write write,
        SeriesRow series,
        LocalDate lastOn,
        bool dryRun,
        long? by
    )
    {
        var today = studio.Today(series.Zone);
        if (lastOn < today.PlusDays(-1))
            return SeriesRefusals.EndsInThePast;
        return await FollowAsync(
            write,
            series,
            series.Shape with
            {
                Rule = SeriesEdits.EndingBefore(series.Shape.Rule, lastOn.PlusDays(1)),
            },
            today,
            fromHere: false,
            byHandToo: false,
            dryRun,
            // Nothing is added that anybody could warn of.
            new ChangeTerms(by, Anyway: true)
        );
    }

    /// <summary>Leaves a date out, or brings it back.</summary>
    public async Task<Answer<SeriesOutcome>> SkipAsync(
        Write write,
        SeriesRow series,
        LocalDate on,
        bool skips,
        bool dryRun,
        ChangeTerms terms
    )
    {
        var shape = series.Shape;
        if (!shape.Rule.Dates(shape.StartsOn, on, on).Any())
            return SeriesRefusals.NotADateOfIt("on");
        if (on < studio.Today(series.Zone))
            return SeriesRefusals.HasBegun;
        var exceptions = skips
            ? shape.Exceptions.Append(on).Distinct().Order()
            : shape.Exceptions.Where(e => e != on);
        shape = shape with { Exceptions = [.. exceptions] };
        var session = (await SeriesStore.SessionsAsync(write, [series.Id], on)).Find(s =>
            s.SeriesOn == on
        );
        var weeks = (await PolicyStore.InForceAsync(write, book)).TimetableAheadWeeks;
        var reach = LaidOutTo(studio.Today(series.Zone), weeks);
        List<SessionWanted> wanted =
            session is not null ? [SessionWanted.As(session) with { IsHeld = !skips }]
            : !skips
            && on <= reach
            && !(await ClosureStore.ShutAsync(write, series.LocationId)).ContainsKey(on)
                ? [Wanted(SeriesSession.Of(shape, on), series.ClassId, series.Id)]
            : [];
        return await DoneAsync(write, series, shape, null, wanted, [], 0, dryRun, terms);
    }

    /// <summary>
    /// Lays out what is due of these series and is not there yet. Where the named instructor cannot, nobody is named; where
    /// the room cannot, the date is left for another night.
    /// </summary>
    /// <returns>How many sessions were made.</returns>
    public async Task<int> LayOutAsync(Write write, IReadOnlyList<SeriesRow> all)
    {
        var wanted = new List<SessionWanted>();
        foreach (var series in all)
            wanted.AddRange(
                (await DueAsync(write, series)).Select(d =>
                    Wanted(SeriesSession.Of(series.Shape, d), series.ClassId, series.Id)
                )
            );
        while (wanted.Count > 0)
        {
            var preview = await changes.PreviewAsync(write, wanted);
            if (!preview.TryGet(out var found, out var refusal))
                throw new InvalidOperationException(
                    $"A series cannot be laid out: {refusal.Message}"
                );
            var hard = found.Conflicts.Where(c => c.IsHard).ToList();
            if (hard.Count == 0)
            {
                var made = await changes.ApplyAsync(
                    write,
                    wanted,
                    new ChangeTerms(null, Anyway: true)
                );
                return made.TryGet(out var kept, out refusal)
                    ? kept.Added
                    : throw new InvalidOperationException(
                        $"A series cannot be laid out: {refusal.Message}"
                    );
            }

            // The later of two that are new gives way.
            var (nobody, left) = (new HashSet<int>(), new HashSet<int>());
            foreach (var conflict in hard)
                (AboutHer.Contains(conflict.Kind) ? nobody : left).Add(
                    (int)(-1 - conflict.Sessions.Last(k => k < 0))
                );
            wanted =
            [
                .. wanted
                    .Select((w, i) => nobody.Contains(i) ? w with { InstructorId = null } : w)
                    .Where((_, i) => !left.Contains(i)),
            ];
        }

        return 0;
    }

    /// <summary>A series with its dates ahead.</summary>
    public async Task<List<SeriesMessage>> MessagesAsync(
        Read read,
        IReadOnlyList<SeriesRow> all,
        int? most
    )
    {
        var weeks = (await PolicyStore.InForceAsync(read, book)).TimetableAheadWeeks;
        var now = clock.GetCurrentInstant();
        var sessions = (
            await SeriesStore.SessionsAsync(
                read,
                [.. all.Select(s => s.Id)],
                now.InUtc().Date.PlusDays(-1)
            )
        ).ToLookup(s => s.SeriesId);
        var shutAt = new Dictionary<long, Dictionary<LocalDate, string>>();
        foreach (var location in all.Select(s => s.LocationId).Distinct())
            shutAt[location] = await ClosureStore.ShutAsync(read, location);
        var list = new List<SeriesMessage>();
        foreach (var series in all)
        {
            var shape = series.Shape;
            var zone = DateTimeZoneProviders.Tzdb[series.Zone];
            var today = now.InZone(zone).Date;
            var reach = LaidOutTo(today, weeks);
            var there = sessions[series.Id].Where(s => s.StartsAt > now).ToList();
            var dates = new List<SeriesDateMessage>();
            foreach (var session in there)
                dates.Add(DatedAs(shape, session, zone));
            var skipped = shape.Exceptions.ToHashSet();
            var taken = sessions[series.Id].Select(s => s.SeriesOn).ToHashSet();
            foreach (var date in shape.Rule.Dates(shape.StartsOn, today, reach))
            {
                if (taken.Contains(date) || zone.On(date + shape.StartsLocal).ToInstant() <= now)
                    continue;
                dates.Add(
                    skipped.Contains(date) ? Dated(shape, date, zone, SeriesDateState.Skipped, null)
                    : shutAt[series.LocationId].TryGetValue(date, out var name)
                        ? Dated(shape, date, zone, SeriesDateState.Shut, name)
                    : Dated(shape, date, zone, SeriesDateState.Missing, null)
                );
            }

            dates = [.. dates.OrderBy(d => d.StartsAt)];
            list.Add(
                new SeriesMessage
                {
                    Id = series.Id,
                    Words = RuleWords.Of(shape.Rule, shape.StartsOn, shape.StartsLocal),
                    Rule = series.Rule,
                    ClassId = series.ClassId,
                    ClassName = series.ClassName,
                    RoomId = series.RoomId,
                    RoomName = series.RoomName,
                    LocationId = series.LocationId,
                    LocationName = series.LocationName,
                    Zone = series.Zone,
                    InstructorId = series.InstructorId,
                    InstructorName = series.InstructorName,
                    Seats = series.Seats,
                    Minutes = series.Minutes,
                    StartsOn = series.StartsOn,
                    StartsLocal = Clock.Format(series.StartsLocal),
                    ContinuesId = series.ContinuesId,
                    HasEnded =
                        !there.Exists(s => s.Status == SessionStatus.Open)
                        && !shape.Dates(today.PlusDays(1), today.PlusYears(10)).Any(),
                    LaidOutTo = reach,
                    Missing = dates.Count(d => d.State == SeriesDateState.Missing),
                    Dates = most is { } few ? [.. dates.Take(few)] : dates,
                }
            );
        }

        return list;
    }

    /// <summary>The same, with what stands against each date that is missing.</summary>
    public async Task<SeriesMessage> InFullAsync(Read read, SeriesRow series)
    {
        var message = (await MessagesAsync(read, [series], null)).Single();
        var missing = message.Dates.Where(d => d.State == SeriesDateState.Missing).ToList();
        if (missing.Count == 0)
            return message;
        var preview = await changes.PreviewAsync(
            read,
            [
                .. missing.Select(d =>
                    Wanted(SeriesSession.Of(series.Shape, d.SeriesOn), series.ClassId, series.Id)
                ),
            ]
        );
        if (!preview.TryGet(out var found, out _))
            return message;
        return message with
        {
            Dates =
            [
                .. message.Dates.Select(d =>
                    d.State != SeriesDateState.Missing
                        ? d
                        : d with
                        {
                            Conflicts =
                            [
                                .. found
                                    .Conflicts.Where(c =>
                                        c.Sessions.Contains(-1 - missing.IndexOf(d))
                                    )
                                    .Select(c => c.Words)
                                    .Distinct(StringComparer.Ordinal),
                            ],
                        }
                ),
            ],
        };
    }

    private async Task<Answer<SeriesOutcome>> ChangeOneAsync(
        Write write,
        SeriesRow series,
        SeriesShape changed,
        SeriesChangeRequest request,
        bool dryRun,
        long? by
    )
    {
        var on = request.On!.Value;
        var session = (await SeriesStore.SessionsAsync(write, [series.Id], on)).Find(s =>
            s.SeriesOn == on
        );
        var as_ = SeriesSession.Of(changed, on);
        var wanted = Wanted(as_, series.ClassId, series.Id);
        if (session is not null)
            wanted = wanted with
            {
                Id = session.Id,
                On = session.OnDate,
                IsHeld = session.Status == SessionStatus.Open || request.ByHandToo,
            };
        return await DoneAsync(
            write,
            series,
            series.Shape,
            null,
            [wanted],
            [],
            0,
            dryRun,
            new ChangeTerms(by, request.Anyway)
        );
    }

    private async Task<Answer<SeriesOutcome>> FollowAsync(
        Write write,
        SeriesRow series,
        SeriesShape to,
        LocalDate from,
        bool fromHere,
        bool byHandToo,
        bool dryRun,
        ChangeTerms terms
    )
    {
        var shape = series.Shape;
        var zone = DateTimeZoneProviders.Tzdb[series.Zone];
        var now = clock.GetCurrentInstant();
        var weeks = (await PolicyStore.InForceAsync(write, book)).TimetableAheadWeeks;
        var sessions = (await SeriesStore.SessionsAsync(write, [series.Id], from))
            .Select(s => AsSeries(shape, s, zone, now))
            .ToList();
        var how = new SeriesEditing
        {
            From = from,
            LaidOutTo = LaidOutTo(studio.Today(series.Zone), weeks),
            Now = now.InZone(zone).LocalDateTime,
            Shut = (await ClosureStore.ShutAsync(write, series.LocationId)).Keys.ToHashSet(),
            ByHandToo = byHandToo,
        };
        var edited = fromHere
            ? SeriesEdits.FromHere(shape, to, sessions, how)
            : SeriesEdits.All(shape, to, sessions, how);
        var stays = byHandToo
            ? 0
            : sessions.Count(s => !s.HasBegun && s.SeriesOn >= from && IsByHand(shape, s));
        return await DoneAsync(
            write,
            series,
            edited.Series,
            edited.Ended,
            [.. edited.Sessions.Select(s => Wanted(s, series.ClassId, series.Id))],
            [
                .. edited
                    .Sessions.Where(s => s.Id is not null)
                    .Select(s => (s.Id!.Value, s.SeriesOn)),
            ],
            stays,
            dryRun,
            terms
        );
    }

    private async Task<Answer<SeriesOutcome>> DoneAsync(
        Write write,
        SeriesRow series,
        SeriesShape shape,
        SeriesShape? ended,
        IReadOnlyList<SessionWanted> wanted,
        IReadOnlyList<(long Session, LocalDate On)> dates,
        int stays,
        bool dryRun,
        ChangeTerms terms
    )
    {
        if (!(await changes.PreviewAsync(write, wanted)).TryGet(out var preview, out var refusal))
            return refusal;
        long? id = ended is null ? series.Id : null;
        if (!dryRun)
        {
            if (ended is not null)
            {
                await SeriesStore.PutAsync(write, series.Id, ended);
                id = await SeriesStore.AddAsync(
                    write,
                    series.ClassId,
                    shape,
                    series.Id,
                    clock.GetCurrentInstant(),
                    terms.By
                );
                if (id is null)
                    return SeriesRefusals.StandsAlready;
            }
            else
            {
                await SeriesStore.PutAsync(write, series.Id, shape);
            }

            if (dates.Count > 0)
                await SeriesStore.LinkAsync(write, id!.Value, dates);
            var made = await changes.ApplyAsync(
                write,
                [.. wanted.Select(w => w with { SeriesId = id })],
                terms
            );
            if (!made.TryGet(out _, out refusal))
                return refusal;
            write.Tell("session");
        }

        return new SeriesOutcome
        {
            Kept = !dryRun,
            SeriesId = id,
            Words = RuleWords.Of(shape.Rule, shape.StartsOn, shape.StartsLocal),
            EndedWords = ended is null
                ? null
                : RuleWords.Of(ended.Rule, ended.StartsOn, ended.StartsLocal),
            Changes = preview,
            StayByHand = stays,
        };
    }

    // Dates within reach that have no session yet and could have one.
    private async Task<List<LocalDate>> DueAsync(Read read, SeriesRow series)
    {
        var shape = series.Shape;
        var zone = DateTimeZoneProviders.Tzdb[series.Zone];
        var now = clock.GetCurrentInstant();
        var today = now.InZone(zone).Date;
        var weeks = (await PolicyStore.InForceAsync(read, book)).TimetableAheadWeeks;
        var shut = await ClosureStore.ShutAsync(read, series.LocationId);
        var there = (
            await read.ListAsync<LocalDate>(
                "select series_on from sessions where series_id = @Id and series_on >= @today",
                new { series.Id, today }
            )
        ).ToHashSet();
        return
        [
            .. shape
                .Dates(today, LaidOutTo(today, weeks))
                .Where(d =>
                    !there.Contains(d)
                    && !shut.ContainsKey(d)
                    && zone.On(d + shape.StartsLocal).ToInstant() > now
                ),
        ];
    }

    private async Task<Answer<Asked>> AskedAsync(Read read, SeriesRequest request)
    {
        string? roomZone = null;
        if (request.RoomId is { } room && (roomZone = await ZoneOfRoomAsync(read, room)) is null)
            return TimetableRefusals.NoSuchRoom;
        if ((request.Zone ?? roomZone) is not { } zone)
            return SeriesRefusals.NoZone;
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is not { } tzdb)
            return SeriesRefusals.NoSuchZone(zone);
        if (roomZone is not null && roomZone != zone)
            return SeriesRefusals.AnotherZone(roomZone);
        var at = TimeOf(request.StartsLocal);
        if (!SeriesRule.Read(request.Rule, at, tzdb).TryGet(out var rule, out var refusal))
            return refusal;
        if (rule.First(request.Start) is not { } first)
            return SeriesRefusals.NoDates;

        Place? place = null;
        var (minutes, seats) = (request.Minutes ?? 60, request.Seats ?? 1);
        if (request is { RoomId: { } where, ClassId: { } of })
        {
            place = await read.FindAsync<Place>(
                """
                select c.id as ClassId, c.minutes, r.seats, r.location_id as LocationId
                  from classes c, rooms r where c.id = @of and r.id = @where
                """,
                new { of, where }
            );
            if (place is null)
                return TimetableRefusals.NoSuchClass;
            minutes = request.Minutes ?? place.Minutes;
            seats = request.Seats ?? place.Seats;
        }

        if (minutes is < 5 or > 240)
            return TimetableRefusals.BadLength;
        if (seats is < 1 or > 200)
            return TimetableRefusals.BadSeats;
        if (
            request.InstructorId is { } who
            && await read.FindAsync<long?>(
                "select id from instructors where id = @who",
                new { who }
            )
                is null
        )
            return TimetableRefusals.NoSuchInstructor;
        return new Asked(
            new SeriesShape
            {
                RoomId = request.RoomId ?? 0,
                InstructorId = request.InstructorId,
                Minutes = minutes,
                Seats = seats,
                StartsOn = first,
                StartsLocal = at,
                Rule = rule,
                Exceptions = [.. (request.Exceptions ?? []).Distinct().Order()],
            },
            zone,
            place
        );
    }

    private static Task<string?> ZoneOfRoomAsync(Read read, long room) =>
        read.FindAsync<string>(
            "select l.zone from rooms r join locations l on l.id = r.location_id where r.id = @room",
            new { room }
        );

    private static SessionWanted Wanted(SeriesSession session, long classId, long? series) =>
        new()
        {
            Id = session.Id,
            ClassId = classId,
            RoomId = session.RoomId,
            InstructorId = session.InstructorId,
            On = session.On,
            StartsLocal = session.StartsLocal,
            Minutes = session.Minutes,
            Seats = session.Seats,
            IsHeld = session.IsHeld,
            SeriesId = series,
            SeriesOn = session.SeriesOn,
        };

    // On a day on which the clocks skip the hour of a series, its session begins later without anybody's hand in it.
    private static SeriesSession AsSeries(
        SeriesShape shape,
        SessionRow row,
        DateTimeZone zone,
        Instant now
    )
    {
        var says = zone.On(row.SeriesOn!.Value + shape.StartsLocal);
        var asItSays = says.Date == row.OnDate && says.TimeOfDay == row.StartsLocal;
        return new SeriesSession
        {
            Id = row.Id,
            SeriesOn = row.SeriesOn.Value,
            On = asItSays ? row.SeriesOn.Value : row.OnDate,
            StartsLocal = asItSays ? shape.StartsLocal : row.StartsLocal,
            Minutes = (int)(row.EndsAt - row.StartsAt).TotalMinutes,
            RoomId = row.RoomId,
            InstructorId = row.InstructorId,
            Seats = row.Seats,
            IsHeld = row.Status == SessionStatus.Open,
            HasBegun = row.StartsAt <= now,
        };
    }

    private static bool IsByHand(SeriesShape shape, SeriesSession session) =>
        session with { Id = null, HasBegun = false } != SeriesSession.Of(shape, session.SeriesOn);

    private static SeriesDateMessage DatedAs(
        SeriesShape shape,
        SessionRow row,
        DateTimeZone zone
    ) =>
        new()
        {
            SeriesOn = row.SeriesOn!.Value,
            On = row.OnDate,
            StartsLocal = Clock.Format(row.StartsLocal),
            StartsAt = row.StartsAt,
            SessionId = row.Id,
            SeatsTaken = row.SeatsTaken - row.Unspoken,
            State =
                row.Status == SessionStatus.Open ? SeriesDateState.Held
                : shape.Exceptions.Contains(row.SeriesOn.Value) ? SeriesDateState.Skipped
                : SeriesDateState.CalledOff,
            ByHand =
                row.Status == SessionStatus.Open
                && IsByHand(shape, AsSeries(shape, row, zone, Instant.MinValue)),
            Says = Clocks(shape, row.SeriesOn.Value, zone),
        };

    private static SeriesDateMessage Dated(
        SeriesShape shape,
        LocalDate date,
        DateTimeZone zone,
        SeriesDateState state,
        string? says
    )
    {
        var starts = zone.On(date + shape.StartsLocal);
        return new SeriesDateMessage
        {
            SeriesOn = date,
            On = starts.Date,
            StartsLocal = Clock.Format(starts.TimeOfDay),
            StartsAt = starts.ToInstant(),
            State = state,
            Says = says ?? Clocks(shape, date, zone),
        };
    }

    private static string? Clocks(SeriesShape shape, LocalDate date, DateTimeZone zone)
    {
        var wall = date + shape.StartsLocal;
        var map = zone.MapLocal(wall);
        return map.Count switch
        {
            0 => $"The clocks skip {Clock.Format(shape.StartsLocal)} on this day.",
            1 => null,
            _ =>
                $"The clocks show {Clock.Format(shape.StartsLocal)} twice on this day; the first is meant.",
        };
    }

    private sealed record Asked(SeriesShape Shape, string Zone, Place? Place);

    private sealed record Place
    {
        public long ClassId { get; init; }
        public int Minutes { get; init; }
        public int Seats { get; init; }
        public long LocationId { get; init; }
    }
}

/// <summary>A series that was made.</summary>
/// <param name="Id">Its key.</param>
/// <param name="Sessions">How many sessions were laid out.</param>
public sealed record Added(long Id, int Sessions);
