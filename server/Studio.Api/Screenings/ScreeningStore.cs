using NodaTime;
using Studio.Api.Data;
using Studio.Core.Screenings;

namespace Studio.Api.Screenings;

/// <summary>Answered screenings.</summary>
public static class ScreeningStore
{
    /// <summary>Records an outcome without its answers: from a file, or asked on paper.</summary>
    public static Task<long> AddOutcomeAsync(
        Write write,
        long clientId,
        LocalDate answeredOn,
        ScreeningOutcome outcome,
        Instant at,
        long? by
    ) =>
        write.InsertAsync(
            """
            insert into screenings (client_id, answered_on, outcome, entered_at, entered_by)
            values (@clientId, @answeredOn, @outcome, @at, @by)
            """,
            new
            {
                clientId,
                answeredOn,
                outcome = Outcomes.Close(write.Seal, outcome),
                at,
                by,
            }
        );
}
