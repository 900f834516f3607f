using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Core.Intensity;

/// <summary>A heart rate to move at.</summary>
/// <param name="Low">Beats a minute from which it is moderate; null where nothing is published or her letter's ceiling lies below.</param>
/// <param name="High">The most beats a minute.</param>
/// <param name="ByLetter">Her letter's ceiling is what bounds it.</param>
/// <param name="Sources">Where the figures stand.</param>
public sealed record HeartRateRange(
    int? Low,
    int High,
    bool ByLetter,
    IReadOnlyList<Source> Sources
)
{
    /// <summary>"121 to 140", or "up to 140" without a lower end.</summary>
    public string Says => Low is { } low ? $"{low} to {High}" : $"up to {High}";
}

/// <summary>How hard a client works, by her age and her letters. The talk test holds for everybody.</summary>
public static class HeartRates
{
    /// <summary>The youngest and oldest completed years a date of birth of hers may give.</summary>
    public const int YoungestYears = 12;

    /// <inheritdoc cref="YoungestYears"/>
    public const int OldestYears = 65;

    /// <summary>
    /// Her range on a date. Only while she is pregnant, since no band for the time after a birth is published here; none
    /// without her date of birth; and none while she is on hold or was told not to exercise, since the bands were
    /// published for those who were screened and are at low risk.
    /// </summary>
    /// <param name="her">What is known of her.</param>
    /// <param name="day">The date; a session's own.</param>
    /// <param name="book">The catalogue.</param>
    /// <param name="policies">The policies in force.</param>
    public static HeartRateRange? On(
        HerSituation her,
        LocalDate day,
        RuleBook book,
        StudioPolicies policies
    )
    {
        if (
            her.BirthDate is not { } birth
            || birth >= day
            || book.Stages.On(her.Pregnancy, day).Phase != Phase.Pregnant
            || her.Holds.Any(h => h.StandsOn(day))
            || her.Screening?.Outcome == ScreeningOutcome.NoExercise
        )
            return null;
        var published = ByAge(YearsOn(birth, day), book, policies);
        var ceiling = LetterRestrictions
            .Of(her.Letters, her.Pregnancy, book.Stages, policies)
            .Concat(her.Restrictions)
            .Where(r => r.HoldsOn(day))
            .Min(r => r.HeartRateMost);
        return ceiling is { } most && most < published.High
            ? published with
            {
                Low = published.Low < most ? published.Low : null,
                High = most,
                ByLetter = true,
            }
            : published;
    }

    /// <summary>The published range at an age, in completed years, under the studio's policies.</summary>
    public static HeartRateRange ByAge(int years, RuleBook book, StudioPolicies policies)
    {
        var canada = Band(book, IntensityPopulation.Canada, Counted(years, policies));
        var acog = Band(book, IntensityPopulation.Acog, years);
        var (band, cap) = (canada.High!.Value, acog.High!.Value);
        return policies.HeartRate switch
        {
            HeartRatePolicy.Canada => new(canada.Low, band, false, [canada.Source]),
            HeartRatePolicy.AcogCap => new(null, cap, false, [acog.Source]),
            HeartRatePolicy.Stricter => new(
                canada.Low,
                Math.Min(band, cap),
                false,
                band > cap ? [canada.Source, acog.Source] : [canada.Source]
            ),
        };
    }

    /// <summary>What she can still say while she works at a level, with its source.</summary>
    public static IntensityBand Talk(RuleBook book, IntensityLevel level) =>
        book.Intensity.First(b => b.Unit == IntensityUnit.Talk && b.Level == level);

    /// <summary>Completed years on a date.</summary>
    public static int YearsOn(LocalDate birth, LocalDate day) =>
        Period.Between(birth, day, PeriodUnits.Years).Years;

    /// <summary>Why a date of birth cannot be hers, or null.</summary>
    public static Refusal? WhyNot(LocalDate birth, LocalDate today) =>
        birth > today
            ? ClientRefusals.Invalid(
                "in-future",
                "The date of birth lies in the future. Please check the year.",
                "bornOn"
            )
        : YearsOn(birth, today) is < YoungestYears or > OldestYears
            ? ClientRefusals.Invalid(
                "not-her-age",
                $"By this date she would be {YearsOn(birth, today)} years old. Please check the year.",
                "bornOn"
            )
        : null;

    private static int Counted(int years, StudioPolicies policies) =>
        years != HeartRateFile.OpenAge
            ? years
            : policies.HeartRate29 switch
            {
                HeartRate29.Older => years + 1,
                HeartRate29.Younger => years - 1,
            };

    private static IntensityBand Band(RuleBook book, IntensityPopulation population, int years) =>
        book.Intensity.First(b =>
            b.Population == population
            && b.Unit == IntensityUnit.Beats
            && b.Level == IntensityLevel.Moderate
            && !(b.AgeFrom > years)
            && !(b.AgeTo < years)
        );
}
