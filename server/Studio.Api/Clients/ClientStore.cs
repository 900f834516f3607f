using NodaTime;
using Studio.Api.Data;
using Studio.Core.Accounts;

namespace Studio.Api.Clients;

/// <summary>A client's contact details.</summary>
public sealed record ClientRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Full name.</summary>
    public string Name { get; init; } = "";

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>Phone.</summary>
    public string Phone { get; init; } = "";

    /// <summary>E-mail address.</summary>
    public string Email { get; init; } = "";

    /// <summary>Whom to call.</summary>
    public string EmergencyName { get; init; } = "";

    /// <summary>At what number.</summary>
    public string EmergencyPhone { get; init; } = "";

    /// <summary>The location she usually comes to.</summary>
    public long HomeLocationId { get; init; }

    /// <summary>Its zone: her midnight.</summary>
    public string Zone { get; init; } = "";

    /// <summary>Instructors may see her conditions by name.</summary>
    public bool SharesConditions { get; init; }

    /// <summary>Her current pregnancy.</summary>
    public long? PregnancyId { get; init; }

    /// <summary>She can sign in.</summary>
    public bool HasAccount { get; init; }

    /// <summary>Her pregnancy ended; she is there for the owner and herself only.</summary>
    public bool Ended { get; init; }
}

/// <summary>A client as one reader may look at her.</summary>
/// <param name="Row">Who she is.</param>
/// <param name="Audience">For whom the words are.</param>
public sealed record ClientSeen(ClientRow Row, Audience Audience);

/// <summary>A client in the find box.</summary>
public sealed record ClientFound
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Full name.</summary>
    public string Name { get; init; } = "";

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>Phone.</summary>
    public string Phone { get; init; } = "";

    /// <summary>E-mail address.</summary>
    public string Email { get; init; } = "";

    /// <summary>The location she usually comes to.</summary>
    public string Location { get; init; } = "";
}

/// <summary>Clients' contact details.</summary>
public static class ClientStore
{
    private const string Select = """
        select c.id, c.name, c.called, c.phone, c.email, c.emergency_name as EmergencyName,
               c.emergency_phone as EmergencyPhone, c.home_location_id as HomeLocationId, l.zone,
               c.shares_conditions as SharesConditions, c.account_id is not null as HasAccount, p.id as PregnancyId, p.ended_on is not null as Ended
          from clients c
          join locations l on l.id = c.home_location_id
          left join pregnancies p on p.client_id = c.id and p.is_current = 1
        """;

    /// <summary>A client, whoever asks; after an erasure there is no such client.</summary>
    public static Task<ClientRow?> FindAsync(Read read, long id) =>
        read.FindAsync<ClientRow>($"{Select} where c.id = @id and c.erased_at is null", new { id });

    /// <summary>A client as this reader may see her; null when for the reader there is no such client.</summary>
    public static async Task<ClientSeen?> FindAsync(Read read, Reader reader, long id) =>
        await FindAsync(read, id) is { } row && reader.On(id, row.Ended) is { } audience
            ? new ClientSeen(row, audience)
            : null;

    /// <summary>As whom this reader may look at her; null when not at all.</summary>
    public static async Task<Audience?> AudienceAsync(Read read, Reader reader, long id) =>
        (await FindAsync(read, reader, id))?.Audience;

    /// <summary>Up to 20 clients whose name, phone or e-mail holds every word typed; after a loss only for the owner.</summary>
    public static Task<List<ClientFound>> SearchAsync(
        Read read,
        IReadOnlyList<string> words,
        bool withEnded
    )
    {
        var parameters = new Dictionary<string, object>(StringComparer.Ordinal)
        {
            ["withEnded"] = withEnded,
        };
        var holds = words.Select(
            (word, i) =>
            {
                parameters[$"w{i}"] = SearchText.Like(word);
                return $"and c.search like @w{i} escape '\\'";
            }
        );
        return read.ListAsync<ClientFound>(
            $"""
            select c.id, c.name, c.called, c.phone, c.email, l.name as location
              from clients c
              join locations l on l.id = c.home_location_id
              left join pregnancies p on p.client_id = c.id and p.is_current = 1
             where c.erased_at is null and (@withEnded or p.ended_on is null)
             {string.Join(" ", holds)}
             order by c.name, c.id
             limit 20
            """,
            parameters
        );
    }

    /// <summary>Adds a client.</summary>
    public static Task<long> AddAsync(Write write, ClientRow client, Instant at) =>
        write.InsertAsync(
            """
            insert into clients (name, called, phone, email, emergency_name, emergency_phone, home_location_id,
                                 shares_conditions, joined_at, search)
            values (@Name, @Called, @Phone, @Email, @EmergencyName, @EmergencyPhone, @HomeLocationId,
                    @SharesConditions, @at, @search)
            """,
            Parameters(client, at)
        );

    /// <summary>Changes her contact details and what she shares.</summary>
    public static Task ChangeAsync(Write write, ClientRow client, Instant at) =>
        write.ExecuteAsync(
            """
            update clients
               set name = @Name, called = @Called, phone = @Phone, email = @Email, emergency_name = @EmergencyName,
                   emergency_phone = @EmergencyPhone, shares_conditions = @SharesConditions, search = @search
             where id = @Id
            """,
            Parameters(client, at)
        );

    /// <summary>Whether somebody else has this e-mail address.</summary>
    public static async Task<bool> EmailTakenAsync(Read read, string email, long exceptId) =>
        email.Length > 0
        && await read.FindAsync<long?>(
            "select id from clients where lower(email) = lower(@email) and email <> '' and id <> @exceptId",
            new { email, exceptId }
        )
            is not null;

    private static object Parameters(ClientRow client, Instant at) =>
        new
        {
            client.Id,
            client.Name,
            client.Called,
            client.Phone,
            client.Email,
            client.EmergencyName,
            client.EmergencyPhone,
            client.HomeLocationId,
            client.SharesConditions,
            at,
            search = SearchText.Of(client.Name, client.Called, client.Email, client.Phone),
        };
}
