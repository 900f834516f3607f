using NodaTime;

namespace Studio.Core.Clearance;

/// <summary>A clinician's letter, as far as the rules need it.</summary>
/// <param name="IssuedOn">The day it was written; the first day it may count.</param>
/// <param name="ExpiresOn">Its own last day: it still counts on that day.</param>
/// <param name="Withdrawn">Taken back: it never counts.</param>
public sealed record ClearanceLetter(
    LocalDate IssuedOn,
    LocalDate ExpiresOn,
    bool Withdrawn = false
);
