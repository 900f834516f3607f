using NodaTime;
using Studio.Api.Clients;
using Studio.Api.Data;

namespace Studio.Api.Clearance;

/// <summary>Somebody who has handed in a letter: no more of her than it takes to find it.</summary>
public sealed record LetterPerson
{
    /// <summary>Key of the client.</summary>
    public long Id { get; init; }

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";

    /// <summary>What she likes to be called.</summary>
    public string Called { get; init; } = "";

    /// <summary>When her last letter came.</summary>
    public Instant LastFiledAt { get; init; }
}

/// <summary>Finds people by name among those who have handed in a letter.</summary>
public static class LetterPeople
{
    private const int Most = 20;

    /// <summary>
    /// Up to 20 whose name holds every word; nobody for no words. Phone and e-mail are neither looked through nor given,
    /// and after a loss she is found by the owner only.
    /// </summary>
    public static async Task<List<LetterPerson>> FindAsync(
        Read read,
        IReadOnlyList<string> words,
        bool withEnded
    )
    {
        if (words.Count == 0)
            return [];
        var people = await read.ListAsync<LetterPerson>(
            """
            select c.id, c.name, c.called, max(l.entered_at) as LastFiledAt
              from letters l
              join clients c on c.id = l.client_id
              left join pregnancies p on p.client_id = c.id and p.is_current = 1
             where @withEnded or p.ended_on is null
             group by c.id
             order by c.name, c.id
            """,
            new { withEnded }
        );
        return [.. people.Where(p => SearchText.NameHolds(words, p.Name, p.Called)).Take(Most)];
    }
}
