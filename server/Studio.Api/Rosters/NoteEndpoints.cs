using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Rosters;

namespace Studio.Api.Rosters;

/// <summary>
/// Notes after class. Their readers are the session's instructor, whoever has her on a roster later (on that roster), the
/// owner and the client herself; never the front desk.
/// </summary>
public static class NoteEndpoints
{
    /// <summary>Maps the routes.</summary>
    public static void MapNotes(this IEndpointRouteBuilder app)
    {
        var session = app.MapGroup("/api/sessions/{sessionId}/notes")
            .WithTags("Notes")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(404);
        session.MapGet("/", OfSessionAsync).WithName("NotesOfSession");
        session
            .MapPost("/", WriteAsync)
            .WithName("WriteNote")
            .ProducesProblem(400)
            .ProducesProblem(409);

        var note = app.MapGroup("/api/notes/{noteId}")
            .WithTags("Notes")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(404);
        note.MapPut("/", ChangeAsync)
            .WithName("ChangeNote")
            .ProducesProblem(400)
            .ProducesProblem(403)
            .ProducesProblem(409);
        note.MapDelete("/", WithdrawAsync).WithName("WithdrawNote");

        app.MapGet("/api/clients/{clientId}/notes", OfClientAsync)
            .WithName("NotesOfClient")
            .WithTags("Notes")
            .RequireAuthorization(Policies.SignedIn)
            .ProducesProblem(404);
    }

    private static async Task<Results<Ok<SessionNotes>, ProblemHttpResult>> OfSessionAsync(
        long sessionId,
        Reader reader,
        Database database,
        IClock clock,
        StudioStore studio
    )
    {
        await using var read = await database.ReadAsync();
        if (await TaughtAsync(read, reader, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession.ToProblem();
        var notes = await NoteStore.ListAsync(
            read,
            new NotesWanted { SessionId = sessionId, WithEnded = reader.IsOwner }
        );
        return TypedResults.Ok(
            new SessionNotes
            {
                OpensAt = session.StartsAt,
                LastDay = ClassNoteRules.LastDay(session.OnDate),
                WhyNot = WhyNot(session, clock, studio) is { } refusal
                    ? new RefusalMessage(refusal.Code, refusal.Message)
                    : null,
                Notes = [.. notes.Select(n => n.For(reader.AccountId))],
            }
        );
    }

    // Sent again with the same words, it answers with the same note: an answer may have been lost on its way.
    private static async Task<Results<Created<ClassNote>, ProblemHttpResult>> WriteAsync(
        long sessionId,
        NoteRequest request,
        Reader reader,
        Database database,
        IClock clock,
        StudioStore studio
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await TaughtAsync(write, reader, sessionId) is not { } session)
            return BookingRefusals.NoSuchSession.ToProblem();
        if (
            !(await BookingStore.InAsync(write, [sessionId])).Exists(b =>
                b.ClientId == request.ClientId && b.Status == BookingStatus.Booked
            )
            // After a loss she is on no roster below the owner's.
            || (
                await ClientStore.FindAsync(write, request.ClientId) is { Ended: true }
                && !reader.IsOwner
            )
        )
            return ClassNoteRules.NotOnRoster.ToProblem();
        if (WhyNot(session, clock, studio) is { } refusal)
            return refusal.ToProblem();

        var text = request.Text.Trim();
        var mine = (
            await NoteStore.ListAsync(
                write,
                new NotesWanted
                {
                    SessionId = sessionId,
                    ClientIds = [request.ClientId],
                    WithEnded = true,
                }
            )
        ).Find(n => n.WrittenBy == reader.AccountId);
        if (mine is not null && mine.Text != text)
            return ClassNoteRules.Exists.ToProblem();
        var id =
            mine?.Id
            ?? await NoteStore.AddAsync(
                write,
                sessionId,
                request.ClientId,
                text,
                reader.AccountId,
                clock.GetCurrentInstant()
            );
        var note = await DoneAsync(write, id, reader);
        return TypedResults.Created($"/api/notes/{id}", note);
    }

    private static async Task<Results<Ok<ClassNote>, ProblemHttpResult>> ChangeAsync(
        long noteId,
        NoteChange request,
        Reader reader,
        Database database,
        IClock clock,
        StudioStore studio
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await FindAsync(write, reader, noteId) is not var (note, session))
            return ClassNoteRules.NoSuchNote.ToProblem();
        if (note.WrittenBy != reader.AccountId)
            return ClassNoteRules.NotTheWriter.ToProblem();
        if (WhyNot(session, clock, studio) is { } refusal)
            return refusal.ToProblem();
        var text = request.Text.Trim();
        if (text == note.Text)
            return TypedResults.Ok(note.For(reader.AccountId));
        if (request.Version != note.Version)
            return ClassNoteRules.Changed.ToProblem();
        await NoteStore.AddVersionAsync(
            write,
            noteId,
            note.Version + 1,
            text,
            clock.GetCurrentInstant()
        );
        return TypedResults.Ok(await DoneAsync(write, noteId, reader));
    }

    private static async Task<Results<NoContent, ProblemHttpResult>> WithdrawAsync(
        long noteId,
        Reader reader,
        Database database,
        IClock clock
    )
    {
        await using var write = await database.BeginWriteAsync();
        if (await FindAsync(write, reader, noteId) is not var (note, _))
            return ClassNoteRules.NoSuchNote.ToProblem();
        await NoteStore.WithdrawAsync(write, noteId, reader.AccountId, clock.GetCurrentInstant());
        Tell(write, note);
        await write.CommitAsync();
        return TypedResults.NoContent();
    }

    private static async Task<Results<Ok<List<ClassNote>>, ProblemHttpResult>> OfClientAsync(
        long clientId,
        Reader reader,
        Database database
    )
    {
        await using var read = await database.ReadAsync();
        if (
            await ClientStore.AudienceAsync(read, reader, clientId)
            is not (Audience.Owner or Audience.Herself)
        )
            return BookingRefusals.NoSuchClient.ToProblem();
        var notes = await NoteStore.ListAsync(
            read,
            new NotesWanted { ClientIds = [clientId], WithEnded = true }
        );
        return TypedResults.Ok(notes.ConvertAll(n => n.For(reader.AccountId)));
    }

    // The session, when this reader teaches it or is the owner.
    private static async Task<SessionRow?> TaughtAsync(Read read, Reader reader, long sessionId) =>
        await SessionStore.FindAsync(read, sessionId) is { } session
        && reader.OnRoster(session.InstructorId) is Audience.Instructor or Audience.Owner
            ? session
            : null;

    // A note that is this reader's to act on: her own about a session of hers, or any for the owner.
    private static async Task<(NoteRow Note, SessionRow Session)?> FindAsync(
        Read read,
        Reader reader,
        long noteId
    )
    {
        var wanted = new NotesWanted { Id = noteId, WithEnded = reader.IsOwner };
        if (
            (await NoteStore.ListAsync(read, wanted)).SingleOrDefault() is not { } note
            || await TaughtAsync(read, reader, note.SessionId) is not { } session
        )
            return null;
        return reader.IsOwner || note.WrittenBy == reader.AccountId ? (note, session) : null;
    }

    private static Refusal? WhyNot(SessionRow session, IClock clock, StudioStore studio) =>
        ClassNoteRules.WhyNot(
            session.Status == SessionStatus.Open,
            session.StartsAt,
            session.OnDate,
            clock.GetCurrentInstant(),
            studio.Today(session.Zone)
        );

    private static async Task<ClassNote> DoneAsync(Write write, long noteId, Reader reader)
    {
        var wanted = new NotesWanted { Id = noteId, WithEnded = true };
        var note = (await NoteStore.ListAsync(write, wanted)).Single();
        Tell(write, note);
        await write.CommitAsync();
        return note.For(reader.AccountId);
    }

    private static void Tell(Write write, NoteRow note)
    {
        write.Tell("session", note.SessionId);
        write.Tell("client", note.ClientId);
    }
}
