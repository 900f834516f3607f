using NodaTime;
using Studio.Api.Data;
using Studio.Api.Messages;
using Studio.Api.Rosters;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Cover;
using Studio.Core.Messages;
using Studio.Core.Timetable;

namespace Studio.Api.Cover;

/// <summary>Who is to take which session.</summary>
public sealed record CoverWanted(long SessionId, long InstructorId);

/// <summary>What settling brought about: sessions that have somebody else, and people who are told.</summary>
public sealed record CoversSettled(int Settled, int Told);

/// <summary>
/// Asks for cover, takes it back, settles it. Whatever changes who teaches goes through <see cref="SessionChanges"/>; the
/// caller commits.
/// </summary>
public sealed class Covers(
    RuleBook book,
    IClock clock,
    SessionChanges changes,
    FlagSweep flags,
    Outbox outbox
)
{
    /// <summary>Asks for cover of these sessions, and asks everybody who could take one; how many people are asked.</summary>
    public async Task<Answer<int>> AskAsync(Write write, IReadOnlyList<long> sessions, long by)
    {
        var now = clock.GetCurrentInstant();
        await CoverStore.TidyAsync(write, now);
        foreach (var id in sessions)
        {
            if (await SessionStore.FindAsync(write, id) is not { } session)
                return CoverRefusals.NoSuchSession;
            if (WhyNot(session, now) is { } refusal)
                return refusal;
            if ((await CoverStore.OpenAsync(write, now)).Exists(o => o.SessionId == id))
                return CoverRefusals.AskedAlready;
            await CoverStore.AskAsync(write, session, now, by);
        }

        // Ranked when all of them are asked: who asks for her own is not asked for another of that day.
        var board = await CoverBoard.OfAsync(write, book, now, sessions);
        var lines = board
            .Sessions.SelectMany(s =>
                board
                    .Ranked(s.Id)
                    .Where(c => c.CanBeProposed)
                    .Select(c => (Her: c.InstructorId, Session: s))
            )
            .ToLookup(l => l.Her, l => l.Session);
        foreach (var hers in lines)
        foreach (var session in hers)
            await outbox.PutAsync(
                write,
                new OutboxMessage
                {
                    Kind = MessageKind.CoverAsked,
                    About = $"cover {board.Request(session.Id)!.Id} asked {hers.Key}",
                    InstructorId = hers.Key,
                    SessionId = session.Id,
                    Facts = Line(SessionWords.Named(Name(session))),
                }
            );
        await FollowAsync(write, sessions);
        return lines.Count;
    }

    /// <summary>Takes the request back; those who were asked are told.</summary>
    public async Task<Refusal?> WithdrawAsync(Write write, SessionRow session, long by)
    {
        var now = clock.GetCurrentInstant();
        await CoverStore.TidyAsync(write, now);
        if (
            (await CoverStore.OpenAsync(write, now)).Find(o => o.SessionId == session.Id)
            is not { } request
        )
            return CoverRefusals.NotOpen;
        await CoverStore.WithdrawAsync(write, request.Id, now, by);
        foreach (var her in await CoverStore.AskedAsync(write, request.Id))
            await TellAsync(
                write,
                request,
                her,
                $"{SessionWords.Named(Name(session))}: nobody is needed any more."
            );
        await FollowAsync(write, [session.Id]);
        return null;
    }

    /// <summary>Keeps what a colleague says who is asked, as often as she changes her mind.</summary>
    public async Task<Refusal?> AnswerAsync(
        Write write,
        long sessionId,
        long instructorId,
        CoverAnswer answer
    )
    {
        if (!(await AskedAsync(write, sessionId, instructorId)).TryGet(out var asked, out var no))
            return no;
        await CoverStore.AnswerAsync(
            write,
            asked.Request.Id,
            instructorId,
            answer,
            clock.GetCurrentInstant()
        );
        write.Tell("session", sessionId);
        return null;
    }

    /// <summary>A colleague takes it herself, where the studio leaves that to instructors. The first one has it.</summary>
    public async Task<Refusal?> TakeAsync(
        Write write,
        long sessionId,
        Reader reader,
        long instructorId,
        bool anyway
    )
    {
        var session = await SessionStore.FindAsync(write, sessionId);
        if (
            session?.InstructorId == instructorId
            && await TookAsync(write, sessionId, instructorId)
        )
            return null;
        if (!(await AskedAsync(write, sessionId, instructorId)).TryGet(out var asked, out var no))
            return no;
        if ((await PolicyStore.InForceAsync(write, book)).CoverSettles != CoverSettles.Instructors)
            return CoverRefusals.OwnerSettles;
        // Her own hours she gives herself; hours agreed with the owner and rest are not hers to give away.
        if (
            asked.Her.Against.FirstOrDefault(c =>
                !c.IsHard && c.Kind != ConflictKind.OutsideHours
            ) is
            { } forOwner
        )
            return CoverRefusals.ForTheOwner(forOwner.Words);
        await CoverStore.AnswerAsync(
            write,
            asked.Request.Id,
            instructorId,
            CoverAnswer.Can,
            clock.GetCurrentInstant()
        );
        return (
            await SettleAsync(
                write,
                [new CoverWanted(sessionId, instructorId)],
                reader.AccountId,
                anyway
            )
        ).Refusal;
    }

    /// <summary>Settles a list, all or nothing.</summary>
    public async Task<Answer<CoversSettled>> SettleAsync(
        Write write,
        IReadOnlyList<CoverWanted> wanted,
        long by,
        bool anyway
    )
    {
        var now = clock.GetCurrentInstant();
        if (wanted.Select(w => w.SessionId).Distinct().Count() != wanted.Count)
            return CoverRefusals.Twice;
        await CoverStore.TidyAsync(write, now);
        var board = await CoverBoard.OfAsync(
            write,
            book,
            now,
            [.. wanted.Select(w => w.SessionId)]
        );
        var rows = board.Sessions.ToDictionary(s => s.Id);
        foreach (var (sessionId, instructorId) in wanted)
        {
            if (!rows.TryGetValue(sessionId, out var session))
                return CoverRefusals.NoSuchSession;
            if (WhyNot(session, now) is { } refusal)
                return refusal;
            var request = board.Request(sessionId);
            if (request is null && session.InstructorId is not null)
                return await TookAsync(write, sessionId, session.InstructorId.Value)
                    ? CoverRefusals.Settled(session.InstructorName!)
                    : CoverRefusals.HasSomebody(session.InstructorName!);
            if (request is not null && request.InsteadOf == instructorId)
                return CoverRefusals.HerOwn;
            if (!board.Staff.Facts.Teachers.ContainsKey(instructorId))
                return CoverRefusals.NoSuchInstructor;
            var her = board.Ranked(sessionId).Single(c => c.InstructorId == instructorId);
            if (her.Standing == CoverStanding.Declines && !anyway)
                return CoverRefusals.Declines(
                    her.Name,
                    her.Reasons.First(r => r.Kind == CoverReasonKind.Answer).Words
                );
        }

        var made = await changes.ApplyAsync(
            write,
            [
                .. wanted.Select(w =>
                    SessionWanted.As(rows[w.SessionId]) with
                    {
                        InstructorId = w.InstructorId,
                    }
                ),
            ],
            new ChangeTerms(by, anyway)
        );
        if (!made.TryGet(out var done, out var no))
            return no;

        var told = done.Told;
        foreach (var (sessionId, instructorId) in wanted)
        {
            if (board.Request(sessionId) is not { } request)
                continue;
            await CoverStore.SettleAsync(write, request.Id, instructorId, now, by);
            var words =
                $"{SessionWords.Named(Name(rows[sessionId]))}: {board.Staff.Facts.Teachers[instructorId].Name} teaches it.";
            foreach (
                var her in (await CoverStore.AskedAsync(write, request.Id))
                    .Append(request.InsteadOf ?? 0)
                    .Where(i => i != 0 && i != instructorId)
                    .Distinct()
            )
                if (await TellAsync(write, request, her, words))
                    told++;
        }
        await FollowAsync(write, [.. wanted.Select(w => w.SessionId)]);
        return new CoversSettled(done.Changed, told);
    }

    /// <summary>At every bell: closes what began or has somebody, and raises what has come near. Run again it changes nothing.</summary>
    public async Task<int> SweepAsync(Write write)
    {
        var touched =
            await CoverStore.TidyAsync(write, clock.GetCurrentInstant())
            + await flags.SessionsAsync(write);
        if (touched > 0)
            write.Tell("session");
        return touched;
    }

    private async Task<Answer<(CoverRow Request, CoverCandidate Her)>> AskedAsync(
        Write write,
        long sessionId,
        long instructorId
    )
    {
        var now = clock.GetCurrentInstant();
        await CoverStore.TidyAsync(write, now);
        var board = await CoverBoard.OfAsync(write, book, now, [sessionId]);
        if (board.Sessions.Count == 0)
            return CoverRefusals.NotAsked;
        var session = board.Sessions[0];
        if (board.Request(sessionId) is not { } request)
            return
                session.InstructorId is { } by
                && by != instructorId
                && await TookAsync(write, sessionId, by)
                ? CoverRefusals.Settled(session.InstructorName!)
                : CoverRefusals.NotAsked;
        var her = board.Ranked(sessionId).FirstOrDefault(c => c.InstructorId == instructorId);
        if (her is null)
            return CoverRefusals.NotAsked;
        return her.Against.FirstOrDefault(c => c.IsHard) is { } hard
            ? TimetableRefusals.Conflict([hard])
            : (request, her);
    }

    private static async Task<bool> TookAsync(Read read, long sessionId, long instructorId) =>
        await read.ValueAsync<long>(
            """
            select exists (select 1 from cover_requests
                            where session_id = @sessionId and status = 'covered' and covered_by = @instructorId)
            """,
            new { sessionId, instructorId }
        ) == 1;

    private static Refusal? WhyNot(SessionRow session, Instant now) =>
        session.Status != SessionStatus.Open ? CoverRefusals.NotHeld
        : session.StartsAt <= now ? CoverRefusals.HasBegun
        : null;

    private Task<bool> TellAsync(Write write, CoverRow request, long her, string words) =>
        outbox.PutAsync(
            write,
            new OutboxMessage
            {
                Kind = MessageKind.CoverSettled,
                About = $"cover {request.Id} settled {her}",
                InstructorId = her,
                SessionId = request.SessionId,
                Facts = Line(words),
            }
        );

    private async Task FollowAsync(Write write, IReadOnlyCollection<long> sessions)
    {
        await flags.SessionsAsync(write);
        foreach (var id in sessions)
            write.Tell("session", id);
    }

    private static Dictionary<string, string> Line(string words) =>
        new(StringComparer.Ordinal) { ["lines"] = words };

    private static NamedSession Name(SessionRow row) =>
        new(
            row.ClassName,
            row.OnDate,
            row.StartsLocal,
            (int)(row.EndsAt - row.StartsAt).TotalMinutes,
            row.RoomName,
            row.LocationName,
            row.InstructorName
        );
}
