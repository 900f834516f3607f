using Studio.Core.Catalogue;
using Studio.Core.Clients;

namespace Studio.Api.Erasures;

/// <summary>The words around an erasure.</summary>
public static class ErasureWords
{
    /// <summary>What is put in the place of a name.</summary>
    public const string Nobody = "Erased client";

    /// <summary>What stays for good, and names nobody.</summary>
    public static IReadOnlyList<string> StaysWithoutName { get; } =
    [
        "Seats taken in past classes are still counted, without a name.",
        "The audit keeps that somebody's record was read or changed, and that it was erased: numbers and moments, no name and nothing of health.",
    ];

    /// <summary>What a part is.</summary>
    public static string Title(KeptPart part) =>
        part switch
        {
            KeptPart.Health =>
                "Health record with its letters and notes, and the name and date of birth",
            KeptPart.Incidents =>
                "Warning signs, incidents and holds, and the name and date of birth",
            KeptPart.Contact => "Name, phone number, e-mail address and bookings",
        };

    /// <summary>Why it has to be kept.</summary>
    public static string Why(KeptPart part, StudioPolicies policies) =>
        part switch
        {
            KeptPart.Health =>
                $"The studio keeps health records for {Years(policies.HealthKeptYears)} after the last class or a later birth. {Meanwhile}",
            KeptPart.Incidents =>
                $"The studio keeps what happened for {Years(policies.HealthKeptYears)} after its newest day. {Meanwhile}",
            KeptPart.Contact =>
                $"The studio keeps contact details and bookings for {Years(policies.ContactKeptYears)} after the last class. {Meanwhile}",
        };

    private const string Meanwhile =
        "It is set apart and sealed: only the owner can read it, nothing is done with it, and after that day it is erased for good.";

    private static string Years(int years) => years == 1 ? "1 year" : $"{years} years";
}
