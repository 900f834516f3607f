using NodaTime;
using Studio.Api.Data;
using Studio.Core;
using Studio.Core.Catalogue;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable.Drafts;

/// <summary>Changes drafts, checks them, and makes one the timetable.</summary>
public sealed class DraftChanges(RuleBook book, SessionChanges changes, IClock clock)
{
    private const int DaysAround = 8;

    /// <summary>Makes a draft of some weeks.</summary>
    public async Task<Answer<long>> MakeAsync(Write write, DraftRequest request, long? by)
    {
        if (request.To < request.From)
            return DraftRefusals.LastBeforeFirst;
        if (Period.DaysBetween(request.From, request.To) >= DraftRules.MostDays)
            return DraftRefusals.TooLong;
        return await DraftStore.MakeAsync(
            write,
            request.Name.Trim(),
            request.From,
            request.To,
            DraftOrigin.Hand,
            by,
            clock.GetCurrentInstant()
        );
    }

    /// <summary>A draft with its sessions and conflicts; null when there is none.</summary>
    public async Task<DraftMessage?> ShowAsync(Read read, long id)
    {
        if (await DraftStore.FindAsync(read, id) is not { } draft)
            return null;
        var rows = await DraftStore.RowsAsync(read, id);
        var live = await DraftStore.LiveAsync(read, id);
        var taken = (await SessionStore.OfAsync(read, [.. live.Keys])).ToDictionary(
            s => s.Id,
            s => s.SeatsTaken
        );
        return new DraftMessage(
            DraftSummary.Of(draft),
            [
                .. rows.Select(r =>
                    Message(
                        r,
                        r.SessionId is { } session ? live.GetValueOrDefault(session) : null,
                        taken.GetValueOrDefault(r.SessionId ?? 0),
                        draft.Status == DraftStatus.Open
                    )
                ),
            ],
            draft.Status == DraftStatus.Open
                ? await ConflictsAsync(
                    read,
                    draft.FromOn.PlusDays(-DaysAround),
                    draft.ToOn.PlusDays(DaysAround),
                    rows,
                    [.. live.Keys],
                    taken
                )
                : []
        );
    }

    /// <summary>What would stand against one session where it is being held, beside all others of the draft.</summary>
    public async Task<Answer<List<ConflictMessage>>> CheckAsync(
        Read read,
        long id,
        DraftSessionRequest request
    )
    {
        if (await DraftStore.FindAsync(read, id) is not { } draft)
            return DraftRefusals.NoSuchDraft;
        var rows = await DraftStore.RowsAsync(read, id);
        var old = rows.Find(r => r.Id == request.Id);
        if (request.Id is not null && old is null)
            return DraftRefusals.NoSuchRow;
        if (await WhyNotAsync(read, draft, [request]) is { } refusal)
            return refusal;
        // A row that is not there yet takes a number no row has.
        var row = Row(request, old ?? new DraftSession { Id = long.MaxValue / 2 });
        if (draft.Status != DraftStatus.Open)
            return DraftRefusals.Ended;
        // Asked at every step of a move: only the days that can matter to it are looked at.
        var (from, to) = (row.On.PlusDays(-DaysAround), row.On.PlusDays(DaysAround));
        var around = rows.Where(r => r.Id != row.Id && from <= r.On && r.On <= to)
            .Append(row)
            .ToList();
        var taken = row.SessionId is { } session
            ? (await SessionStore.OfAsync(read, [session])).ToDictionary(
                s => s.Id,
                s => s.SeatsTaken
            )
            : [];
        var copied = rows.Select(r => r.SessionId).OfType<long>().ToHashSet();
        return (await ConflictsAsync(read, from, to, around, copied, taken))
            .Where(c => c.Keys.Contains(row.Key))
            .ToList();
    }

    /// <summary>Changes rows, all or none; the caller commits.</summary>
    public async Task<Refusal?> ChangeAsync(Write write, long id, DraftChangeRequest request)
    {
        if (await OpenAsync(write, id, request.Version) is { } stale)
            return stale;
        var draft = (await DraftStore.FindAsync(write, id))!;
        if (await WhyNotAsync(write, draft, request.Put) is { } refusal)
            return refusal;
        var rows = (await DraftStore.RowsAsync(write, id)).ToDictionary(r => r.Id);
        foreach (var put in request.Put)
        {
            var old = put.Id is { } row ? rows.GetValueOrDefault(row) : new DraftSession();
            if (old is null)
                return DraftRefusals.NoSuchRow;
            if (old.SessionId is not null && old.ClassId != put.ClassId)
                return TimetableRefusals.ClassStays;
            await DraftStore.PutAsync(write, id, Row(put, old));
        }

        foreach (var gone in request.Remove)
        {
            if (!rows.TryGetValue(gone, out var old))
                return DraftRefusals.NoSuchRow;
            if (old.SessionId is null)
                await DraftStore.RemoveAsync(write, id, gone);
            else
                await DraftStore.PutAsync(write, id, old with { IsHeld = false });
        }

        return null;
    }

    /// <summary>Lays a week onto another; the caller commits.</summary>
    public async Task<Refusal?> CopyWeekAsync(Write write, long id, CopyWeekRequest request)
    {
        if (await OpenAsync(write, id, request.Version) is { } stale)
            return stale;
        var draft = (await DraftStore.FindAsync(write, id))!;
        var (from, to) = (TimetableChecks.WeekOf(request.From), TimetableChecks.WeekOf(request.To));
        if (from == to)
            return DraftRefusals.SameWeek;
        var rows = DraftRules
            .CopyWeek(await DraftStore.RowsAsync(write, id), from, to)
            .Where(r => draft.FromOn <= r.On && r.On <= draft.ToOn)
            .ToList();
        if (rows.Count == 0)
            return DraftRefusals.NothingToCopy;
        foreach (var row in rows)
            await DraftStore.PutAsync(write, id, row);
        return null;
    }

    /// <summary>Decides about a session that somebody changed since it was copied; the caller commits.</summary>
    public async Task<Refusal?> DecideAsync(Write write, long id, MeanwhileRequest request)
    {
        if (await OpenAsync(write, id, request.Version) is { } stale)
            return stale;
        var row = (await DraftStore.RowsAsync(write, id)).Find(r => r.Id == request.Row);
        if (row?.SessionId is not { } session)
            return DraftRefusals.NoSuchRow;
        var live = (await DraftStore.LiveAsync(write, id))[session];
        await DraftStore.PutAsync(
            write,
            id,
            request.Keep == Keep.Theirs
                ? live with
                {
                    Id = row.Id,
                }
                : row with
                {
                    BasedOn = live.BasedOn,
                }
        );
        return null;
    }

    /// <summary>What publishing would bring about for the people in it.</summary>
    public async Task<Answer<ChangesPreview>> ConsequencesAsync(Read read, long id)
    {
        if (await DraftStore.FindAsync(read, id) is not { } draft)
            return DraftRefusals.NoSuchDraft;
        // Once it has ended there is nothing left for it to change.
        if (draft.Status != DraftStatus.Open)
            return new ChangesPreview([], 0, 0, 0, []);
        if (!(await WantedAsync(read, id)).TryGet(out var wanted, out var refusal))
            return refusal;
        return await changes.PreviewAsync(read, wanted);
    }

    /// <summary>Makes a draft the timetable, once; the caller commits.</summary>
    public async Task<Answer<ChangesMade>> PublishAsync(
        Write write,
        long id,
        PublishRequest request,
        long? by
    )
    {
        if (await DraftStore.FindAsync(write, id) is not { } draft)
            return DraftRefusals.NoSuchDraft;
        // Whoever asks again is told that there is nothing left to do.
        if (draft.Status == DraftStatus.Published)
            return new ChangesMade([], 0, 0, 0, 0, 0);
        if (await OpenAsync(write, id, request.Version) is { } stale)
            return stale;
        if (!(await WantedAsync(write, id)).TryGet(out var wanted, out var outdated))
            return outdated;
        var made = await changes.ApplyAsync(write, wanted, new ChangeTerms(by, request.Anyway));
        if (made.Refusal is null)
            await DraftStore.EndAsync(
                write,
                id,
                DraftStatus.Published,
                by,
                clock.GetCurrentInstant()
            );
        return made;
    }

    private static async Task<Refusal?> OpenAsync(Write write, long id, int version)
    {
        if (await DraftStore.StepAsync(write, id, version))
            return null;
        return await DraftStore.FindAsync(write, id) switch
        {
            null => DraftRefusals.NoSuchDraft,
            { Status: not DraftStatus.Open } => DraftRefusals.Ended,
            _ => DraftRefusals.Stale,
        };
    }

    // Rows that stand as their sessions do ask for nothing, so what happened to those meanwhile stays as it is.
    private static async Task<Answer<List<SessionWanted>>> WantedAsync(Read read, long id)
    {
        var live = await DraftStore.LiveAsync(read, id);
        var wanted = new List<SessionWanted>();
        foreach (var row in await DraftStore.RowsAsync(read, id))
        {
            var session = row.SessionId is { } of ? live[of] : null;
            if (session is not null && DraftRules.ChangedMeanwhile(row, session))
                return DraftRefusals.Outdated;
            if (session is null ? row.IsHeld : !row.StandsAs(session))
                wanted.Add(Wanted(row));
        }

        return wanted;
    }

    private static SessionWanted Wanted(DraftSession row) =>
        new()
        {
            Id = row.SessionId,
            ClassId = row.ClassId,
            RoomId = row.RoomId,
            InstructorId = row.InstructorId,
            On = row.On,
            StartsLocal = row.StartsLocal,
            Minutes = row.Minutes,
            Seats = row.Seats,
            IsHeld = row.IsHeld,
            SeriesId = row.SeriesId,
            SeriesOn = row.SeriesOn,
        };

    private async Task<IReadOnlyList<ConflictMessage>> ConflictsAsync(
        Read read,
        LocalDate from,
        LocalDate to,
        IReadOnlyList<DraftSession> rows,
        HashSet<long> copied,
        Dictionary<long, int> taken
    )
    {
        var places = await Places.LoadAsync(read);
        var facts = await TimetableStore.FactsAsync(read, book);
        var before = await TimetableStore.PlacedAsync(read, from, to);
        var placed = rows.Where(r => r.IsHeld)
            .Select(r => places.Place(Wanted(r), r.Key, taken.GetValueOrDefault(r.SessionId ?? 0)))
            .ToList();
        List<PlacedSession> after = [.. before.Where(s => !copied.Contains(s.Key)), .. placed];
        var keys = placed.Select(s => s.Key).ToHashSet();
        var brought = ChangedConflicts
            .Of(before, after, keys, facts)
            .Select(c => c.Words)
            .ToHashSet(StringComparer.Ordinal);
        return
        [
            .. TimetableChecks
                .Of(after, facts)
                .Where(c => c.Sessions.Any(keys.Contains))
                .Select(c => ConflictMessage.Of(c, brought.Contains(c.Words))),
        ];
    }

    private static async Task<Refusal?> WhyNotAsync(
        Read read,
        DraftRow draft,
        IReadOnlyList<DraftSessionRequest> rows
    )
    {
        var places = await Places.LoadAsync(read);
        var instructors = (await read.ListAsync<long>("select id from instructors")).ToHashSet();
        foreach (var row in rows)
        {
            if (places.RoomOf(row.RoomId) is null)
                return TimetableRefusals.NoSuchRoom;
            if (places.ClassOf(row.ClassId) is null)
                return TimetableRefusals.NoSuchClass;
            if (row.InstructorId is { } who && !instructors.Contains(who))
                return TimetableRefusals.NoSuchInstructor;
            if (row.On < draft.FromOn || draft.ToOn < row.On)
                return DraftRefusals.OutsideDraft(draft);
        }

        return null;
    }

    private static DraftSession Row(DraftSessionRequest request, DraftSession old) =>
        old with
        {
            ClassId = request.ClassId,
            RoomId = request.RoomId,
            InstructorId = request.InstructorId,
            On = request.On,
            StartsLocal = ClockText.Parse(request.StartsLocal),
            Minutes = request.Minutes,
            Seats = request.Seats,
            IsHeld = request.IsHeld,
        };

    private static DraftSessionMessage Message(
        DraftSession row,
        DraftSession? live,
        int taken,
        bool isOpen
    ) =>
        new()
        {
            Id = row.Id,
            Key = row.Key,
            SessionId = row.SessionId,
            ClassId = row.ClassId,
            RoomId = row.RoomId,
            InstructorId = row.InstructorId,
            On = row.On,
            StartsLocal = ClockText.Of(row.StartsLocal),
            Minutes = row.Minutes,
            Seats = row.Seats,
            SeatsTaken = taken,
            IsHeld = row.IsHeld,
            IsChanged = isOpen && (live is null || !row.StandsAs(live)),
            Was = isOpen && live is not null && !row.StandsAs(live) ? Standing(live) : null,
            Meanwhile =
                isOpen && live is not null && DraftRules.ChangedMeanwhile(row, live)
                    ? Standing(live)
                    : null,
        };

    private static MeanwhileMessage Standing(DraftSession live) =>
        new(
            live.RoomId,
            live.InstructorId,
            live.On,
            ClockText.Of(live.StartsLocal),
            live.Minutes,
            live.Seats,
            live.IsHeld
        );
}
