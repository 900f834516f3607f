using NodaTime;
using Studio.Api.Data;

namespace Studio.Api.Rosters;

/// <summary>A standing note with its newest words.</summary>
public sealed record NoteRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Session.</summary>
    public long SessionId { get; init; }

    /// <summary>The person it is about.</summary>
    public long ClientId { get; init; }

    /// <summary>The account that wrote it.</summary>
    public long WrittenBy { get; init; }

    /// <summary>What that person is called.</summary>
    public string By { get; init; } = "";

    /// <summary>Newest version, from 1.</summary>
    public int Version { get; init; }

    /// <summary>Its words.</summary>
    public string Text { get; init; } = "";

    /// <summary>When the first version was written.</summary>
    public Instant WrittenAt { get; init; }

    /// <summary>When the newest was.</summary>
    public Instant ChangedAt { get; init; }

    /// <summary>The session's own date.</summary>
    public LocalDate OnDate { get; init; }

    /// <summary>The session's start.</summary>
    public Instant StartsAt { get; init; }

    /// <summary>The session's class.</summary>
    public string ClassName { get; init; } = "";

    /// <summary>As one reader sees it.</summary>
    public ClassNote For(long accountId) =>
        new()
        {
            Id = Id,
            SessionId = SessionId,
            ClientId = ClientId,
            Text = Text,
            Version = Version,
            On = OnDate,
            ClassName = ClassName,
            By = By,
            WrittenAt = WrittenAt,
            ChangedAt = Version == 1 ? null : ChangedAt,
            IsMine = WrittenBy == accountId,
        };
}

/// <summary>Which notes; every part that is set must hold.</summary>
public sealed record NotesWanted
{
    /// <summary>This one.</summary>
    public long? Id { get; init; }

    /// <summary>About this session.</summary>
    public long? SessionId { get; init; }

    /// <summary>About these people; about anybody when null.</summary>
    public IReadOnlyCollection<long>? ClientIds { get; init; }

    /// <summary>About sessions that began before this.</summary>
    public Instant? Before { get; init; }

    /// <summary>Those of a pregnancy that ended as well; for the owner and the client herself only.</summary>
    public bool WithEnded { get; init; }
}

/// <summary>Notes about people in a class.</summary>
public static class NoteStore
{
    /// <summary>Standing notes, the newest class first.</summary>
    public static async Task<List<NoteRow>> ListAsync(Read read, NotesWanted wanted) =>
        [.. (await RowsAsync(read, wanted)).Select(n => n with { Text = read.Seal.Open(n.Text) })];

    private static Task<List<NoteRow>> RowsAsync(Read read, NotesWanted wanted) =>
        read.ListAsync<NoteRow>(
            """
            select n.id, n.session_id as SessionId, n.client_id as ClientId, n.written_by as WrittenBy,
                   coalesce(i.called, a.name) as By, v.version, v.text, f.written_at as WrittenAt,
                   v.written_at as ChangedAt, s.on_date as OnDate, s.starts_at as StartsAt, c.name as ClassName
              from class_notes n
              join class_note_versions v on v.note_id = n.id and v.version = (
                       select max(w.version) from class_note_versions w where w.note_id = n.id)
              join class_note_versions f on f.note_id = n.id and f.version = 1
              join sessions s on s.id = n.session_id
              join classes c on c.id = s.class_id
              join accounts a on a.id = n.written_by
              left join instructors i on i.account_id = a.id
             where n.withdrawn_at is null
               and (@Id is null or n.id = @Id)
               and (@SessionId is null or n.session_id = @SessionId)
               and (@anybody or n.client_id in @clients)
               and (@Before is null or s.starts_at < @Before)
               and (@WithEnded or not exists (
                       select 1 from pregnancies p
                        where p.client_id = n.client_id and p.ended_on is not null
                          and (p.is_current = 1 or p.id = n.pregnancy_id or s.on_date <= p.ended_on)))
             order by s.starts_at desc, n.id desc
            """,
            new
            {
                wanted.Id,
                wanted.SessionId,
                anybody = wanted.ClientIds is null,
                clients = wanted.ClientIds ?? [],
                wanted.Before,
                wanted.WithEnded,
            }
        );

    /// <summary>Writes a note; the caller has checked that it may be.</summary>
    public static async Task<long> AddAsync(
        Write write,
        long sessionId,
        long clientId,
        string text,
        long by,
        Instant at
    )
    {
        var id = await write.InsertAsync(
            """
            insert into class_notes (session_id, client_id, pregnancy_id, written_by)
            values (@sessionId, @clientId,
                    (select p.id from pregnancies p where p.client_id = @clientId and p.is_current = 1), @by)
            """,
            new
            {
                sessionId,
                clientId,
                by,
            }
        );
        await AddVersionAsync(write, id, 1, text, at);
        return id;
    }

    /// <summary>Adds a version to a note.</summary>
    public static Task AddVersionAsync(
        Write write,
        long id,
        int version,
        string text,
        Instant at
    ) =>
        write.ExecuteAsync(
            """
            insert into class_note_versions (note_id, version, text, written_at)
            values (@id, @version, @text, @at)
            """,
            new
            {
                id,
                version,
                text = write.Seal.Close(text),
                at,
            }
        );

    /// <summary>Takes a note back; nobody reads it any more.</summary>
    public static Task WithdrawAsync(Write write, long id, long by, Instant at) =>
        write.ExecuteAsync(
            "update class_notes set withdrawn_at = @at, withdrawn_by = @by where id = @id and withdrawn_at is null",
            new
            {
                id,
                by,
                at,
            }
        );
}
