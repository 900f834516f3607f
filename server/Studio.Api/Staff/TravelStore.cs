using Studio.Api.Data;

namespace Studio.Api.Staff;

/// <summary>How long the ways between locations are.</summary>
public static class TravelStore
{
    /// <summary>The ways that are known, in minutes.</summary>
    public static Task<List<TravelTime>> ListAsync(Read read) =>
        read.ListAsync<TravelTime>(
            """
            select from_location_id as FromLocationId, to_location_id as ToLocationId, minutes from travel_times
            """
        );

    /// <summary>Puts one way in the place of what was known of it; without minutes it is not known any longer.</summary>
    public static Task SetAsync(Write write, TravelTime time) =>
        write.ExecuteAsync(
            time.Minutes is null
                ? """
                delete from travel_times where from_location_id = @FromLocationId and to_location_id = @ToLocationId
                """
                : """
                insert into travel_times (from_location_id, to_location_id, minutes)
                values (@FromLocationId, @ToLocationId, @Minutes)
                on conflict (from_location_id, to_location_id) do update set minutes = @Minutes
                """,
            time
        );
}
