using System.Text.Json.Nodes;
using NodaTime;
using Studio.Api.Audit;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Records;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Clients;

namespace Studio.Api.Erasures;

/// <summary>Says what an erasure would do, and does it: in the caller's transaction, whole or not at all.</summary>
public sealed class ErasureOfClient(
    RuleBook book,
    IClock clock,
    StudioStore studio,
    Bookings bookings,
    HeldRows held,
    HealthAudit audit
)
{
    /// <summary>What would be done today.</summary>
    public async Task<ErasurePlan> PlanAsync(Read read, ClientRow client)
    {
        var policies = await PolicyStore.InForceAsync(read, book);
        var kept = await KeptAsync(read, client, policies);
        var wish = await ErasureStore.WishAsync(read, client.Id);
        return new ErasurePlan
        {
            Name = client.Name,
            AskedAt = wish?.AskedAt,
            AskedByHerself = wish?.ByHerself ?? false,
            Goes = await GoesAsync(read, client, kept.Select(k => k.Part).ToHashSet()),
            Stays =
            [
                .. kept.Select(k => new PartToKeep(
                    k.Part,
                    ErasureWords.Title(k.Part),
                    k.LastDay,
                    ErasureWords.Why(k.Part, policies)
                )),
            ],
            StaysWithoutName = ErasureWords.StaysWithoutName,
            Released = await read.ValueAsync<int>(
                """
                select count(*) from bookings b join sessions s on s.id = b.session_id
                 where b.client_id = @Id and b.status in ('booked', 'waiting') and s.starts_at > @now
                """,
                new { client.Id, now = clock.GetCurrentInstant() }
            ),
            Seen = Seen(kept),
        };
    }

    /// <summary>
    /// Erases a client: lets go of her bookings to come, sets apart what has to be kept, takes away the rest and closes
    /// her account. Refused when the name or what has to be kept is not what was shown.
    /// </summary>
    /// <returns>The key of the erasure.</returns>
    public async Task<Answer<long>> CarryOutAsync(
        Write write,
        Reader reader,
        ClientRow client,
        ErasureConfirmed confirmed
    )
    {
        if (
            !string.Equals(
                confirmed.Name.Trim(),
                client.Name.Trim(),
                StringComparison.OrdinalIgnoreCase
            )
        )
            return ErasureRefusals.OtherName;
        var kept = await KeptAsync(write, client, await PolicyStore.InForceAsync(write, book));
        if (confirmed.Seen != Seen(kept))
            return ErasureRefusals.OtherThanShown;

        await bookings.ReleaseAsync(write, client.Id, reader.AccountId);
        var at = clock.GetCurrentInstant();
        var record = await held.OfAsync(write, client.Id);
        var files = await ErasureSteps.FilesAsync(write, client.Id);

        await ErasureSteps.OpenDoorAsync(write, client.Id);
        var entries = await ErasureSteps.TakeAwayAsync(write, client.Id, at);
        var keepsFiles = kept.Any(k => k.Part == KeptPart.Health);
        var erasure = await ErasureSteps.RecordAsync(
            write,
            client.Id,
            reader.AccountId,
            entries,
            keepsFiles ? 0 : files.Count,
            at
        );
        foreach (var (part, lastDay) in kept)
        {
            var id = await ErasureStore.SetApartAsync(
                write,
                erasure,
                part,
                lastDay,
                PartOf(record, part, at).ToJsonString()
            );
            if (part == KeptPart.Health)
                await ErasureSteps.KeepFilesAsync(write, id, files);
        }

        if (!keepsFiles)
            await ErasureSteps.LetGoOfFilesAsync(write, files, at);
        await ErasureSteps.CloseDoorAsync(write);

        await audit.ChangedAsync(write, reader, client.Id, AuditKinds.Erasure);
        foreach (var topic in (string[])["client", "session", "flags", "moves", "erasures"])
            write.Tell(topic);
        return erasure;
    }

    private async Task<IReadOnlyList<(KeptPart Part, LocalDate LastDay)>> KeptAsync(
        Read read,
        ClientRow client,
        StudioPolicies policies
    ) =>
        Retention.On(
            studio.Today(client.Zone),
            await RetentionFacts.OfAsync(read, client, clock.GetCurrentInstant()),
            policies
        );

    private static string Seen(IEnumerable<(KeptPart Part, LocalDate LastDay)> kept) =>
        string.Join(';', kept.Select(k => $"{k.Part}:{k.LastDay:uuuu-MM-dd}"));

    // Whatever is kept says whose it is, and no more of her than it needs.
    private static JsonObject PartOf(JsonObject record, KeptPart part, Instant at)
    {
        string[] who =
            part == KeptPart.Contact
                ? ["name", "called", "phone", "email", "homeLocation", "joinedAt"]
                : ["name", "bornOn"];
        var client = HeldMeanings.Rows(record, "clients").Single();
        var rows = new JsonObject
        {
            ["clients"] = new JsonArray(
                new JsonObject(who.Select(k => KeyValuePair.Create(k, client[k]?.DeepClone())))
            ),
        };
        foreach (var table in HeldTables.All.Where(t => t.Part == part))
            rows[HeldRows.Camel(table.Name)] = record[HeldRows.Camel(table.Name)]!.DeepClone();
        return RecordFile.Of(rows, at);
    }

    private static async Task<IReadOnlyList<ErasedPart>> GoesAsync(
        Read read,
        ClientRow client,
        HashSet<KeptPart> kept
    )
    {
        var goes = new List<ErasedPart>();
        if (kept.Count == 0)
            goes.Add(new("Name", null));
        if (!kept.Contains(KeptPart.Contact))
            goes.Add(new("Phone number and e-mail address", null));
        if (client.EmergencyName.Length + client.EmergencyPhone.Length > 0)
            goes.Add(new("Emergency contact", null));
        if (client.HasAccount)
            goes.Add(new("Account and password; signed out everywhere", null));
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (
            var table in HeldTables.All.Where(t =>
                t.AtErasure == AtErasure.Go && (t.Part is not { } part || !kept.Contains(part))
            )
        )
        {
            var section = HeldLabels.Of(HeldRows.Camel(table.Name)).Section ?? table.Name;
            counts[section] =
                counts.GetValueOrDefault(section)
                + await read.ValueAsync<int>(
                    $"select count(*) from {table.Name} where {table.Of}",
                    new { clientId = client.Id, accountId = (long?)null }
                );
        }

        goes.AddRange(
            counts
                .Where(c => c.Value > 0)
                .Select(c => new ErasedPart(HeldLabels.TitleOf(c.Key), c.Value))
        );
        if (!kept.Contains(KeptPart.Contact))
            goes.Add(new("Whose the seats in past classes were", null));
        return goes;
    }
}
