using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>Whether a birth can be what was reported.</summary>
public static class BirthRules
{
    /// <summary>Earliest age at which a birth can be reported: 20w 0d, the usual reporting limit (from memory).</summary>
    public static readonly GestationalAge Earliest = GestationalAge.Of(20, 0);

    /// <summary>
    /// Whether a birth can be reported on a day: from <see cref="Earliest"/> on while none is, and no loss either. It is
    /// offered in plain sight only once she may have given birth (<see cref="Situation.MayHaveGivenBirth"/>).
    /// </summary>
    public static bool CanBeReported(Pregnancy? pregnancy, LocalDate today) =>
        pregnancy is { BornOn: null, EndedOn: null, DueDate: { } due }
        && GestationalAge.On(today, due).Days >= Earliest.Days;

    /// <summary>
    /// After a birth before 37w 0d that was reported here, a person rings her; until that is noted nothing is asked of her.
    /// </summary>
    public static bool IsToBeRung(Pregnancy? pregnancy) =>
        pregnancy is { BornOn: { } born, AwaitsCall: true } && IsPreterm(pregnancy, born);

    /// <summary>Why a birth on that day cannot be recorded, or null.</summary>
    public static Refusal? WhyNot(Pregnancy pregnancy, LocalDate on, LocalDate today)
    {
        if (on > today)
            return Invalid(
                "birth-in-future",
                "The date of birth lies in the future. Please check it."
            );
        if (pregnancy.DueDate is not { } due)
            return null;
        var age = GestationalAge.On(on, due);
        return age.Days < Earliest.Days
                ? Invalid(
                    "birth-too-early",
                    $"By her due date she was {age} that day. Please check the date; if the pregnancy has ended, the owner can record it quietly."
                )
            : age.Days > GestationalAge.Greatest
                ? Invalid(
                    "birth-too-late",
                    $"By her due date she would have been {age} that day. Please check both dates."
                )
            : null;
    }

    /// <summary>Born before 37w 0d (ACOG/SMFM, Committee Opinion 579, 2013); false when the due date is not known.</summary>
    public static bool IsPreterm(Pregnancy pregnancy, LocalDate on) =>
        pregnancy.DueDate is { } due
        && GestationalAge.On(on, due).Days < GestationalAge.AtEarlyTerm;

    private static Refusal Invalid(string code, string message) =>
        new(RefusalKind.Invalid, code, message, "on");
}
