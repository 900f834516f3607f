using System.Text.Json.Nodes;

namespace Studio.Api.Tests.Catalogue;

/// <summary>Files of rules as an owner edits and sends them, and a class that a rule can be about.</summary>
internal static class Rules
{
    public const string MovementRules = "movement_rules.csv";

    /// <summary>In the class of <see cref="HasMarch"/> there is nothing else.</summary>
    public const string March = "easy-march";

    /// <summary>Everybody leaves the march out.</summary>
    public const string NoMarch =
        "ours-no-march,,,,,,,,,,,,easy-march,,,left-out,We leave the march out here.,no marching,common-practice,\n";

    /// <summary>A file in force with a row more.</summary>
    public static string With(string rows) => StudioApp.Own.Texts[MovementRules] + rows;

    /// <summary>What is sent for one file.</summary>
    public static object Of(string text, string file = MovementRules, int? basedOn = null) =>
        new
        {
            files = new[] { new { name = file, text } },
            why = "A test of ours.",
            basedOn,
        };

    /// <summary>Tries a file without keeping it; the report.</summary>
    public static async Task<JsonNode> Tries(this HttpClient owner, object files)
    {
        using var answer = await owner.Post("/api/imports/catalogue?dryRun=true", files);
        return await answer.Is(200);
    }

    /// <summary>Puts a file in force; the report.</summary>
    public static async Task<JsonNode> PutsInForce(this HttpClient owner, object files)
    {
        using var answer = await owner.Post("/api/imports/catalogue", files);
        return await answer.Is(200);
    }

    /// <summary>A class whose plan is the march alone, a session of it in three days and somebody who is booked.</summary>
    public static async Task<(long Session, long Client, long Instructor)> HasMarch(
        this StudioApp app
    )
    {
        await app.HasLocation();
        var cls = await app.HasClass("Marching");
        var plan = await app.Insert(
            "insert into class_plans (class_id, version, made_at) values (@cls, 1, @at)",
            new { cls, at = app.Clock.GetCurrentInstant() }
        );
        await app.Execute(
            "insert into class_plan_items (plan_id, position, movement, minutes) values (@plan, 1, @March, 50)",
            new { plan, March }
        );
        var instructor = await app.HasInstructor();
        var session = await app.HasSession(app.Today.PlusDays(3), of: cls, instructor: instructor);
        var client = await app.HasClient("Perpetua Testwold");
        await app.HasBooking(session, client);
        return (session, client, instructor);
    }

    /// <summary>The verdict of a session for a client, as the list of her choices has it.</summary>
    public static async Task<string> VerdictOf(this HttpClient reader, long client, long session) =>
        (await reader.Read($"/api/clients/{client}/sessions"))
            .AsArray()
            .Single(c => c!["session"]!.Number("id") == session)!["fit"]!.Text("verdict");
}
