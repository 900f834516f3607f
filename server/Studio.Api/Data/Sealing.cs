namespace Studio.Api.Data;

/// <summary>
/// Seals what an older program wrote in the open, and again what was sealed with a key that has been replaced. Changes
/// nothing when there is nothing to do, so it may run as often as one likes.
/// </summary>
public static class Sealing
{
    /// <summary>The columns that hold health in words or codes.</summary>
    public static IReadOnlyList<(string Table, string Column)> Columns { get; } =
    [
        ("client_factors", "code"),
        ("screenings", "outcome"),
        ("screenings", "answers"),
        ("screening_drafts", "answers"),
        ("letters", "issued_by"),
        ("letters", "restrictions"),
        ("letters", "refused_because"),
        ("incidents", "signs"),
        ("incidents", "happened"),
        ("incidents", "done"),
        ("flags", "for_instructor"),
        ("class_note_versions", "text"),
        ("clients", "born_on"),
        ("pass_entries", "reason"),
        ("set_apart", "record"),
    ];

    /// <summary>Looks through all of them; how many values were sealed.</summary>
    public static async Task<int> RunAsync(Write write)
    {
        var changed = 0;
        foreach (var (table, column) in Columns)
        {
            var rows = await write.ListAsync<Row>(
                $"select id, {column} as text from {table} where {column} is not null"
            );
            foreach (var row in rows.Where(r => write.Seal.IsStale(r.Text)))
                changed += await write.ExecuteAsync(
                    $"update {table} set {column} = @text where id = @Id",
                    new { row.Id, text = write.Seal.Close(write.Seal.Open(row.Text)) }
                );
        }

        return changed;
    }

    private sealed record Row
    {
        public long Id { get; init; }
        public string Text { get; init; } = "";
    }
}
