using Studio.Core.Clients;

namespace Studio.Api.Records;

/// <summary>What an erasure does with a table's rows.</summary>
public enum AtErasure
{
    /// <summary>They go; a copy of what must be kept for a time is set apart first.</summary>
    Go,

    /// <summary>The row stays with everything taken out of it, because others point to it.</summary>
    Emptied,

    /// <summary>They stay: they hold numbers and moments only.</summary>
    Stay,
}

/// <summary>A table that holds something about a client.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Of">SQL condition for the rows about <c>@clientId</c>, or her account <c>@accountId</c>.</param>
/// <param name="Part">The part that may have to be kept for a time; null when nothing asks for that.</param>
/// <param name="AtErasure">What an erasure does with its rows.</param>
public sealed record HeldTable(
    string Name,
    string Of,
    KeptPart? Part = null,
    AtErasure AtErasure = AtErasure.Go
);

/// <summary>
/// Every table that holds something about a client. A test walks the schema's foreign keys and fails when one leads to a
/// client that is not named here.
/// </summary>
public static class HeldTables
{
    private const string Hers = "client_id = @clientId";
    private const string HerPregnancies =
        "pregnancy_id in (select id from pregnancies where client_id = @clientId)";

    private const string HerPasses =
        "pass_id in (select id from passes where client_id = @clientId)";

    /// <summary>
    /// What is given to her as hers, parents before children: the order in which it is told, and backwards the one in
    /// which it can be taken away.
    /// </summary>
    public static IReadOnlyList<HeldTable> All { get; } =
    [
        new("clients", "id = @clientId", AtErasure: AtErasure.Emptied),
        new("accounts", "id = @accountId", AtErasure: AtErasure.Emptied),
        new("account_roles", "account_id = @accountId", AtErasure: AtErasure.Emptied),
        new("pregnancies", Hers, KeptPart.Health),
        new("dating_evidence", HerPregnancies, KeptPart.Health),
        new("due_dates", HerPregnancies, KeptPart.Health),
        new("stage_changes", HerPregnancies, KeptPart.Health),
        new("screenings", Hers, KeptPart.Health),
        new("screening_drafts", Hers),
        new("nothing_changed", Hers, KeptPart.Health),
        new("client_factors", Hers, KeptPart.Health),
        new("letters", Hers, KeptPart.Health),
        new("incidents", Hers, KeptPart.Incidents),
        new("holds", Hers, KeptPart.Incidents),
        new("class_notes", Hers, KeptPart.Health),
        new(
            "class_note_versions",
            "note_id in (select id from class_notes where client_id = @clientId)",
            KeptPart.Health
        ),
        new("bookings", Hers, KeptPart.Contact, AtErasure.Emptied),
        new("passes", Hers, KeptPart.Contact),
        new("pass_classes", HerPasses, KeptPart.Contact),
        new("pass_sessions", HerPasses, KeptPart.Contact),
        new("pass_entries", HerPasses, KeptPart.Contact),
        new("moves", Hers),
        new("move_steps", "move_id in (select id from moves where client_id = @clientId)"),
        new("flags", Hers),
        new("flag_reads", "flag_id in (select id from flags where client_id = @clientId)"),
        new("messages", "(client_id = @clientId or account_id = @accountId)", KeptPart.Contact),
        new("unwanted_messages", Hers),
        new("feeds", "account_id = @accountId and reads = 'client'"),
        new("erasures", Hers, AtErasure: AtErasure.Stay),
        new("audit", Hers, AtErasure: AtErasure.Stay),
    ];

    /// <summary>Tables that lead to a client and are not given, each with the reason.</summary>
    public static IReadOnlyDictionary<string, string> NotGiven { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["answered_requests"] =
                "A copy of an answer already given, kept so that a request sent twice counts once; what it did stands in the other tables. Goes with her account.",
            ["instructors"] = "About those who teach; an account of theirs is not a client's.",
            ["erasing"] = "Never has a row outside an erasure's own transaction.",
            ["set_apart"] =
                "Made of what is given here, at an erasure; from then on only the owner reads it.",
            ["set_apart_files"] = "The files of what is set apart.",
        };

    /// <summary>Columns that are not given, each with the reason.</summary>
    public static IReadOnlyDictionary<
        (string Table, string Column),
        string
    > ColumnsNotGiven { get; } =
        new Dictionary<(string, string), string>
        {
            [("clients", "search")] = "Her name, phone and e-mail again, folded for the find box.",
            [("accounts", "normalized_email")] = "Her e-mail address again, in capitals.",
            [("accounts", "password_hash")] = "Whoever has it can try passwords against it.",
            [("accounts", "security_stamp")] = "Part of what keeps her signed in.",
            [("feeds", "token_digest")] = "Part of what keeps her calendar address private.",
            [("messages", "message_id")] = "A random name a message has on its way.",
            [("letters", "file_name")] = "A random name on the disk; the file itself has a link.",
            [("audit", "hash")] = "Ties the entries of everybody together; says nothing of her.",
        };
}
