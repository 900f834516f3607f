using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Clearance;
using Studio.Api.Data;
using Studio.Api.Intensity;
using Studio.Api.Pregnancies;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Clearance;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;
using Studio.Core.Screenings;

namespace Studio.Api.Clients;

/// <summary>Puts a client's card together, as far as the reader may see it.</summary>
public sealed class ClientCards(RuleBook book, StudioStore studio, HealthChanges changes)
{
    /// <summary>The card.</summary>
    public async Task<ClientCard> OfAsync(Read read, ClientSeen seen)
    {
        var client = seen.Row;
        var today = studio.Today(client.Zone);
        var fits = await Fits.LoadAsync(read, book, [client.Id]);
        var her = fits.Of(client.Id);
        var situation = book.Stages.On(her.Pregnancy, today);
        var knowsAll = seen.Audience is Audience.Owner or Audience.Herself;
        var standing = ClearanceRules.On(
            her.Letters,
            her.Pregnancy,
            today,
            book.Stages,
            fits.Policies
        );
        var clearance = Clearance(standing, fits.Policies);
        var screening = Screening(her, today, fits.Policies);
        var ended = situation.Phase == Phase.Ended;
        var quiet = AfterBirth.IsQuiet(
            her.Pregnancy,
            today,
            await BookingStore.HasSeatAheadAsync(read, client.Id, changes.Now),
            fits.Policies
        );
        return new ClientCard
        {
            Id = client.Id,
            Name = client.Name,
            Called = client.Called,
            Phone = client.Phone,
            Email = client.Email,
            EmergencyName = client.EmergencyName,
            EmergencyPhone = client.EmergencyPhone,
            HomeLocationId = client.HomeLocationId,
            Zone = client.Zone,
            SharesConditions = client.SharesConditions,
            HasAccount = client.HasAccount,
            Phase = situation.Phase,
            Pregnancy = ended
                ? null
                : await PregnancyAsync(read, seen, her, situation, today, knowsAll),
            Clearance = clearance,
            Screening = screening,
            OnHold = her.Holds.Any(h => h.StandsOn(today)),
            Needs = ended
                ? []
                : Needs(
                    her,
                    situation,
                    clearance,
                    standing.Reminder,
                    screening,
                    fits.Policies,
                    seen.Audience,
                    quiet
                ),
            BornOn = knowsAll ? her.BirthDate : null,
            Intensity =
                knowsAll && !ended ? IntensityMessage.On(her, today, book, fits.Policies) : null,
            Factors = knowsAll ? await FactorsAsync(read, client.Id) : null,
            Tape = ended ? null : await TapeAsync(read, client.Id, her, fits, today),
        };
    }

    private async Task<PregnancyMessage?> PregnancyAsync(
        Read read,
        ClientSeen seen,
        HerSituation her,
        Situation situation,
        LocalDate today,
        bool knowsAll
    )
    {
        if (her.Pregnancy is not { } pregnancy || seen.Row.PregnancyId is not { } id)
            return null;
        var inForce = await PregnancyStore.InForceAsync(read, id);
        var next = book.Stages.Next(pregnancy, today);
        return new PregnancyMessage
        {
            DueDate = pregnancy.DueDate,
            Basis = inForce?.Basis,
            Explanation = inForce?.Explanation,
            Babies = knowsAll ? pregnancy.Babies : null,
            Age = situation.Age?.ToString(),
            AgeDays = situation.Age?.Days,
            Term = situation.Term,
            Stage = situation.Stage?.Code,
            StageName = situation.Stage?.Name,
            DaysSinceBirth = situation.DaysSinceBirth,
            BornOn = pregnancy.BornOn,
            BirthMode = knowsAll ? pregnancy.BirthMode : null,
            PastDue = situation.Phase == Phase.Pregnant && today > pregnancy.DueDate,
            MayHaveGivenBirth = situation.MayHaveGivenBirth,
            BirthReportable = BirthRules.CanBeReported(pregnancy, today),
            BirthRevocable =
                pregnancy is { BornOn: not null, DueDate: not null }
                && BirthEndpoints.MayTakeBack(
                    seen,
                    await PregnancyStore.ToldAtAsync(read, id),
                    changes
                ),
            NextStage = next is null
                ? null
                : new NextStage(next.Stage.Code, next.Stage.Name, next.From),
        };
    }

    private static ClearanceMessage Clearance(
        ClearanceStanding standing,
        StudioPolicies policies
    ) =>
        new(
            standing.Status,
            standing.ValidUntil,
            standing.Status switch
            {
                ClearanceStatus.Valid =>
                    $"Letter valid until {Wording.Date(standing.ValidUntil!.Value)}.",
                ClearanceStatus.EndsSoon =>
                    $"Letter ends on {Wording.Date(standing.ValidUntil!.Value)}; a new one is needed soon.",
                ClearanceStatus.Expired when standing.EndedByBirth =>
                    "The letter ended with the birth; a postnatal one is needed.",
                ClearanceStatus.Expired =>
                    $"Letter ended on {Wording.Date(standing.ValidUntil!.Value)}; a new one is needed.",
                ClearanceStatus.None => policies.ClearanceForEveryone
                    ? "No clearance letter yet; one is needed before the first class."
                    : "No clearance letter.",
            }
        );

    private ScreeningMessage Screening(HerSituation her, LocalDate today, StudioPolicies policies)
    {
        var status = ScreeningRules.On(her, today, book.Stages, policies);
        var on = her.Screening?.AnsweredOn;
        return new ScreeningMessage(
            status,
            on,
            status switch
            {
                ScreeningStatus.Current =>
                    $"Health questions answered on {Wording.Date(on!.Value)}.",
                ScreeningStatus.Due =>
                    $"Health questions were answered on {Wording.Date(on!.Value)}; they are due again.",
                ScreeningStatus.None => "Health questions not answered yet.",
            }
        );
    }

    private static List<Need> Needs(
        HerSituation her,
        Situation situation,
        ClearanceMessage clearance,
        LetterReminder reminder,
        ScreeningMessage screening,
        StudioPolicies policies,
        Audience audience,
        bool quiet
    )
    {
        var toHer = audience == Audience.Herself;
        var born = situation.Phase == Phase.Born;
        var needs = new List<Need>();
        if (!toHer && BirthRules.IsToBeRung(her.Pregnancy))
            needs.Add(
                new("ring-her", "Please ring her, kindly and without asking for anything.", null)
            );
        if (situation.Phase is Phase.Unknown or Phase.BeforeDates)
            needs.Add(
                new(
                    "dates",
                    toHer
                        ? "Please tell us your dates, so that we can find the classes that suit you."
                        : "Her dates are not known yet.",
                    null
                )
            );
        if (
            her.Holds.Any(h =>
                h.StandsOn(situation.On) && AfterBirth.Speaks(h, her.Pregnancy, quiet)
            )
        )
            needs.Add(
                new(
                    "hold",
                    toHer
                        ? "Your bookings are paused until we have a new letter from your clinician. Please speak to her or him first."
                        : "On hold until a new clearance letter is filed.",
                    null
                )
            );
        if (!quiet && screening.Status != ScreeningStatus.Current)
            needs.Add(
                new(
                    "screening",
                    !toHer ? screening.Says
                        : born
                            ? "Before your first class after the birth we ask you the health questions. There is no hurry."
                        : "Please answer the health questions with us before your next class.",
                    null
                )
            );
        // She hears of it four weeks ahead; the desk's own list begins when it is soon.
        if (
            !quiet
            && (
                toHer && reminder != LetterReminder.None
                || clearance.Status == ClearanceStatus.EndsSoon
                || clearance.Status != ClearanceStatus.Valid && policies.ClearanceForEveryone
            )
        )
            needs.Add(
                new(
                    "letter",
                    toHer ? LetterWords.Need(reminder, clearance.ValidUntil, born) : clearance.Says,
                    reminder == LetterReminder.None ? null : clearance.ValidUntil
                )
            );
        // For a person to follow. She herself is asked nothing: the birth can be told on her page all along.
        if (!toHer && situation.Phase == Phase.Pregnant && situation.On > her.Pregnancy?.DueDate)
            needs.Add(new("birth-word", "Her due date has passed and there is no word yet.", null));
        return needs;
    }

    private async Task<List<FactorMessage>> FactorsAsync(Read read, long clientId) =>
        [
            .. (await HealthStore.FactorsAsync(read, clientId)).Select(f =>
            {
                var factor = book.FactorOf(f.Code);
                return new FactorMessage(
                    f.Id,
                    f.Code,
                    factor?.Name ?? f.Code,
                    factor?.IsCondition ?? true,
                    f.FromOn,
                    f.ToOn
                );
            }),
        ];

    private async Task<Tape?> TapeAsync(
        Read read,
        long clientId,
        HerSituation her,
        Fits fits,
        LocalDate today
    )
    {
        if (her.Pregnancy is not { } pregnancy)
            return null;
        var bands = book.Stages.Bands(pregnancy);
        var start =
            pregnancy.DueDate?.PlusDays(-GestationalAge.AtDueDate) ?? pregnancy.BornOn!.Value;
        var born = pregnancy.BornOn ?? pregnancy.DueDate!.Value;
        var end = LocalDate.Max(born.PlusDays(7 * 26), today.PlusDays(28));

        var mine = (await BookingStore.OfAsync(read, clientId)).ToDictionary(b => b.SessionId);
        var sessions = await SessionStore.ListAsync(
            read,
            new SessionsWanted { ClientId = clientId }
        );
        return new Tape
        {
            Start = start,
            End = end,
            Today = today,
            DueDate = pregnancy.DueDate,
            BornOn = pregnancy.BornOn,
            Bands = [.. bands.Select(b => new TapeBand(b.Stage.Code, b.Stage.Name, b.From, b.To))],
            Letters =
            [
                .. her
                    .Letters.Select(l =>
                        (
                            l.IssuedOn,
                            Until: ClearanceRules.ValidUntil(
                                l,
                                pregnancy,
                                book.Stages,
                                fits.Policies
                            )
                        )
                    )
                    .Where(l => l.Until is not null)
                    .Select(l => new TapeLetter(l.IssuedOn, l.Until!.Value)),
            ],
            Bookings =
            [
                .. sessions.Select(s => new TapeBooking(
                    mine[s.Id].Id,
                    s.Id,
                    s.OnDate,
                    s.ClassName,
                    fits.Of(clientId, s).Verdict,
                    mine[s.Id].Status
                )),
            ],
        };
    }
}
