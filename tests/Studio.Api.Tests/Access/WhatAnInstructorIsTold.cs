using System.Text.Json.Nodes;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;

namespace Studio.Api.Tests.Access;

public class WhatAnInstructorIsTold(SharedStudio studio)
{
    private readonly StudioApp _app = studio.App;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Is_a_condition_by_name_only_where_the_client_shares_it(bool shares)
    {
        var client = await _app.HasClient(shares: shares);
        foreach (var factor in StudioApp.Book.Factors)
            await _app.HasFactor(client, factor.Code);
        var instructor = await _app.HasInstructor();
        var session = await _app.HasSession(
            _app.Today.PlusDays(5),
            of: await _app.HasClass(traits: [.. ClassTraits.All]),
            instructor: instructor
        );
        await _app.HasBooking(session, client);
        var her = await _app.SignedInAs(Role.Instructor, instructor: instructor);

        var roster = await her.Read($"/api/sessions/{session}/roster");
        var person = roster["people"]![0]!;
        Assert.NotEmpty(person["instructions"]!.AsArray());
        Assert.Equal("20w 5d", person.Text("age"));
        if (shares)
            Assert.Contains(
                "Placenta over the cervix (placenta praevia)",
                person["conditions"]!.AsArray().Select(c => (string)c!)
            );
        else
        {
            Assert.Empty(person["conditions"]!.AsArray());
            HealthWords.Conditions.AreNotIn(roster, "roster");
            HealthWords.Conditions.AreNotIn(await her.Read("/api/flags"), "flags");
        }
    }

    [Fact]
    public async Task Is_nothing_about_the_session_of_another()
    {
        var session = await _app.HasSession(
            _app.Today.PlusDays(5),
            instructor: await _app.HasInstructor()
        );
        var booking = await _app.HasBooking(session, await _app.HasClient());
        var her = await _app.SignedInAs(Role.Instructor, instructor: await _app.HasInstructor());
        foreach (
            var path in new[] { $"/api/sessions/{session}", $"/api/sessions/{session}/roster" }
        )
        {
            using var answer = await her.GetAsync(path, TestContext.Current.CancellationToken);
            await answer.IsRefused(404, "no-such-session");
        }

        using var checkIn = await her.Post(
            $"/api/bookings/{booking}/check-in",
            new { answer = "allWell" }
        );
        await checkIn.IsRefused(404, "no-such-booking");
        Assert.Empty((await her.Read("/api/sessions")).AsArray());
        Assert.Empty((await her.Read("/api/flags")).AsArray());
    }

    [Fact]
    public async Task Is_whom_to_call_from_the_day_before_until_the_day_after()
    {
        await using var app = await StudioApp.Empty();
        var instructor = await app.HasInstructor();
        var session = await app.HasSession(app.Today, "19:30", instructor: instructor);
        await app.HasBooking(session, await app.HasClient());
        var her = await app.SignedInAs(Role.Instructor, instructor: instructor);
        var desk = await app.SignedInAs(Role.FrontDesk);
        foreach (var days in new[] { -2, -1, 0, 1, 2 })
        {
            app.Clock.Reset(StudioApp.Start + Duration.FromDays(days));
            var roster = await her.Read($"/api/sessions/{session}/roster");
            Assert.Equal(Math.Abs(days) <= 1, Person(roster)["emergency"] is not null);
            roster = await desk.Read($"/api/sessions/{session}/roster");
            Assert.Null(Person(roster)["emergency"]);
        }
    }

    [Fact]
    public async Task Of_both_roles_is_what_each_role_allows_and_no_more()
    {
        var client = await _app.HasClient();
        await _app.HasFactor(client, "back-pain");
        var instructor = await _app.HasInstructor();
        var hers = await _app.HasSession(_app.Today.PlusDays(6), instructor: instructor);
        var others = await _app.HasSession(_app.Today.PlusDays(7));
        await _app.HasBooking(hers, client);
        await _app.HasBooking(others, client);
        var both = await _app.SignedInAs([Role.FrontDesk, Role.Instructor], instructor: instructor);
        Assert.NotNull(Person(await both.Read($"/api/sessions/{hers}/roster"))["age"]);
        Assert.Null(Person(await both.Read($"/api/sessions/{others}/roster"))["age"]);
        Assert.Null((await both.Read($"/api/clients/{client}"))["factors"]);
    }

    private static JsonNode Person(JsonNode roster) => roster["people"]![0]!;
}
