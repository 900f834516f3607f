namespace Studio.Core.Catalogue;

/// <summary>What a class asks of a body, as far as a rule can speak of it.</summary>
public static class ClassTraits
{
    /// <summary>Flat on the back.</summary>
    public const string Supine = "supine";

    /// <summary>On the belly.</summary>
    public const string Prone = "prone";

    /// <summary>Front planks and hovering on all fours.</summary>
    public const string FrontSupport = "front-support";

    /// <summary>Curling the trunk under load.</summary>
    public const string LoadedFlexion = "loaded-flexion";

    /// <summary>Jumps and running.</summary>
    public const string Impact = "impact";

    /// <summary>Balances.</summary>
    public const string Balance = "balance";

    /// <summary>Quick changes of direction.</summary>
    public const string QuickTurns = "quick-turns";

    /// <summary>Moderate effort.</summary>
    public const string ModerateEffort = "moderate-effort";

    /// <summary>Talk and breath only: no physical load at all.</summary>
    public const string BreathOnly = "breath-only";

    /// <summary>Asymmetric or wide hips.</summary>
    public const string WideHips = "wide-hips";

    /// <summary>Load overhead.</summary>
    public const string Overhead = "overhead";

    /// <summary>Standing without moving.</summary>
    public const string StandingStill = "standing-still";

    /// <summary>A room heated above everyday warmth.</summary>
    public const string WarmRoom = "warm-room";

    // Those that a class can have and no movement.
    private static readonly Dictionary<string, string> OfClasses = new(StringComparer.Ordinal)
    {
        [ModerateEffort] = "Moderate effort",
        [BreathOnly] = "Talk and breath only",
        [WarmRoom] = "Warm room",
    };

    /// <summary>What a trait is called, of a class or a movement; null when there is no such code.</summary>
    public static string? NameOf(string trait) =>
        OfClasses.GetValueOrDefault(trait) ?? Movements.MovementTraits.NameOf(trait);

    /// <summary>All of them; the order has no meaning.</summary>
    public static IReadOnlySet<string> All { get; } =
        new HashSet<string>(StringComparer.Ordinal)
        {
            Supine,
            Prone,
            FrontSupport,
            LoadedFlexion,
            Impact,
            Balance,
            QuickTurns,
            ModerateEffort,
            BreathOnly,
            WideHips,
            Overhead,
            StandingStill,
            WarmRoom,
        };
}
