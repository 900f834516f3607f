using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Cover;
using Studio.Core.Timetable;

namespace Studio.Api.Cover;

/// <summary>Who takes a session that somebody cannot teach.</summary>
public static class CoverEndpoints
{
    // Further ahead a session without anybody is a matter of planning, not of cover.
    private static readonly Duration Ahead = Duration.FromDays(28);

    private static readonly Refusal NotHers = new(
        RefusalKind.NotAllowed,
        "not-yours",
        "You can ask for cover of your own sessions only.",
        "instructorId"
    );

    private static readonly Refusal WhoIsAway = new(
        RefusalKind.Invalid,
        "who-is-away",
        "Please say who cannot teach on these days.",
        "instructorId"
    );

    private static readonly Refusal Incomplete = new(
        RefusalKind.Invalid,
        "cover-incomplete",
        "Please name a session and an instructor in every line.",
        "covers"
    );

    /// <summary>Maps the routes.</summary>
    public static void MapCover(this IEndpointRouteBuilder app)
    {
        var session = app.MapGroup("/api/sessions/{sessionId}/cover")
            .WithTags("Cover")
            .ProducesProblem(404);
        session.MapGet("/", OneAsync).WithName("Cover").RequireAuthorization(Policies.Staff);
        var mine = session
            .MapGroup("/")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(409);
        mine.MapPost("/", AskAsync).WithName("AskForCover");
        mine.MapDelete("/", WithdrawAsync).WithName("WithdrawCover");
        mine.MapPut("/answer", AnswerAsync).WithName("AnswerCover").ProducesProblem(400);
        mine.MapPost("/take", TakeAsync)
            .WithName("TakeCover")
            .ProducesProblem(400)
            .ProducesProblem(403);

        var all = app.MapGroup("/api/cover").WithTags("Cover");
        all.MapGet("/", ListAsync).WithName("OpenCover").RequireAuthorization(Policies.Desk);
        all.MapGet("/mine", MineAsync).WithName("MyCover").RequireAuthorization(Policies.Staff);
        all.MapPost("/away", AwayAsync)
            .WithName("AskForDays")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(400)
            .ProducesProblem(403)
            .ProducesProblem(409);
        var owner = all.MapGroup("/").RequireAuthorization(Policies.Owner).ProducesProblem(400);
        owner.MapPost("/plan", PlanAsync).WithName("PlanCover");
        owner
            .MapPost("/settle", SettleAsync)
            .WithName("SettleCover")
            .ProducesProblem(404)
            .ProducesProblem(409);
    }

    private static async Task<Results<Ok<CoverMessage>, ProblemHttpResult>> OneAsync(
        long sessionId,
        Reader reader,
        Database database,
        SessionSummaries summaries,
        RuleBook book,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        var board = await CoverBoard.OfAsync(read, book, clock.GetCurrentInstant(), [sessionId]);
        return
            board.Sessions.SingleOrDefault() is { } session
            && reader.OnRoster(session.InstructorId) is not null
            ? TypedResults.Ok(
                (await TellAsync(read, board, [session.Id], reader, summaries, clock))[0]
            )
            : CoverRefusals.NoSuchSession.ToProblem();
    }

    private static async Task<CoverListMessage> ListAsync(
        Reader reader,
        Database database,
        SessionSummaries summaries,
        RuleBook book,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        var ids = await UncoveredAsync(read, clock.GetCurrentInstant());
        var board = await CoverBoard.OfAsync(read, book, clock.GetCurrentInstant(), ids);
        return new CoverListMessage(
            (await PolicyStore.InForceAsync(read, book)).CoverSettles,
            await TellAsync(read, board, ids, reader, summaries, clock)
        );
    }

    private static async Task<MyCoverMessage> MineAsync(
        Reader reader,
        Database database,
        SessionSummaries summaries,
        RuleBook book,
        IClock clock
    )
    {
        await using var read = await database.ReadAsync();
        var settles = (await PolicyStore.InForceAsync(read, book)).CoverSettles;
        if (reader.InstructorId is not { } me)
            return new MyCoverMessage(settles, [], []);
        var now = clock.GetCurrentInstant();
        var open = await CoverStore.OpenAsync(read, now);
        var board = await CoverBoard.OfAsync(read, book, now, [.. open.Select(o => o.SessionId)]);
        var summary = (await summaries.OfAsync(read, board.Sessions)).ToDictionary(s => s.Id);
        return new MyCoverMessage(
            settles,
            await TellAsync(
                read,
                board,
                [.. open.Where(o => o.InsteadOf == me).Select(o => o.SessionId)],
                reader,
                summaries,
                clock
            ),
            [
                .. open.Where(o => o.InsteadOf != me)
                    .Select(o =>
                        (
                            Request: o,
                            Her: board.Ranked(o.SessionId).FirstOrDefault(c => c.InstructorId == me)
                        )
                    )
                    .Where(a => a.Her is not null && a.Her.Standing != CoverStanding.NotFree)
                    .Select(a => new CoverAskedMessage
                    {
                        Session = summary[a.Request.SessionId],
                        InsteadOf = a.Request.InsteadOfName,
                        Answer = a.Her!.Answer,
                        MayTake =
                            settles == CoverSettles.Instructors
                            && a.Her.Against.All(c => c.Kind == ConflictKind.OutsideHours),
                        Against =
                        [
                            .. a
                                .Her.Reasons.Where(r => r.Kind == CoverReasonKind.Soft)
                                .Select(r => r.ToHer),
                        ],
                        Reasons =
                        [
                            .. a
                                .Her.Reasons.Where(r =>
                                    r.Kind is not (CoverReasonKind.Soft or CoverReasonKind.Answer)
                                )
                                .Select(r => r.ToHer),
                        ],
                    }),
            ]
        );
    }

    private static async Task<Results<Created<CoverRequested>, ProblemHttpResult>> AskAsync(
        long sessionId,
        Reader reader,
        Database database,
        Covers covers
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (!await IsHersAsync(write, sessionId, reader))
            return CoverRefusals.NoSuchSession.ToProblem();
        var asked = await covers.AskAsync(write, [sessionId], reader.AccountId);
        if (!asked.TryGet(out var people, out var refusal))
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.Created(
            $"/api/sessions/{sessionId}/cover",
            new CoverRequested([sessionId], people)
        );
    }

    private static async Task<Results<Ok<CoverRequested>, ProblemHttpResult>> AwayAsync(
        AwayRequest request,
        Reader reader,
        Database database,
        Covers covers,
        StudioStore studio,
        IClock clock
    )
    {
        if (!reader.IsOwner && request.InstructorId is { } other && other != reader.InstructorId)
            return NotHers.ToProblem();
        if ((request.InstructorId ?? reader.InstructorId) is not { } who)
            return WhoIsAway.ToProblem();
        var today = (await studio.AboutAsync()).Today;
        if (CoverRules.WhyNotAway(request.From, request.To, today) is { } wrong)
            return wrong.ToProblem();

        var now = clock.GetCurrentInstant();
        await using var write = await database.BeginWriteAsync();
        if (
            await write.ValueAsync<long>(
                "select count(*) from instructors where id = @who",
                new { who }
            ) == 0
        )
            return CoverRefusals.NoSuchInstructor.ToProblem();
        await CoverStore.TidyAsync(write, now);
        var sessions = await CoverStore.OfHersAsync(write, who, request.From, request.To, now);
        if (sessions.Count == 0)
            return CoverRefusals.NothingToCover.ToProblem();
        await CoverStore.AwayAsync(write, who, request.From, request.To, now, reader.AccountId);
        var asked = await covers.AskAsync(write, sessions, reader.AccountId);
        if (!asked.TryGet(out var people, out var refusal))
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.Ok(new CoverRequested(sessions, people));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> WithdrawAsync(
        long sessionId,
        Reader reader,
        Database database,
        Covers covers
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (
            !await IsHersAsync(write, sessionId, reader)
            || await SessionStore.FindAsync(write, sessionId) is not { } session
        )
            return CoverRefusals.NoSuchSession.ToProblem();
        if (await covers.WithdrawAsync(write, session, reader.AccountId) is { } refusal)
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> AnswerAsync(
        long sessionId,
        CoverAnswerRequest request,
        Reader reader,
        Database database,
        Covers covers
    )
    {
        if (reader.InstructorId is not { } me)
            return CoverRefusals.NotAsked.ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (await covers.AnswerAsync(write, sessionId, me, request.Answer) is { } refusal)
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> TakeAsync(
        long sessionId,
        TakeRequest request,
        Reader reader,
        Database database,
        Covers covers
    )
    {
        if (reader.InstructorId is not { } me)
            return CoverRefusals.NotAsked.ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (await covers.TakeAsync(write, sessionId, reader, me, request.Anyway) is { } refusal)
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<CoverPlanMessage> PlanAsync(
        CoverPlanRequest request,
        Reader reader,
        Database database,
        SessionSummaries summaries,
        RuleBook book,
        IClock clock
    )
    {
        var now = clock.GetCurrentInstant();
        await using var read = await database.ReadAsync();
        var uncovered = await UncoveredAsync(read, now);
        var board = await CoverBoard.OfAsync(
            read,
            book,
            now,
            request.SessionIds is { Count: > 0 } some
                ? [.. uncovered.Where(some.Contains)]
                : uncovered
        );
        var plan = CoverAssignment.Solve(board.Questions.Values, board.Staff);
        var phones = await CoverStore.PhonesAsync(read);
        var summary = (await summaries.OfAsync(read, board.Sessions)).ToDictionary(s => s.Id);
        return new CoverPlanMessage(
            [
                .. plan.Steps.Select(s => new CoverStepMessage
                {
                    Session = summary[s.Question.Session.Key],
                    By = s.By is { } by ? Candidate(by, reader, phones) : null,
                    WhyNobody = [.. s.WhyNobody.Select(c => Candidate(c, reader, phones))],
                }),
            ],
            plan.IsBest
        );
    }

    private static async Task<Results<Ok<CoversSettled>, ProblemHttpResult>> SettleAsync(
        SettleRequest request,
        Reader reader,
        Database database,
        Covers covers
    )
    {
        if (request.Covers.Any(c => c is null))
            return Incomplete.ToProblem();
        await using var write = await database.BeginWriteAsync();
        var settled = await covers.SettleAsync(
            write,
            [.. request.Covers.Select(c => new CoverWanted(c.SessionId, c.InstructorId))],
            reader.AccountId,
            request.Anyway
        );
        if (!settled.TryGet(out var done, out var refusal))
            return refusal.ToProblem();
        await write.CommitAsync();
        return TypedResults.Ok(done);
    }

    // The owner asks for anybody, and for what nobody is to teach; an instructor for her own.
    private static async Task<bool> IsHersAsync(Read read, long sessionId, Reader reader) =>
        await SessionStore.FindAsync(read, sessionId) is { } session
        && (reader.IsOwner || (session.InstructorId is { } her && her == reader.InstructorId));

    private static async Task<List<long>> UncoveredAsync(Read read, Instant now) =>
        [
            .. (await CoverStore.OpenAsync(read, now))
                .Select(o => o.SessionId)
                .Union(await CoverStore.WithNobodyAsync(read, now, now + Ahead)),
        ];

    private static async Task<List<CoverMessage>> TellAsync(
        Read read,
        CoverBoard board,
        IReadOnlyCollection<long> ids,
        Reader reader,
        SessionSummaries summaries,
        IClock clock
    )
    {
        var now = clock.GetCurrentInstant();
        var phones = await CoverStore.PhonesAsync(read);
        var wanted = ids.ToHashSet();
        var rows = board.Sessions.Where(s => wanted.Contains(s.Id)).ToList();
        return
        [
            .. (await summaries.OfAsync(read, rows)).Select(s =>
            {
                var request = board.Request(s.Id);
                var state =
                    s.InstructorId is null ? CoverState.Nobody
                    : request is not null ? CoverState.Asked
                    : CoverState.Taught;
                var loud =
                    s.Status == SessionStatus.Open
                    && state != CoverState.Taught
                    && CoverRules.IsLoud(s.StartsAt, now);
                var rings = reader.IsOwner || (reader.WorksAtDesk && loud);
                return new CoverMessage
                {
                    Session = s,
                    State = state,
                    IsLoud = loud,
                    IsAsked = request is not null,
                    InsteadOf = request?.InsteadOfName,
                    AskedAt = request?.AskedAt,
                    Candidates =
                    [
                        .. board
                            .Ranked(s.Id)
                            .Select(c => Candidate(c, reader, rings ? phones : null)),
                    ],
                };
            }),
        ];
    }

    private static CandidateMessage Candidate(
        CoverCandidate her,
        Reader reader,
        IReadOnlyDictionary<long, string>? phones
    ) =>
        new()
        {
            InstructorId = her.InstructorId,
            Name = her.Name,
            Phone = phones?.GetValueOrDefault(her.InstructorId),
            Standing = her.Standing,
            Answer = her.Answer,
            Against = reader.IsOwner
                ?
                [
                    .. her
                        .Reasons.Where(r => r.Kind is CoverReasonKind.Hard or CoverReasonKind.Soft)
                        .Select(r => r.Words),
                ]
                : [],
            Reasons =
            [
                .. her
                    .Reasons.Where(r =>
                        r.Kind is not (CoverReasonKind.Hard or CoverReasonKind.Soft)
                        && (reader.IsOwner || r.IsForOthers)
                    )
                    .Select(r => r.Words),
            ],
        };
}
