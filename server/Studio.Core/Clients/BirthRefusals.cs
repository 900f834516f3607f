using NodaTime;
using Studio.Core.Pregnancies;

namespace Studio.Core.Clients;

/// <summary>Every way of saying no to a change of a birth, a loss or a return.</summary>
public static class BirthRefusals
{
    /// <summary>There is no birth to correct or take back.</summary>
    public static readonly Refusal NoBirth = new(
        RefusalKind.Conflict,
        "no-birth",
        "No birth is recorded. Report it first."
    );

    /// <summary>The day has passed on which it could be taken back.</summary>
    public static readonly Refusal Stands = new(
        RefusalKind.NotAllowed,
        "birth-stands",
        "A birth is taken back here only on the day it was reported. Please ask the owner, who can do it any day. Nothing was changed."
    );

    /// <summary>Without the birth nothing would say where she is.</summary>
    public static readonly Refusal NoDueDate = new(
        RefusalKind.Conflict,
        "no-due-date",
        "There is no due date to go back to. Enter her dates first, then take the birth back."
    );

    /// <summary>Her page is open.</summary>
    public static readonly Refusal NotEnded = new(
        RefusalKind.Conflict,
        "not-ended",
        "Her page is open already: nothing has to be opened for her."
    );

    /// <summary>Nothing says where she is.</summary>
    public static readonly Refusal NoDates = new(
        RefusalKind.Invalid,
        "dates-missing",
        "Enter what dates the new pregnancy, or the day she gave birth.",
        "bornOn"
    );

    /// <summary>A birth is on record with another day or mode.</summary>
    public static Refusal Known(LocalDate on) =>
        new(
            RefusalKind.Conflict,
            "birth-known",
            $"The birth on {Wording.Date(on)} is recorded already. If that is not right, correct it; nothing was changed.",
            "on"
        );

    /// <summary>The day lies before the birth.</summary>
    public static Refusal BeforeBirth(LocalDate on) =>
        new(
            RefusalKind.Invalid,
            "before-birth",
            $"The day lies before the birth on {Wording.Date(on)}. Leave it out, or choose a later one.",
            "on"
        );
}
