using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Studios;
using Studio.Core.Booking;
using Studio.Core.Catalogue;

namespace Studio.Api.Timetable;

/// <summary>A session in a list. Holds nothing about any one person.</summary>
public sealed record SessionSummary
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>The class.</summary>
    public required long ClassId { get; init; }

    /// <summary>Its code.</summary>
    public required string ClassCode { get; init; }

    /// <summary>Its name.</summary>
    public required string ClassName { get; init; }

    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Her name.</summary>
    public string? InstructorName { get; init; }

    /// <summary>The location.</summary>
    public required long LocationId { get; init; }

    /// <summary>Its name.</summary>
    public required string LocationName { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Its name.</summary>
    public required string RoomName { get; init; }

    /// <summary>IANA zone of the location.</summary>
    public required string Zone { get; init; }

    /// <summary>Start.</summary>
    public required Instant StartsAt { get; init; }

    /// <summary>End.</summary>
    public required Instant EndsAt { get; init; }

    /// <summary>The session's own date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock, "18:00".</summary>
    public required string StartsLocal { get; init; }

    /// <summary>End by the location's clock.</summary>
    public required string EndsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Seats taken.</summary>
    public required int SeatsTaken { get; init; }

    /// <summary>People waiting.</summary>
    public required int Waiting { get; init; }

    /// <summary>People checked in.</summary>
    public required int CheckedIn { get; init; }

    /// <summary>Whether it is held.</summary>
    public required SessionStatus Status { get; init; }

    /// <summary>Codes of the stages its class admits.</summary>
    public required IReadOnlyList<string> Stages { get; init; }

    /// <summary>How many people with a seat it no longer suits on its date; null where it was not asked for.</summary>
    public int? Unsuitable { get; init; }

    /// <summary>Its instructor lacks the class's qualification on that date; null when nobody teaches it yet.</summary>
    public bool? InstructorQualified { get; init; }
}

/// <summary>Makes summaries of sessions.</summary>
public sealed class SessionSummaries(RuleBook book)
{
    /// <summary>Summaries of these sessions, without a count of the people it no longer suits.</summary>
    public async Task<List<SessionSummary>> OfAsync(
        Read read,
        IReadOnlyCollection<SessionRow> sessions
    )
    {
        var classes = (await StudioStore.ClassesAsync(read)).ToDictionary(c => c.Id);
        var qualifications = (
            await read.ListAsync<QualificationSpan>(
                """
                select instructor_id as InstructorId, kind, issued_on as IssuedOn, expires_on as ExpiresOn
                  from qualifications where withdrawn_at is null
                """
            )
        ).ToLookup(q => (q.InstructorId, q.Kind));

        return
        [
            .. sessions.Select(s =>
            {
                var ends = s.EndsAt.InZone(DateTimeZoneProviders.Tzdb[s.Zone]).TimeOfDay;
                return new SessionSummary
                {
                    Id = s.Id,
                    ClassId = s.ClassId,
                    ClassCode = s.ClassCode,
                    ClassName = s.ClassName,
                    InstructorId = s.InstructorId,
                    InstructorName = s.InstructorName,
                    LocationId = s.LocationId,
                    LocationName = s.LocationName,
                    RoomId = s.RoomId,
                    RoomName = s.RoomName,
                    Zone = s.Zone,
                    StartsAt = s.StartsAt,
                    EndsAt = s.EndsAt,
                    On = s.OnDate,
                    StartsLocal = s.StartsLocal.ToString("HH:mm", null),
                    EndsLocal = ends.ToString("HH:mm", null),
                    Minutes = (int)(s.EndsAt - s.StartsAt).TotalMinutes,
                    Seats = s.Seats,
                    SeatsTaken = s.SeatsTaken - s.Unspoken,
                    Waiting = s.Waiting,
                    CheckedIn = s.CheckedIn,
                    Status = s.Status,
                    Stages = classes[s.ClassId].Stages,
                    InstructorQualified = s.InstructorId is { } instructor
                        ? qualifications[(instructor, classes[s.ClassId].NeedsQualification)]
                            .Any(q => q.IssuedOn <= s.OnDate && s.OnDate <= q.ExpiresOn)
                        : null,
                };
            }),
        ];
    }

    /// <summary>Summaries with the count of the people each no longer suits.</summary>
    public async Task<List<SessionSummary>> WithUnsuitableAsync(
        Read read,
        IReadOnlyCollection<SessionRow> sessions
    )
    {
        var bookings = (await BookingStore.InAsync(read, [.. sessions.Select(s => s.Id)]))
            .Where(b => b.Status == BookingStatus.Booked)
            .ToLookup(b => b.SessionId);
        var fits = await Fits.LoadAsync(
            read,
            book,
            [.. bookings.SelectMany(b => b).Select(b => b.ClientId).Distinct()]
        );
        var rows = sessions.ToDictionary(s => s.Id);
        return
        [
            .. (await OfAsync(read, sessions)).Select(s =>
                s with
                {
                    Unsuitable = bookings[s.Id]
                        .Count(b =>
                            !fits.HasEnded(b.ClientId)
                            && fits.Of(b.ClientId, rows[s.Id]).Verdict >= Suits.NeedsClearance
                        ),
                }
            ),
        ];
    }

    private sealed record QualificationSpan
    {
        public long InstructorId { get; init; }
        public string Kind { get; init; } = "";
        public LocalDate IssuedOn { get; init; }
        public LocalDate ExpiresOn { get; init; }
    }
}
