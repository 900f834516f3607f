using NodaTime;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Api.Clearance;

/// <summary>Makes messages of letters.</summary>
public static class LetterWords
{
    /// <summary>The letter for a reader.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="her">Hers.</param>
    /// <param name="today">Today at her location.</param>
    /// <param name="book">The rules.</param>
    /// <param name="policies">The policies in force.</param>
    /// <param name="readsAll">The reader may know what stands in it; the front desk may not.</param>
    public static LetterMessage For(
        LetterRow letter,
        HerSituation her,
        LocalDate today,
        RuleBook book,
        StudioPolicies policies,
        bool readsAll
    )
    {
        var until = letter
            is { State: LetterState.Counts, IssuedOn: { } issued, ExpiresOn: { } expires }
            ? ClearanceRules.ValidUntil(
                new ClearanceLetter(issued, expires, letter.WithdrawnAt is not null),
                her.Pregnancy,
                book.Stages,
                policies
            )
            : null;
        return new LetterMessage
        {
            Id = letter.Id,
            ClientId = letter.ClientId,
            Name = letter.Name,
            State = letter.State,
            Says = Says(letter, until, today),
            FiledAt = letter.EnteredAt,
            OnPaper = letter.OnPaper,
            MediaType = readsAll ? letter.MediaType : null,
            IssuedOn = letter.IssuedOn,
            CountsUntil = until,
            Withdrawn = letter.WithdrawnAt is not null,
            IssuedBy = readsAll ? letter.IssuedBy : null,
            ExpiresOn = readsAll ? letter.ExpiresOn : null,
            Terms = readsAll && letter.State == LetterState.Counts ? Terms(letter) : null,
            RefusedBecause = readsAll ? letter.RefusedBecause : null,
            ReviewedBy = readsAll ? letter.ReviewedBy : null,
            ReviewedAt = letter.ReviewedAt,
            // All that whoever reads letters is told of a warning sign: a letter from before it lifts nothing.
            HeldSince =
                readsAll && letter.State == LetterState.Waiting
                    ? her.Holds.Where(h => h.StandsOn(today)).Max(h => (LocalDate?)h.From)
                    : null,
        };
    }

    /// <summary>What she is asked for, the nearer the end the plainer.</summary>
    /// <param name="reminder">How near the end of the letter that counts is; none when no letter does.</param>
    /// <param name="until">Its last day.</param>
    /// <param name="afterBirth">She has given birth.</param>
    public static string Need(LetterReminder reminder, LocalDate? until, bool afterBirth) =>
        reminder switch
        {
            LetterReminder.None when afterBirth =>
                "When you would like to come back: please bring a letter from your midwife or doctor that was written after the birth.",
            LetterReminder.None =>
                "Please send or bring a letter from your midwife or doctor that says you may exercise.",
            LetterReminder.First =>
                $"Your clinician's letter counts until {Wording.Date(until!.Value)}. At your next visit, please ask for a new one.",
            LetterReminder.Soon =>
                $"Your clinician's letter ends on {Wording.Date(until!.Value)}. Please ask for a new one now, so that you keep your place in class.",
            LetterReminder.Last =>
                $"Your clinician's letter ends on {Wording.Date(until!.Value)}. After that day you cannot take part until a new one has been read.",
        };

    private static string Says(LetterRow letter, LocalDate? until, LocalDate today) =>
        letter.WithdrawnAt is not null
            ? "Taken back: it does not count."
            : letter.State switch
            {
                LetterState.Waiting => "Waiting to be read. It counts once somebody has read it.",
                LetterState.Refused => "Read, and it cannot count.",
                LetterState.Counts when until is null => "It does not count.",
                LetterState.Counts when until < today =>
                    $"Counted until {Wording.Date(until.Value)}.",
                LetterState.Counts => $"Counts until {Wording.Date(until.Value)}.",
            };

    private static LetterTermsMessage Terms(LetterRow letter) =>
        new()
        {
            LeaveOut = [.. letter.Terms.LeaveOut.Order(StringComparer.Ordinal)],
            LeaveOutWords =
            [
                .. letter
                    .Terms.LeaveOut.Order(StringComparer.Ordinal)
                    .Select(code => MovementTraits.NameOf(code) ?? code),
            ],
            EffortMost = letter.Terms.EffortMost,
            HeartRateMost = letter.Terms.HeartRateMost,
            Words = letter.Terms.Words,
            ReplacesEarlier = letter.ReplacesEarlier,
        };
}
