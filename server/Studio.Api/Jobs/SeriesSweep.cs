using Studio.Api.Data;
using Studio.Api.Timetable;

namespace Studio.Api.Jobs;

/// <summary>Lays series out as far ahead as the studio plans.</summary>
public sealed class SeriesSweep(SeriesPlans plans)
{
    /// <summary>The series at one zone's locations; how many sessions were made. Again changes nothing.</summary>
    public async Task<int> ZoneAsync(Write write, string zone) =>
        await plans.LayOutAsync(
            write,
            [.. (await SeriesStore.ListAsync(write)).Where(s => s.Zone == zone)]
        );
}
