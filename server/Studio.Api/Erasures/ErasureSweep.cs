using NodaTime;
using Studio.Api.Audit;
using Studio.Api.Data;

namespace Studio.Api.Erasures;

/// <summary>Job 4: erases for good what was set apart, once its last day has passed.</summary>
public sealed class ErasureSweep(IClock clock)
{
    /// <summary>Everything at the locations of a zone, as of its local date; how many parts were erased.</summary>
    public async Task<int> ZoneAsync(Write write, string zone, LocalDate today)
    {
        var at = clock.GetCurrentInstant();
        var over = await ErasureStore.OverAsync(write, zone, today);
        foreach (var part in over)
        {
            await ErasureStore.EndAsync(write, part.Id, at);
            await AuditStore.AddAsync(
                write,
                new AuditRow
                {
                    At = at,
                    SeenAs = "program",
                    Act = AuditAct.Change,
                    Kind = AuditKinds.Erasure,
                },
                [part.ClientId]
            );
        }

        if (over.Count > 0)
            write.Tell("erasures");
        return over.Count;
    }
}
