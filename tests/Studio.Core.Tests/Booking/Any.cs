using CsCheck;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;
using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Booking;

/// <summary>Clients, papers, classes and policies of every sort, most of them near a boundary of some rule.</summary>
internal static class Any
{
    public static readonly Gen<LocalDate> Near = Gen.Int[-320, 320]
        .Select(days => Someone.Day.PlusDays(days));

    public static readonly Gen<Pregnancy?> APregnancy = Gen.Select(
        Gen.Int[-20, 310],
        Gen.Int[1, 4],
        Gen.Int[-5, 200],
        Gen.Enum<BirthMode>(),
        Gen.Int[0, 9],
        (age, babies, born, mode, kind) =>
        {
            var due = Someone.Day.PlusDays(280 - age);
            return kind switch
            {
                0 => null,
                1 => new Pregnancy
                {
                    DueDate = due,
                    Babies = babies,
                    EndedOn = Someone.Day.PlusDays(-born),
                },
                2 => new Pregnancy { Babies = babies },
                3 or 4 or 5 => new Pregnancy
                {
                    DueDate = due,
                    Babies = babies,
                    BornOn = Someone.Day.PlusDays(-born),
                    BirthMode = mode,
                },
                _ => new Pregnancy { DueDate = due, Babies = babies },
            };
        }
    );

    public static readonly Gen<HeldFactor> AFactor = Gen.Select(
        OneOf([.. TheCatalogue.Book.Factors.Select(f => f.Code), "not-in-the-catalogue"]),
        Gen.Int[-5, 200],
        Gen.Int[-1, 100],
        (code, began, lasts) =>
            new HeldFactor(
                code,
                Someone.Day.PlusDays(-began),
                lasts < 0 ? null : Someone.Day.PlusDays(lasts - began)
            )
    );

    public static readonly Gen<ClearanceLetter> ALetter = Gen.Select(
        Near,
        Gen.Int[-5, 400],
        Gen.Int[0, 5],
        (issued, lasts, withdrawn) =>
            new ClearanceLetter(issued, issued.PlusDays(lasts), withdrawn == 0)
    );

    public static readonly Gen<Hold> AHold = Gen.Select(
        Near,
        Near,
        Gen.Bool,
        (from, to, lifted) => new Hold(from, lifted ? to : null)
    );

    public static readonly Gen<Screening?> AScreening = Gen.Select(
        Near,
        Gen.Enum<ScreeningOutcome>(),
        Gen.Int[0, 4],
        (on, outcome, none) => none == 0 ? null : new Screening(on, outcome)
    );

    public static readonly Gen<Restriction> ARestriction = Gen.Select(
        Near,
        Near,
        Gen.Bool,
        OneOf([.. Positions.All.Keys, .. MovementTraits.All.Keys, "not-in-the-catalogue"]).Array[
            0,
            2
        ],
        Gen.Int[-8, 9],
        (from, to, ends, leaveOut, effort) =>
            new Restriction
            {
                From = from,
                To = ends ? to : null,
                LeaveOut = leaveOut.ToHashSet(StringComparer.Ordinal),
                EffortMost = effort < 0 ? null : effort,
            }
    );

    public static readonly Gen<HerSituation> AClient = Gen.Select(
        APregnancy,
        AFactor.Array[0, 4],
        ALetter.Array[0, 3],
        AScreening,
        AHold.Array[0, 1],
        ARestriction.Array[0, 1],
        (pregnancy, factors, letters, screening, holds, restrictions) =>
            new HerSituation
            {
                Pregnancy = pregnancy,
                Factors = factors,
                Letters = letters,
                Screening = screening,
                Holds = holds,
                Restrictions = restrictions,
            }
    );

    public static readonly Gen<ClassPlan> APlan = Gen.Select(
            OneOf([.. TheCatalogue.Book.Movements.Select(m => m.Code), "not-in-the-catalogue"]),
            Gen.Int[1, 10],
            (movement, minutes) => new PlanItem(movement, minutes)
        )
        .Array[1, 12]
        .Select(items => new ClassPlan(items));

    public static readonly Gen<ClassProfile> AClass = Gen.Select(
        Gen.Shuffle(ClassTraits.All.Order(StringComparer.Ordinal).ToArray(), 0, 12),
        Gen.Shuffle(TheCatalogue.Book.Stages.Stages.Select(s => s.Code).ToArray(), 1, 6),
        (traits, stages) => Someone.For(stages, traits)
    );

    public static readonly Gen<StudioPolicies> APolicy = Gen.Select(
        Gen.Enum<Guideline>(),
        Gen.Bool,
        Gen.Bool,
        Gen.Enum<WeekReading>(),
        Gen.Select(
            Gen.Enum<SupineFrom>(),
            Gen.Enum<Lifting>(),
            Gen.Enum<ProlapseWork>(),
            Gen.Int[4, 7],
            Gen.Int[42, 100]
        ),
        (guideline, everyone, follows, reading, moving) =>
            new StudioPolicies
            {
                Guideline = guideline,
                ClearanceForEveryone = everyone,
                LetterFollowsChange = follows,
                WeekReading = reading,
                SupineFrom = moving.Item1,
                Lifting = moving.Item2,
                ProlapseWork = moving.Item3,
                EffortMost = moving.Item4,
                ImpactAfterBirthDays = moving.Item5,
            }
    );

    public static readonly Gen<(
        HerSituation Her,
        ClassProfile Class,
        StudioPolicies Policies
    )> Case = Gen.Select(AClient, AClass, APolicy);

    /// <summary>Enough cases to meet most pairs of rules on every run.</summary>
    private const int Cases = 3000;

    public static Gen<string> OneOf(IReadOnlyList<string> words) =>
        Gen.Int[0, words.Count - 1].Select(at => words[at]);

    public static void AlwaysHolds<T>(this Gen<T> any, Func<T, bool> holds) =>
        any.Sample(holds, iter: Cases);

    public static void AlwaysHolds<T, TOther>(
        this Gen<(T, TOther)> any,
        Func<T, TOther, bool> holds
    ) => any.Sample(both => holds(both.Item1, both.Item2), iter: Cases);
}
