using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Booking;

/// <summary>Invented clients, seen on one date: papers in order unless a test says otherwise.</summary>
internal static class Someone
{
    /// <summary>The date of the session in every test that does not name its own.</summary>
    public static readonly LocalDate Day = new(2026, 12, 14);

    public static readonly StudioPolicies Policies = new();

    /// <summary>The studio that asks only flagged clients for a letter, so that one reason stands alone.</summary>
    public static readonly StudioPolicies OnlyFlagged = Policies with
    {
        ClearanceForEveryone = false,
    };

    /// <summary>A client so far along on the day.</summary>
    public static HerSituation Pregnant(string age, int babies = 1) =>
        GestationalAge.TryParse(age, out var on)
            ? InOrder(
                new()
                {
                    DueDate = Day.PlusDays(GestationalAge.AtDueDate - on.Days),
                    Babies = babies,
                },
                Day
            )
            : throw new FormatException(age);

    /// <summary>A client whose baby was born so many days before the day.</summary>
    public static HerSituation Born(int daysAgo, BirthMode? mode = BirthMode.Vaginal) =>
        InOrder(
            new()
            {
                DueDate = Day.PlusDays(-daysAgo),
                BornOn = Day.PlusDays(-daysAgo),
                BirthMode = mode,
            },
            Day
        );

    public static HerSituation Holding(
        this HerSituation her,
        string code,
        int sinceDaysAgo = 30,
        int? untilDaysAgo = null
    ) =>
        her with
        {
            Factors =
            [
                .. her.Factors,
                new(
                    code,
                    Day.PlusDays(-sinceDaysAgo),
                    untilDaysAgo is { } until ? Day.PlusDays(-until) : null
                ),
            ],
        };

    public static HerSituation WithoutLetters(this HerSituation her) => her with { Letters = [] };

    public static HerSituation WithLetter(
        this HerSituation her,
        int issuedDaysAgo,
        int lastsDays
    ) =>
        her with
        {
            Letters =
            [
                .. her.Letters,
                new(Day.PlusDays(-issuedDaysAgo), Day.PlusDays(lastsDays - issuedDaysAgo)),
            ],
        };

    /// <summary>A class for every stage, with these traits.</summary>
    public static ClassProfile AClass(params string[] traits) =>
        For(TheCatalogue.Book.Stages.Stages.Select(s => s.Code), traits);

    public static ClassProfile For(IEnumerable<string> stages, params string[] traits) =>
        new()
        {
            Code = "invented",
            Name = "Invented",
            Stages = stages.ToHashSet(StringComparer.Ordinal),
            Traits = traits.ToHashSet(StringComparer.Ordinal),
        };

    public static Fit On(
        this HerSituation her,
        LocalDate day,
        ClassProfile cls,
        StudioPolicies? policies = null
    ) => FitRules.Of(her, cls, day, TheCatalogue.Book, policies ?? Policies);

    public static Fit In(
        this HerSituation her,
        ClassProfile cls,
        StudioPolicies? policies = null
    ) => her.On(Day, cls, policies);

    public static Reason Because(this Fit fit, string code) =>
        Assert.Single(fit.Reasons, r => r.Code == code);

    public static bool Says(this Fit fit, string rule) => fit.Reasons.Any(r => r.Rule == rule);

    /// <summary>Everything a fit says, for comparing two of them.</summary>
    public static string AllOf(this Fit fit) =>
        $"{fit.Verdict}\n{string.Join('\n', fit.Reasons)}\n{fit.Situation}";

    private static HerSituation InOrder(Pregnancy pregnancy, LocalDate day) =>
        new()
        {
            Pregnancy = pregnancy,
            // Both written since the birth where there was one, and early enough for anything held 30 days.
            Letters =
            [
                new(
                    LocalDate.Max(day.PlusDays(-20), pregnancy.BornOn ?? LocalDate.MinIsoValue),
                    day.PlusDays(100)
                ),
            ],
            Screening = new(
                LocalDate.Max(day.PlusDays(-20), pregnancy.BornOn ?? LocalDate.MinIsoValue),
                ScreeningOutcome.NothingFound
            ),
        };
}
