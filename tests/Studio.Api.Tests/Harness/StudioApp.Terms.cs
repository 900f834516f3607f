namespace Studio.Api.Tests.Harness;

public sealed partial class StudioApp
{
    /// <summary>A search for the best way to staff a term that has ended, with a result or as it was left.</summary>
    public Task<long> HasAssignment(string status = "finished") =>
        Insert(
            """
            insert into assignment_runs (from_on, to_on, asked, status, result, made_at, ended_at)
            values (@from, @to, json_object('from', @from, 'to', @to, 'change', 'all'), @status, @result, @at,
                    case @status when 'running' then null else @at end)
            """,
            new
            {
                from = Today,
                to = Today.PlusDays(6),
                status,
                result = status == "running"
                    ? null
                    : """
                    {"sessions":0,"free":0,"unstaffedBefore":0,"unstaffedAfter":0,"changes":[],"loads":[],
                     "unstaffed":[],"contradictions":[],"aims":[]}
                    """,
                at = Clock.GetCurrentInstant(),
            }
        );
}
