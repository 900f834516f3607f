using NodaTime;
using Studio.Api.Data;
using Studio.Api.Pregnancies;
using Studio.Core;
using Studio.Core.Clients;
using Studio.Core.Pregnancies;

namespace Studio.Api.Clients;

/// <summary>Takes a client in: from the form or from an import, by the same checks.</summary>
public sealed class ClientIntake(IClock clock)
{
    /// <summary>Adds a client and what is known of her dates; the caller commits.</summary>
    public async Task<Answer<long>> AddAsync(
        Write write,
        NewClient request,
        long? by,
        LocalDate? endedOn = null
    )
    {
        var now = clock.GetCurrentInstant();
        var row = Contact(request, new ClientRow { HomeLocationId = request.HomeLocationId });
        if (WhyNot(row) is { } refusal)
            return refusal;
        var zone = await write.FindAsync<string>(
            "select zone from locations where id = @HomeLocationId",
            new { request.HomeLocationId }
        );
        if (zone is null)
            return ClientRefusals.Invalid(
                "no-such-location",
                "There is no such location.",
                "homeLocationId"
            );
        if (await ClientStore.EmailTakenAsync(write, row.Email, 0))
            return ClientRefusals.EmailTaken;
        var today = now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
        if (
            !Reckon(
                    request.Dating,
                    request.BornOn,
                    request.BirthMode,
                    request.Babies,
                    endedOn ?? today
                )
                .TryGet(out var dates, out refusal)
        )
            return refusal;

        var id = await ClientStore.AddAsync(write, row, now);
        if (dates.Pregnancy is { } pregnancy)
        {
            var pregnancyId = await PregnancyStore.BeginAsync(
                write,
                id,
                pregnancy with
                {
                    EndedOn = endedOn,
                }
            );
            if (dates.Evidence is { } evidence)
                await PregnancyStore.AddEvidenceAsync(write, pregnancyId, evidence, now, by);
        }

        return id;
    }

    /// <summary>Contact details as typed, over what was there before; what is left out stays.</summary>
    public static ClientRow Contact(ContactRequest request, ClientRow before)
    {
        var name = request.Name.Trim();
        var called = (request.Called ?? before.Called).Trim();
        return before with
        {
            Name = name,
            Called = called.Length == 0 ? name : called,
            Phone = (request.Phone ?? before.Phone).Trim(),
            Email = (request.Email ?? before.Email).Trim(),
            EmergencyName = (request.EmergencyName ?? before.EmergencyName).Trim(),
            EmergencyPhone = (request.EmergencyPhone ?? before.EmergencyPhone).Trim(),
            SharesConditions = request.SharesConditions ?? before.SharesConditions,
        };
    }

    /// <summary>Why these contact details cannot be kept, or null.</summary>
    public static Refusal? WhyNot(ClientRow row) =>
        row.Name.Length == 0
            ? ClientRefusals.Invalid("name-missing", "Please enter her name.", "name")
        : row.Phone.Length == 0 && row.Email.Length == 0
            ? ClientRefusals.Invalid(
                "no-contact",
                "Please enter a phone number or an e-mail address, so that she can be reached.",
                "phone"
            )
        : null;

    /// <summary>Her pregnancy by what was given, checked against a day.</summary>
    /// <param name="given">What dates it.</param>
    /// <param name="bornOn">The day of the birth.</param>
    /// <param name="mode">How the baby was born.</param>
    /// <param name="babies">How many.</param>
    /// <param name="today">Today, or the day the pregnancy ended.</param>
    public static Answer<Dates> Reckon(
        EvidenceRequest? given,
        LocalDate? bornOn,
        BirthMode? mode,
        int? babies,
        LocalDate today
    )
    {
        if (bornOn > today)
            return ClientRefusals.Invalid(
                "born-in-future",
                "The date of birth lies in the future.",
                "bornOn"
            );
        if (mode is not null && bornOn is null)
            return ClientRefusals.Invalid(
                "birth-without-date",
                "How the baby was born is given, but not when.",
                "bornOn"
            );

        DatingEvidence? evidence = null;
        LocalDate? due = null;
        if (given is not null && given != new EvidenceRequest())
        {
            if (!given.ToEvidence().TryGet(out evidence, out var refusal))
                return refusal;
            if (!Dating.Reckon(evidence).TryGet(out var reckoned, out refusal))
                return refusal;
            due = reckoned.On;
            // Her age today, or at the birth when that has been.
            if (Dating.AgeOn(bornOn ?? today, due.Value).Refusal is { } impossible)
                return impossible;
        }

        return due is null && bornOn is null
            ? new Dates(null, null)
            : new Dates(
                new Pregnancy
                {
                    DueDate = due,
                    Babies = babies ?? 1,
                    BornOn = bornOn,
                    BirthMode = bornOn is null ? null : mode ?? BirthMode.Unknown,
                },
                evidence
            );
    }

    /// <summary>A pregnancy and what dated it.</summary>
    public sealed record Dates(Pregnancy? Pregnancy, DatingEvidence? Evidence);
}
