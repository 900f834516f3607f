using Studio.Core.Catalogue;

namespace Studio.Core.Movements;

/// <summary>The positions a movement is done in. Those a class trait also names have its code.</summary>
public static class Positions
{
    /// <summary>Flat on the back.</summary>
    public const string Supine = ClassTraits.Supine;

    /// <summary>On the belly.</summary>
    public const string Prone = ClassTraits.Prone;

    /// <summary>Front planks and hovering on all fours, on the knees too.</summary>
    public const string FrontSupport = ClassTraits.FrontSupport;

    /// <summary>Standing.</summary>
    public const string Standing = "standing";

    /// <summary>Seated, and leaning back propped up.</summary>
    public const string Seated = "seated";

    /// <summary>On the knees with the trunk up or leaning forward.</summary>
    public const string Kneeling = "kneeling";

    /// <summary>On hands and knees, or on hands and feet with the hips high.</summary>
    public const string Quadruped = "quadruped";

    /// <summary>On the side, side planks included.</summary>
    public const string SideLying = "side-lying";

    /// <summary>Every code, with its words for people.</summary>
    public static IReadOnlyDictionary<string, string> All { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            [Standing] = "Standing",
            [Seated] = "Seated",
            [Kneeling] = "Kneeling",
            [Quadruped] = "Hands and knees",
            [SideLying] = "On the side",
            [Supine] = "Flat on the back",
            [Prone] = "On the belly",
            [FrontSupport] = "Front plank or hover",
        };
}

/// <summary>What a movement asks of a body. Traits a class can have too have the class trait's code.</summary>
public static class MovementTraits
{
    /// <summary>Curling the trunk under load.</summary>
    public const string LoadedFlexion = ClassTraits.LoadedFlexion;

    /// <summary>Turning with the belly shut in, towards the front leg or over a fixed pelvis.</summary>
    public const string ClosedRotation = "closed-rotation";

    /// <summary>Bending deep backwards, or letting the spine sag.</summary>
    public const string DeepExtension = "deep-extension";

    /// <summary>Bending to the side.</summary>
    public const string SideBend = "side-bend";

    /// <summary>Jumps, drops and running.</summary>
    public const string Impact = ClassTraits.Impact;

    /// <summary>Standing on one leg, on a line, on the toes, or on something that rolls.</summary>
    public const string Balance = ClassTraits.Balance;

    /// <summary>Hard holds and strains in which the breath is easily held.</summary>
    public const string BreathHold = "breath-hold";

    /// <summary>Heavy weights.</summary>
    public const string HeavyLoad = "heavy-load";

    /// <summary>Weight or band above the shoulders; empty arms do not count.</summary>
    public const string Overhead = ClassTraits.Overhead;

    /// <summary>Weight on hands bent back at the wrist.</summary>
    public const string WristLoad = "wrist-load";

    /// <summary>Knees or feet wide apart.</summary>
    public const string WideHips = ClassTraits.WideHips;

    /// <summary>One hip bent, turned or loaded more than the other.</summary>
    public const string AsymmetricHips = "asymmetric-hips";

    /// <summary>Hips lower than the knees.</summary>
    public const string DeepSquat = "deep-squat";

    /// <summary>Head lower than the heart.</summary>
    public const string HeadLow = "head-low";

    /// <summary>Quick changes of direction.</summary>
    public const string QuickTurns = ClassTraits.QuickTurns;

    /// <summary>Standing without moving.</summary>
    public const string StandingStill = ClassTraits.StandingStill;

    /// <summary>Listed flat on the back, and done as well leaning back on a wedge.</summary>
    public const string WorksPropped = "works-propped";

    /// <summary>Every code, with its words for people.</summary>
    public static IReadOnlyDictionary<string, string> All { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            [LoadedFlexion] = "Curling the trunk under load",
            [ClosedRotation] = "Closed twist",
            [DeepExtension] = "Deep back bend",
            [SideBend] = "Side bend",
            [Impact] = "Impact",
            [Balance] = "Balance",
            [BreathHold] = "Hard hold or strain",
            [HeavyLoad] = "Heavy weight",
            [Overhead] = "Load overhead",
            [WristLoad] = "Weight on the wrists",
            [WideHips] = "Wide hips",
            [AsymmetricHips] = "Uneven hips",
            [DeepSquat] = "Deep squat",
            [HeadLow] = "Head below heart",
            [QuickTurns] = "Quick turns",
            [StandingStill] = "Standing still",
            [WorksPropped] = "Works propped up",
        };

    /// <summary>What a position or trait is called; null when there is no such code.</summary>
    public static string? NameOf(string positionOrTrait) =>
        All.GetValueOrDefault(positionOrTrait) ?? Positions.All.GetValueOrDefault(positionOrTrait);
}

/// <summary>The groups a class draws its movements from.</summary>
public static class MovementGroups
{
    /// <summary>Every code in the order of a class, with its words for people.</summary>
    public static IReadOnlyDictionary<string, string> All { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["warm-up"] = "Warm-up",
            ["standing-strength"] = "Standing strength",
            ["lower-body"] = "Lower body",
            ["upper-body"] = "Upper body",
            ["core"] = "Core",
            ["pelvic-floor-breath"] = "Pelvic floor and breath",
            ["side-lying"] = "Side-lying",
            ["all-fours"] = "All fours",
            ["stretch"] = "Stretch",
            ["balance"] = "Balance",
            ["cardio"] = "Low-impact cardio",
            ["cool-down"] = "Cool-down",
        };
}
