using NodaTime;
using NodaTime.Text;
using Studio.Api.Data;

namespace Studio.Api.Clients;

/// <summary>Clients' own dates of birth: sealed, for themselves and the owner only.</summary>
public static class BirthDates
{
    /// <summary>Those that were given, of these clients or of everybody when <paramref name="clientIds"/> is null.</summary>
    public static async Task<IReadOnlyDictionary<long, LocalDate>> OfAsync(
        Read read,
        IReadOnlyCollection<long>? clientIds
    ) =>
        (
            await read.ListAsync<Row>(
                "select id, born_on as text from clients where born_on is not null and (@all or id in @ids)",
                new { all = clientIds is null, ids = clientIds ?? [] }
            )
        ).ToDictionary(
            r => r.Id,
            r => LocalDatePattern.Iso.Parse(read.Seal.Open(r.Text)).GetValueOrThrow()
        );

    /// <summary>Notes or forgets one.</summary>
    public static Task SetAsync(Write write, long clientId, LocalDate? birth) =>
        write.ExecuteAsync(
            "update clients set born_on = @text where id = @clientId",
            new
            {
                clientId,
                text = birth is { } on ? write.Seal.Close(LocalDatePattern.Iso.Format(on)) : null,
            }
        );

    private sealed record Row
    {
        public long Id { get; init; }
        public string Text { get; init; } = "";
    }
}
