using NodaTime;
using Studio.Api.Data;
using Studio.Core.Clearance;

namespace Studio.Api.Clearance;

/// <summary>How far a letter has come.</summary>
public enum LetterState
{
    /// <summary>Nobody has read it yet: it does not count.</summary>
    Waiting,

    /// <summary>A reviewer has read it, and it counts for as long as its dates say.</summary>
    Counts,

    /// <summary>A reviewer has read it, and it cannot count.</summary>
    Refused,
}

/// <summary>A letter as it stands in the table, opened.</summary>
public sealed record LetterRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Whose.</summary>
    public long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";

    /// <summary>How far it has come.</summary>
    public LetterState State { get; init; }

    /// <summary>Who wrote it; null until it was read.</summary>
    public string? IssuedBy { get; init; }

    /// <summary>The day it was written.</summary>
    public LocalDate? IssuedOn { get; init; }

    /// <summary>Its own last day.</summary>
    public LocalDate? ExpiresOn { get; init; }

    /// <summary>What it asks for, sealed.</summary>
    public string? Restrictions { get; init; }

    /// <summary>What it asks for.</summary>
    public LetterTerms Terms { get; init; } = new();

    /// <summary>It takes the place of what earlier letters asked for.</summary>
    public bool ReplacesEarlier { get; init; }

    /// <summary>Why it cannot count.</summary>
    public string? RefusedBecause { get; init; }

    /// <summary>It lies on paper at the studio.</summary>
    public bool OnPaper { get; init; }

    /// <summary>Its file's name in the folder of letters.</summary>
    public string? FileName { get; init; }

    /// <summary>What the file is.</summary>
    public string? MediaType { get; init; }

    /// <summary>When it came.</summary>
    public Instant EnteredAt { get; init; }

    /// <summary>When it was read.</summary>
    public Instant? ReviewedAt { get; init; }

    /// <summary>Who read it.</summary>
    public string? ReviewedBy { get; init; }

    /// <summary>When it was taken back.</summary>
    public Instant? WithdrawnAt { get; init; }
}

/// <summary>What a reviewer read off a letter.</summary>
/// <param name="IssuedBy">Who wrote it.</param>
/// <param name="IssuedOn">The day it was written.</param>
/// <param name="ExpiresOn">Its own last day.</param>
/// <param name="Terms">What it asks for.</param>
/// <param name="ReplacesEarlier">It takes the place of what earlier letters asked for.</param>
public sealed record LetterRead(
    string IssuedBy,
    LocalDate IssuedOn,
    LocalDate ExpiresOn,
    LetterTerms Terms,
    bool ReplacesEarlier
);

/// <summary>Clearance letters.</summary>
public static class LetterStore
{
    private const string Select = """
        select l.id, l.client_id as ClientId, c.name, l.state, l.issued_by as IssuedBy, l.issued_on as IssuedOn,
               l.expires_on as ExpiresOn, l.restrictions, l.replaces_earlier as ReplacesEarlier,
               l.refused_because as RefusedBecause, l.on_paper as OnPaper, l.file_name as FileName,
               l.media_type as MediaType, l.entered_at as EnteredAt, l.reviewed_at as ReviewedAt,
               r.name as ReviewedBy, l.withdrawn_at as WithdrawnAt
          from letters l
          join clients c on c.id = l.client_id
          left join accounts r on r.id = l.reviewed_by
        """;

    /// <summary>Her letters, newest first.</summary>
    public static async Task<List<LetterRow>> OfAsync(Read read, long clientId) =>
        Opened(
            read,
            await read.ListAsync<LetterRow>(
                $"{Select} where l.client_id = @clientId order by l.id desc",
                new { clientId }
            )
        );

    /// <summary>One of her letters.</summary>
    public static async Task<LetterRow?> FindAsync(Read read, long clientId, long letterId) =>
        Opened(
                read,
                await read.ListAsync<LetterRow>(
                    $"{Select} where l.client_id = @clientId and l.id = @letterId",
                    new { clientId, letterId }
                )
            )
            .SingleOrDefault();

    /// <summary>Letters nobody has read yet, oldest first; not those of somebody after a loss.</summary>
    public static async Task<List<LetterRow>> WaitingAsync(Read read) =>
        Opened(
            read,
            await read.ListAsync<LetterRow>(
                $"""
                {Select}
                  left join pregnancies p on p.client_id = c.id and p.is_current = 1
                 where l.state = 'waiting' and l.withdrawn_at is null and p.ended_on is null
                 order by l.id
                """
            )
        );

    /// <summary>How many there are in <see cref="WaitingAsync"/>.</summary>
    public static Task<long> CountWaitingAsync(Read read) =>
        read.ValueAsync<long>(
            """
            select count(*) from letters l
              left join pregnancies p on p.client_id = l.client_id and p.is_current = 1
             where l.state = 'waiting' and l.withdrawn_at is null and p.ended_on is null
            """
        );

    /// <summary>The hundred letters read last, so that a mistake can be taken back; not those of somebody after a loss.</summary>
    public static async Task<List<LetterRow>> ReadAsync(Read read) =>
        Opened(
            read,
            await read.ListAsync<LetterRow>(
                $"""
                {Select}
                  left join pregnancies p on p.client_id = c.id and p.is_current = 1
                 where l.state <> 'waiting' and l.reviewed_by is not null and p.ended_on is null
                 order by l.reviewed_at desc, l.id desc
                 limit 100
                """
            )
        );

    /// <summary>Files a letter that nobody has read yet.</summary>
    public static Task<long> FileAsync(
        Write write,
        long clientId,
        string? fileName,
        LetterFileKind? kind,
        int? bytes,
        Instant at,
        long by
    ) =>
        write.InsertAsync(
            """
            insert into letters (client_id, state, on_paper, file_name, media_type, file_bytes, entered_at, entered_by)
            values (@clientId, 'waiting', @onPaper, @fileName, @mediaType, @bytes, @at, @by)
            """,
            new
            {
                clientId,
                onPaper = fileName is null,
                fileName,
                mediaType = kind is { } one ? MediaTypeOf(one) : null,
                bytes,
                at,
                by,
            }
        );

    /// <summary>Files a paper letter together with what was read off it. One written since a hold began lifts the hold.</summary>
    public static async Task<long> AddAsync(
        Write write,
        long clientId,
        LetterRead letter,
        LocalDate today,
        Instant at,
        long? by
    )
    {
        await LiftHoldAsync(write, clientId, letter.IssuedOn, today);
        return await write.InsertAsync(
            """
            insert into letters (client_id, state, on_paper, issued_by, issued_on, expires_on, restrictions,
                                 replaces_earlier, entered_at, entered_by, reviewed_at, reviewed_by)
            values (@clientId, 'counts', 1, @issuedBy, @IssuedOn, @ExpiresOn, @restrictions, @ReplacesEarlier, @at, @by,
                    @at, @by)
            """,
            Parameters(write, clientId, letter, at, by)
        );
    }

    /// <summary>Records what was read off a waiting letter: from now on it counts. One written since a hold began lifts the hold.</summary>
    public static async Task CountAsync(
        Write write,
        LetterRow waiting,
        LetterRead letter,
        LocalDate today,
        Instant at,
        long by
    )
    {
        await LiftHoldAsync(write, waiting.ClientId, letter.IssuedOn, today);
        await write.ExecuteAsync(
            """
            update letters
               set state = 'counts', issued_by = @issuedBy, issued_on = @IssuedOn, expires_on = @ExpiresOn,
                   restrictions = @restrictions, replaces_earlier = @ReplacesEarlier, reviewed_at = @at, reviewed_by = @by
             where id = @id and state = 'waiting'
            """,
            Parameters(write, waiting.Id, letter, at, by)
        );
    }

    /// <summary>Records that a waiting letter cannot count.</summary>
    public static Task RefuseAsync(Write write, long id, string because, Instant at, long by) =>
        write.ExecuteAsync(
            """
            update letters
               set state = 'refused', refused_because = @because, reviewed_at = @at, reviewed_by = @by
             where id = @id and state = 'waiting'
            """,
            new
            {
                id,
                because = write.Seal.Close(because),
                at,
                by,
            }
        );

    /// <summary>Takes a letter back: it never counts again.</summary>
    public static Task WithdrawAsync(Write write, long id, Instant at, long by) =>
        write.ExecuteAsync(
            "update letters set withdrawn_at = @at, withdrawn_by = @by where id = @id and withdrawn_at is null",
            new
            {
                id,
                at,
                by,
            }
        );

    /// <summary>The media type of a kind of file.</summary>
    public static string MediaTypeOf(LetterFileKind kind) =>
        kind switch
        {
            LetterFileKind.Pdf => "application/pdf",
            LetterFileKind.Jpeg => "image/jpeg",
            LetterFileKind.Png => "image/png",
        };

    private static Task<int> LiftHoldAsync(
        Write write,
        long clientId,
        LocalDate issuedOn,
        LocalDate today
    ) =>
        write.ExecuteAsync(
            """
            update holds set lifted_on = @today
             where client_id = @clientId and lifted_on is null and from_on <= @issuedOn and from_on <= @today
            """,
            new
            {
                clientId,
                issuedOn,
                today,
            }
        );

    private static object Parameters(
        Write write,
        long id,
        LetterRead letter,
        Instant at,
        long? by
    ) =>
        new
        {
            id,
            clientId = id,
            issuedBy = write.Seal.Close(letter.IssuedBy),
            letter.IssuedOn,
            letter.ExpiresOn,
            restrictions = LetterTermsText.Close(write.Seal, letter.Terms),
            letter.ReplacesEarlier,
            at,
            by,
        };

    private static List<LetterRow> Opened(Read read, List<LetterRow> rows) =>
        [
            .. rows.Select(l =>
                l with
                {
                    IssuedBy = l.IssuedBy is { } by ? read.Seal.Open(by) : null,
                    RefusedBecause = l.RefusedBecause is { } why ? read.Seal.Open(why) : null,
                    Terms = LetterTermsText.Open(read.Seal, l.Restrictions),
                    Restrictions = null,
                }
            ),
        ];
}
