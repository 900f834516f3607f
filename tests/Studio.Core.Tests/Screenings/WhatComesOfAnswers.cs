using System.Globalization;
using CsCheck;
using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;
using Studio.Core.Tests.Catalogue;
using Studio.Core.Tests.Pregnancies;

namespace Studio.Core.Tests.Screenings;

/// <summary>
/// Every condition of tests/reference/contraindications.csv under each guideline, on the day before and the day of its
/// week: absolute is no exercise here, relative asks for a letter (Meah et al. 2020, reference rows CL04 and CL05).
/// </summary>
public class WhatComesOfAnswers
{
    private static readonly RuleBook Book = TheCatalogue.Book;
    private static readonly IReadOnlyList<ReferenceRow> Rows = Reference.Read(
        "contraindications.csv"
    );
    private static readonly StudioPolicies Policies = new();

    public static IEnumerable<TheoryDataRow<string>> AllRows() =>
        Reference.Cases(Rows, row => row["condition"]);

    [Theory]
    [MemberData(nameof(AllRows))]
    public void A_yes_comes_to_what_the_list_says(string id)
    {
        var row = Rows.Row(id);
        Check(id, row["acog804"], row["week_from_acog"], Guideline.Acog);
        Check(id, row["canada2019"], row["week_from_canada"], Guideline.Canada);
    }

    [Theory]
    [MemberData(nameof(AllRows))]
    public void The_stricter_reading_comes_to_the_stricter_of_both_in_every_week(string id)
    {
        for (var day = 0; day <= GestationalAge.AtPostterm; day++)
        {
            var age = new GestationalAge(day);
            var (acog, canada, stricter) = (
                Outcome(id, age, Guideline.Acog),
                Outcome(id, age, Guideline.Canada),
                Outcome(id, age, Guideline.Stricter)
            );
            // Meah et al. 2020 (reference row CL21, seen): abruption and vasa praevia, on neither list, are to be absolute.
            var expected = id is "C39" or "C40"
                ? ScreeningOutcome.NoExercise
                : (ScreeningOutcome)Math.Max((int)acog, (int)canada);
            Assert.True(expected == stricter, $"{id} at {age}: {stricter}, not {expected}");
        }
    }

    [Theory]
    [MemberData(nameof(AllRows))]
    public void Not_sure_is_never_milder_than_no_and_never_sends_away(string id)
    {
        var condition = Book.Conditions.Single(c => c.Reference == id);
        var age = GestationalAge.Of(30, 0);
        var unsure = Of(Answered(age, (condition.Factor.Code, ScreeningAnswers.Unsure)), age);
        var yes = Of(Answered(age, (condition.Factor.Code, ScreeningAnswers.Yes)), age);
        Assert.Equal(
            yes.Outcome == ScreeningOutcome.NothingFound
                ? ScreeningOutcome.NothingFound
                : ScreeningOutcome.ClearanceNeeded,
            unsure.Outcome
        );
        Assert.Contains(condition.Factor.Code, unsure.Holds.Select(h => h.Code));
    }

    [Fact]
    public void Every_warning_sign_that_stops_a_class_stops_here()
    {
        foreach (var phase in new[] { Phase.Pregnant, Phase.Born })
        foreach (var sign in Book.WarningSigns.Where(s => QuestionSet.IsMeant(s.When, phase)))
        foreach (var value in new[] { ScreeningAnswers.Yes, ScreeningAnswers.Unsure })
        {
            var situation = At(phase);
            var result = Of(Answered(situation, ($"now-{sign.Code}", value)), situation);
            Assert.Equal(
                sign.Stops ? ScreeningOutcome.NoExercise : ScreeningOutcome.ClearanceNeeded,
                result.Outcome
            );
            Assert.Equal([sign], result.Signs);
            Assert.Equal(sign.Source, Assert.Single(result.Reasons).Source);
        }
    }

    [Fact]
    public void Nothing_but_no_finds_nothing_and_ends_whatever_was_told()
    {
        var age = GestationalAge.Of(20, 0);
        var result = Of(Answered(age), age);
        Assert.Equal(ScreeningOutcome.NothingFound, result.Outcome);
        Assert.Empty(result.Reasons);
        Assert.Empty(result.Holds);
        Assert.Contains("back-pain", result.Ended);
    }

    [Fact]
    public void After_the_birth_the_postnatal_word_counts()
    {
        var born = At(Phase.Born);
        // Davenport et al. 2025 (reference rows PR22 and PR28): these ask for a clinician's word after the birth.
        foreach (var condition in Book.Conditions.Where(c => c.AfterBirth is not null))
        {
            var result = Of(Answered(born, (condition.Factor.Code, ScreeningAnswers.Yes)), born);
            Assert.Equal(ScreeningOutcome.ClearanceNeeded, result.Outcome);
            Assert.Equal(condition.AfterBirth!.Source, Assert.Single(result.Reasons).Source);
        }
    }

    [Fact]
    public void With_no_dates_the_strictest_week_counts()
    {
        var unknown = new Situation { On = Given.Day("2026-11-25"), Phase = Phase.Unknown };
        Assert.Equal(
            ScreeningOutcome.NoExercise,
            Of(Answered(unknown, ("placenta-praevia", ScreeningAnswers.Yes)), unknown).Outcome
        );
    }

    [Fact]
    public void More_conditions_never_give_a_milder_outcome()
    {
        var codes = Book
            .Questions.For(Phase.Pregnant)
            .Where(q => q.About is not null)
            .Select(q => q.Code)
            .ToArray();
        Gen.Select(
                Gen.Int[0, GestationalAge.AtPostterm],
                Gen.OneOf(Enum.GetValues<Guideline>()),
                Gen.Select(Gen.OneOf(codes), Gen.OneOf("yes", "unsure")).Array[0, 8],
                Gen.Select(Gen.OneOf(codes), Gen.OneOf("yes", "unsure")).Array[0, 4]
            )
            .Sample(
                (day, guideline, some, more) =>
                {
                    var age = new GestationalAge(day);
                    var policies = Policies with { Guideline = guideline };
                    var fewer = Of(Answered(age, some), age, policies);
                    // A yes is never turned into a not sure by the longer list.
                    (string, string)[] longer =
                    [
                        .. some,
                        .. more.Where(m => !some.Any(s => s.Item1 == m.Item1)),
                    ];
                    var all = Of(Answered(age, longer), age, policies);
                    return all.Outcome >= fewer.Outcome
                        && fewer.Reasons.All(r =>
                            all.Reasons.Any(a => a.Question == r.Question && a.Outcome == r.Outcome)
                        );
                },
                iter: 5_000
            );
    }

    private static void Check(string id, string published, string week, Guideline guideline)
    {
        var from =
            week.Length == 0
                ? GestationalAge.Of(25, 6)
                : GestationalAge.Of(int.Parse(week, CultureInfo.InvariantCulture), 0);
        Assert.Equal(Expected(published), Outcome(id, from, guideline));
        if (week.Length > 0)
            Assert.Equal(ScreeningOutcome.NothingFound, Outcome(id, new(from.Days - 1), guideline));
    }

    private static ScreeningOutcome Outcome(string id, GestationalAge age, Guideline guideline)
    {
        var condition = Book.Conditions.Single(c => c.Reference == id);
        return Of(
            Answered(age, (condition.Factor.Code, ScreeningAnswers.Yes)),
            age,
            Policies with
            {
                Guideline = guideline,
            }
        ).Outcome;
    }

    private static ScreeningOutcome Expected(string published) =>
        published switch
        {
            "absolute" => ScreeningOutcome.NoExercise,
            "relative" => ScreeningOutcome.ClearanceNeeded,
            _ => ScreeningOutcome.NothingFound,
        };

    private static Situation At(GestationalAge age) =>
        Book.Stages.On(
            new Pregnancy { DueDate = Given.Day("2027-03-01") },
            Given.Day("2027-03-01").PlusDays(age.Days - GestationalAge.AtDueDate)
        );

    private static Situation At(Phase phase) =>
        phase == Phase.Born
            ? Book.Stages.On(
                new Pregnancy { BornOn = Given.Day("2026-09-01"), BirthMode = BirthMode.Vaginal },
                Given.Day("2026-11-25")
            )
            : At(GestationalAge.Of(20, 0));

    private static Dictionary<string, GivenAnswer> Answered(
        GestationalAge age,
        params (string Code, string Value)[] yes
    ) => Answered(At(age), yes);

    private static Dictionary<string, GivenAnswer> Answered(
        Situation situation,
        params (string Code, string Value)[] yes
    )
    {
        var answers = Book
            .Questions.For(situation.Phase)
            .Where(q => q.IsRequired)
            .ToDictionary(
                q => q.Code,
                q => new GivenAnswer(
                    q.Kind switch
                    {
                        QuestionKind.Agree => ScreeningAnswers.Agreed,
                        QuestionKind.Confirm => ScreeningAnswers.Right,
                        _ => ScreeningAnswers.No,
                    }
                )
            );
        foreach (var (code, value) in yes)
            answers[code] = new GivenAnswer(value);
        Assert.Null(
            ScreeningAnswers.WhyNot(
                answers,
                Book.Questions,
                situation.Phase,
                situation.On,
                finished: true
            )
        );
        return answers;
    }

    private static ScreeningResult Of(
        IReadOnlyDictionary<string, GivenAnswer> answers,
        GestationalAge age,
        StudioPolicies? policies = null
    ) => ScreeningOutcomes.Of(answers, At(age), Book, policies ?? Policies);

    private static ScreeningResult Of(
        IReadOnlyDictionary<string, GivenAnswer> answers,
        Situation situation
    ) => ScreeningOutcomes.Of(answers, situation, Book, Policies);
}
