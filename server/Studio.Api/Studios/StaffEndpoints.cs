using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Rosters;
using Studio.Core;

namespace Studio.Api.Studios;

/// <summary>How a qualification stands today.</summary>
public enum QualificationStatus
{
    /// <summary>Valid.</summary>
    Valid,

    /// <summary>Valid, and ends within 60 days.</summary>
    EndsSoon,

    /// <summary>Ended.</summary>
    Expired,
}

/// <summary>A qualification.</summary>
public sealed record QualificationMessage(
    long Id,
    string Kind,
    LocalDate IssuedOn,
    LocalDate ExpiresOn,
    QualificationStatus Status
);

/// <summary>An instructor.</summary>
public sealed record InstructorMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>E-mail address.</summary>
    public required string Email { get; init; }

    /// <summary>Phone.</summary>
    public required string Phone { get; init; }

    /// <summary>She can sign in.</summary>
    public required bool HasAccount { get; init; }

    /// <summary>Sessions to come.</summary>
    public required int SessionsAhead { get; init; }

    /// <summary>Her qualifications, what ends first comes first.</summary>
    public required IReadOnlyList<QualificationMessage> Qualifications { get; init; }
}

/// <summary>A qualification to add.</summary>
public sealed record QualificationRequest
{
    /// <summary>Its kind; classes name the kind they need.</summary>
    [Required, StringLength(60, MinimumLength = 1)]
    public required string Kind { get; init; }

    /// <summary>The day it was issued.</summary>
    public required LocalDate IssuedOn { get; init; }

    /// <summary>Its last day.</summary>
    public required LocalDate ExpiresOn { get; init; }
}

/// <summary>Instructors and their qualifications.</summary>
public static class StaffEndpoints
{
    private const int SoonDays = 60;

    private static readonly Refusal NoSuchInstructor = new(
        RefusalKind.NotFound,
        "no-such-instructor",
        "There is no such instructor."
    );

    private static readonly Refusal LastBeforeFirst = new(
        RefusalKind.Invalid,
        "bad-range",
        "The last day lies before the day it was issued.",
        "expiresOn"
    );

    private static readonly Refusal FiledAlready = new(
        RefusalKind.Conflict,
        "filed-already",
        "A qualification of this kind with this date of issue is filed already.",
        "issuedOn"
    );

    /// <summary>Maps the routes.</summary>
    public static void MapStaff(this IEndpointRouteBuilder app)
    {
        var staff = app.MapGroup("/api/instructors")
            .WithTags("Staff")
            .RequireAuthorization(Policies.Owner);
        staff.MapGet("/", ListAsync).WithName("Instructors");
        staff
            .MapPost("/{instructorId}/qualifications", AddAsync)
            .WithName("AddQualification")
            .ProducesProblem(400)
            .ProducesProblem(404)
            .ProducesProblem(409);
    }

    private static async Task<List<InstructorMessage>> ListAsync(
        Database database,
        StudioStore studio,
        IClock clock
    )
    {
        var today = (await studio.AboutAsync()).Today;
        await using var read = await database.ReadAsync();
        var qualifications = (
            await read.ListAsync<QualificationRow>(
                """
                select id, instructor_id as InstructorId, kind, issued_on as IssuedOn, expires_on as ExpiresOn
                  from qualifications order by expires_on, id
                """
            )
        ).ToLookup(q => q.InstructorId);
        return
        [
            .. (
                await read.ListAsync<InstructorRow>(
                    """
                    select i.id, i.name, i.called, i.email, i.phone, i.account_id is not null as HasAccount,
                           (select count(*) from sessions s
                             where s.instructor_id = i.id and s.status = 'open' and s.starts_at > @now) as SessionsAhead
                      from instructors i order by i.name, i.id
                    """,
                    new { now = clock.GetCurrentInstant() }
                )
            ).Select(i => new InstructorMessage
            {
                Id = i.Id,
                Name = i.Name,
                Called = i.Called,
                Email = i.Email,
                Phone = i.Phone,
                HasAccount = i.HasAccount,
                SessionsAhead = i.SessionsAhead,
                Qualifications =
                [
                    .. qualifications[i.Id]
                        .Select(q => new QualificationMessage(
                            q.Id,
                            q.Kind,
                            q.IssuedOn,
                            q.ExpiresOn,
                            q.ExpiresOn < today ? QualificationStatus.Expired
                                : q.ExpiresOn <= today.PlusDays(SoonDays)
                                    ? QualificationStatus.EndsSoon
                                : QualificationStatus.Valid
                        )),
                ],
            }),
        ];
    }

    private static async Task<Results<Created<Made>, ProblemHttpResult>> AddAsync(
        long instructorId,
        QualificationRequest request,
        Database database,
        FlagSweep flags
    )
    {
        if (request.ExpiresOn < request.IssuedOn)
            return LastBeforeFirst.ToProblem();
        await using var write = await database.BeginWriteAsync();
        if (
            await write.FindAsync<long?>(
                "select id from instructors where id = @instructorId",
                new { instructorId }
            )
            is null
        )
            return NoSuchInstructor.ToProblem();
        var parameters = new
        {
            instructorId,
            kind = request.Kind.Trim(),
            request.IssuedOn,
            request.ExpiresOn,
        };
        var id = await write.FindAsync<long?>(
            """
            insert into qualifications (instructor_id, kind, issued_on, expires_on)
            values (@instructorId, @kind, @IssuedOn, @ExpiresOn)
            on conflict do nothing
            returning id
            """,
            parameters
        );
        if (id is null)
            return FiledAlready.ToProblem();
        await flags.SessionsAsync(write);
        write.Tell("session");
        await write.CommitAsync();
        return TypedResults.Created($"/api/instructors/{instructorId}", new Made(id.Value));
    }

    private sealed record InstructorRow
    {
        public long Id { get; init; }
        public string Name { get; init; } = "";
        public string Called { get; init; } = "";
        public string Email { get; init; } = "";
        public string Phone { get; init; } = "";
        public bool HasAccount { get; init; }
        public int SessionsAhead { get; init; }
    }

    private sealed record QualificationRow
    {
        public long Id { get; init; }
        public long InstructorId { get; init; }
        public string Kind { get; init; } = "";
        public LocalDate IssuedOn { get; init; }
        public LocalDate ExpiresOn { get; init; }
    }
}
