using Studio.Core.Clearance;
using Studio.Core.Pregnancies;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Clearance;

/// <summary>The studio's own reading, no published source: what a letter asked for stands until another letter speaks.</summary>
public class WhatLettersAskFor
{
    private static readonly Pregnancy Expecting = new() { DueDate = Given.Day("2027-03-01") };
    private static readonly LetterTerms NoSupine = new()
    {
        LeaveOut = new HashSet<string>(StringComparer.Ordinal) { "supine" },
    };

    [Theory]
    [InlineData("2026-10-31", false, "the day before it was written")]
    [InlineData("2026-11-01", true, "the day it was written")]
    [InlineData("2026-12-31", true, "after it ran out, with no other letter there")]
    public void Stands_from_the_day_it_was_written(string day, bool holds, string because) =>
        Assert.True(
            holds == Holds(day, Expecting, Letter("2026-11-01", "2026-11-30", NoSupine)),
            because
        );

    [Theory]
    [InlineData("2026-11-09", true, "the day before the other was written")]
    [InlineData("2026-11-10", false, "the day the other was written")]
    public void Ends_with_a_later_letter_that_takes_its_place(
        string day,
        bool holds,
        string because
    ) =>
        Assert.True(
            holds
                == Holds(
                    day,
                    Expecting,
                    Letter("2026-11-01", "2026-12-31", NoSupine),
                    Letter("2026-11-10", "2027-01-31") with
                    {
                        ReplacesEarlier = true,
                    }
                ),
            because
        );

    [Theory]
    [InlineData("2026-11-30", true, "its last day: both letters count, and both are kept to")]
    [InlineData("2026-12-01", false, "the day after: the later letter speaks alone")]
    public void Beside_a_later_letter_it_lasts_as_long_as_it_counts(
        string day,
        bool holds,
        string because
    ) =>
        Assert.True(
            holds
                == Holds(
                    day,
                    Expecting,
                    Letter("2026-11-01", "2026-11-30", NoSupine),
                    Letter("2026-11-10", "2027-01-31")
                ),
            because
        );

    [Theory]
    [InlineData("2026-12-14", true, "no letter yet speaks instead")]
    [InlineData("2026-12-15", false, "the day a new one was written")]
    public void After_it_ran_out_it_stands_until_the_next_letter(
        string day,
        bool holds,
        string because
    ) =>
        Assert.True(
            holds
                == Holds(
                    day,
                    Expecting,
                    Letter("2026-11-01", "2026-11-30", NoSupine),
                    Letter("2026-12-15", "2027-01-31")
                ),
            because
        );

    [Theory]
    [InlineData("2027-02-19", true, "the day before the birth")]
    [InlineData("2027-02-20", false, "the birth, which ends the letter")]
    public void Ends_with_the_birth(string day, bool holds, string because) =>
        Assert.True(
            holds
                == Holds(
                    day,
                    Expecting with
                    {
                        BornOn = Given.Day("2027-02-20"),
                    },
                    Letter("2026-11-01", "2026-11-30", NoSupine)
                ),
            because
        );

    [Fact]
    public void A_letter_taken_back_asks_for_nothing() =>
        Assert.False(
            Holds(
                "2026-11-10",
                Expecting,
                Letter("2026-11-01", "2026-12-31", NoSupine) with
                {
                    Withdrawn = true,
                }
            )
        );

    private static ClearanceLetter Letter(
        string issued,
        string expires,
        LetterTerms? terms = null
    ) => new(Given.Day(issued), Given.Day(expires)) { Terms = terms ?? new() };

    private static bool Holds(string day, Pregnancy her, params ClearanceLetter[] letters) =>
        LetterRestrictions
            .Of(letters, her, Given.Stages, new())
            .Any(r => r.HoldsOn(Given.Day(day)) && r.LeaveOut.Contains("supine"));
}
