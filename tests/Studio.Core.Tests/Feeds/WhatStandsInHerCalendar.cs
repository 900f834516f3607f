using Studio.Core.Feeds;

namespace Studio.Core.Tests.Feeds;

public class WhatStandsInHerCalendar
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 2, 9, 0);

    // place, days since it ended, held, days until it begins | as it stands; after a loss
    [Theory]
    [InlineData(PlaceInSession.Seat, null, true, 2, EntryState.Confirmed, null)]
    [InlineData(PlaceInSession.Seat, null, true, -2, EntryState.Confirmed, EntryState.Confirmed)]
    [InlineData(PlaceInSession.Seat, null, false, 2, EntryState.Cancelled, null)]
    [InlineData(PlaceInSession.Seat, null, false, -2, EntryState.Cancelled, null)]
    [InlineData(PlaceInSession.Waitlist, null, true, 2, EntryState.Tentative, null)]
    [InlineData(PlaceInSession.Waitlist, null, true, -2, null, null)]
    [InlineData(PlaceInSession.Waitlist, null, false, 2, EntryState.Cancelled, null)]
    [InlineData(PlaceInSession.GivenUp, 29, true, 2, EntryState.Cancelled, null)]
    [InlineData(PlaceInSession.GivenUp, 30, true, 2, null, null)]
    [InlineData(PlaceInSession.GivenUp, 29, false, 2, EntryState.Cancelled, null)]
    [InlineData(PlaceInSession.GivenUp, 30, false, 2, null, null)]
    [InlineData(PlaceInSession.Released, 1, true, 2, null, null)]
    [InlineData(PlaceInSession.Released, 1, false, 2, EntryState.Cancelled, null)]
    public void Is_her_place_as_it_stands_and_after_a_loss_only_what_was(
        PlaceInSession place,
        int? endedDaysAgo,
        bool held,
        int daysAhead,
        EntryState? stands,
        EntryState? afterLoss
    )
    {
        var session = new BookedSession(
            place,
            endedDaysAgo is { } days ? Now - Duration.FromDays(days) : null,
            held,
            Now + Duration.FromDays(daysAhead)
        );
        Assert.Equal(stands, FeedRules.StateFor(session, ended: false, Now));
        Assert.Equal(afterLoss, FeedRules.StateFor(session, ended: true, Now));
    }

    [Fact]
    public void Names_no_class_unless_she_wants_it()
    {
        const string name = "Second-trimester core";
        foreach (var state in Enum.GetValues<EntryState>())
        {
            var plain = FeedWords.ForClient(state, "Saltmarsh studio", name, namesClass: false);
            Assert.DoesNotContain(name, plain);
            Assert.Contains("Class at Saltmarsh studio", plain);
            Assert.Contains(
                name,
                FeedWords.ForClient(state, "Saltmarsh studio", name, namesClass: true)
            );
        }
    }

    // RFC 9562, 4.1 and 5.8: variant 10, version 8.
    [Fact]
    public void Has_a_name_of_its_own_that_says_nothing_and_stays()
    {
        var names = (
            from key in new[] { "k1", "k2" }
            from reads in new[] { "client", "instructor" }
            from id in Enumerable.Range(1, 500)
            select CalendarKeys.Uid(key, reads, id)
        ).ToList();
        Assert.Equal(names.Count, names.Distinct().Count());
        Assert.All(
            names,
            n =>
                Assert.Matches(
                    "^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$",
                    n
                )
        );
        Assert.Equal(names[0], CalendarKeys.Uid("k1", "client", 1));
    }

    [Fact]
    public void Is_behind_an_address_nobody_guesses()
    {
        var tokens = Enumerable.Range(0, 1000).Select(_ => CalendarKeys.NewToken()).ToList();
        Assert.Equal(1000, tokens.Distinct().Count());
        // 256 bits in base64url (RFC 4648, 5) are 43 characters.
        Assert.All(tokens, t => Assert.Matches("^[A-Za-z0-9_-]{43}$", t));
        // FIPS 180-4, the example "abc".
        Assert.Equal(
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            CalendarKeys.Digest("abc")
        );
    }
}
