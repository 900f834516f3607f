using System.Globalization;
using System.Text.Json.Nodes;
using Studio.Core.Catalogue;
using Studio.Core.Movements;
using Studio.Core.Screenings;

namespace Studio.Api.Records;

/// <summary>Puts beside each code what it means, so that the file can be read without this program.</summary>
internal static class HeldMeanings
{
    /// <summary>Adds the words to her rows.</summary>
    public static void Add(JsonObject all, RuleBook book)
    {
        foreach (var factor in Rows(all, "clientFactors"))
            factor["name"] = (string?)factor["code"] is { } code
                ? book.FactorOf(code)?.Name ?? code
                : null;
        foreach (var answered in Rows(all, "screenings").Concat(Rows(all, "screeningDrafts")))
            answered["answersInWords"] = Answers(answered["answers"] as JsonObject, book);
        foreach (var letter in Rows(all, "letters"))
            letter["asksFor"] = Terms(letter["restrictions"] as JsonObject);
        foreach (var incident in Rows(all, "incidents"))
            incident["signsInWords"] = new JsonArray([
                .. (incident["signs"] as JsonArray ?? []).Select(sign =>
                    JsonValue.Create(
                        book.WarningSigns.FirstOrDefault(w => w.Code == (string?)sign)?.Name
                            ?? (string?)sign
                    )
                ),
            ]);
    }

    /// <summary>The rows of a table; none when it is not there.</summary>
    public static IEnumerable<JsonObject> Rows(JsonObject all, string table) =>
        (all[table] as JsonArray ?? []).OfType<JsonObject>();

    private static JsonArray Answers(JsonObject? answers, RuleBook book) =>
        [
            .. (answers ?? []).Select(answer => new JsonObject
            {
                ["asks"] =
                    book.Questions.All.FirstOrDefault(q => q.Code == answer.Key)?.Asks
                    ?? answer.Key,
                ["answer"] = (string?)answer.Value?["value"] switch
                {
                    ScreeningAnswers.Yes => "Yes",
                    ScreeningAnswers.No => "No",
                    ScreeningAnswers.Unsure => "Not sure",
                    ScreeningAnswers.Agreed => "I agree",
                    ScreeningAnswers.Right => "That is right",
                    var own => own,
                },
                ["since"] = (string?)answer.Value?["since"],
            }),
        ];

    private static JsonArray Terms(JsonObject? terms)
    {
        var words = new JsonArray();
        foreach (var code in terms?["leaveOut"] as JsonArray ?? [])
            words.Add($"Leave out: {MovementTraits.NameOf((string)code!) ?? (string)code!}");
        if ((int?)terms?["effortMost"] is { } effort)
            words.Add(string.Create(CultureInfo.InvariantCulture, $"Effort up to {effort} of 10"));
        if ((int?)terms?["heartRateMost"] is { } rate)
            words.Add(
                string.Create(CultureInfo.InvariantCulture, $"Heart rate up to {rate} a minute")
            );
        if ((string?)terms?["words"] is { } own)
            words.Add(own);
        return words;
    }
}
