using NodaTime;
using Studio.Api.Data;
using Studio.Core.Staff;

namespace Studio.Api.Staff;

/// <summary>What is told of the people who teach.</summary>
public static class StaffPages
{
    private const int LeaveBehindDays = 366;

    /// <summary>Everybody, for the owner.</summary>
    public static async Task<List<InstructorMessage>> ListAsync(
        Read read,
        LocalDate today,
        Instant now
    )
    {
        var held = (await StaffStore.QualificationsAsync(read))
            .Where(q => q.WithdrawnAt is null)
            .ToLookup(q => q.InstructorId);
        var ahead = (await StaffStore.AheadAsync(read, now)).ToLookup(s => s.InstructorId);
        var leave = (await StaffStore.LeaveAsync(read, today.PlusDays(-1))).ToLookup(l =>
            l.InstructorId
        );
        var monday = TaughtHours.MondayOf(today);
        var week = (await StaffStore.SessionsAsync(read, monday, monday.PlusDays(6))).ToLookup(s =>
            s.InstructorId
        );
        return
        [
            .. (await StaffStore.ListAsync(read)).Select(i => new InstructorMessage
            {
                Id = i.Id,
                Name = i.Name,
                Called = i.Called,
                Email = i.Email,
                Phone = i.Phone,
                HasAccount = i.HasAccount,
                SessionsAhead = ahead[i.Id].Count(),
                SessionsUnqualified = ahead[i.Id].Count(s => !Holds(held[i.Id], s)),
                SessionsAbsent = ahead[i.Id]
                    .Count(s =>
                        i.LeftOn <= s.OnDate
                        || leave[i.Id].Any(l => l.From <= s.OnDate && s.OnDate <= l.To)
                    ),
                MinutesThisWeek = week[i.Id].Sum(s => s.Minutes),
                WeeklyMinutesMost = i.WeeklyMinutesMost,
                LeftOn = i.LeftOn,
                Qualifications = Told([.. held[i.Id]], [.. ahead[i.Id]], today),
            }),
        ];
    }

    /// <summary>One, for the owner and for herself.</summary>
    public static async Task<InstructorPage?> FindAsync(
        Read read,
        long instructorId,
        LocalDate today,
        Instant now
    )
    {
        if (await StaffStore.FindAsync(read, instructorId) is not { } her)
            return null;
        var ahead = await StaffStore.AheadAsync(read, now, instructorId);
        return new InstructorPage
        {
            Id = her.Id,
            Name = her.Name,
            Called = her.Called,
            Email = her.Email,
            Phone = her.Phone,
            HasAccount = her.HasAccount,
            WeeklyMinutesMost = her.WeeklyMinutesMost,
            RestMinutesLeast = her.RestMinutesLeast,
            LeftOn = her.LeftOn,
            Qualifications = Told(
                await StaffStore.QualificationsAsync(read, instructorId),
                ahead,
                today
            ),
            Availability = await StaffStore.AvailabilityAsync(read, instructorId),
            Leave =
            [
                .. (
                    await StaffStore.LeaveAsync(
                        read,
                        today.PlusDays(-LeaveBehindDays),
                        instructorId
                    )
                ).Select(l => Told(l, ahead)),
            ],
            Wishes = await StaffStore.WishesAsync(read, instructorId),
        };
    }

    /// <summary>Leave, with the sessions to come that fall into it.</summary>
    public static LeaveMessage Told(LeaveRow leave, IEnumerable<StaffSessionRow> ahead) =>
        new()
        {
            Id = leave.Id,
            From = leave.From,
            To = leave.To,
            Sessions =
            [
                .. ahead
                    .Where(s => leave.From <= s.OnDate && s.OnDate <= leave.To)
                    .Select(s => s.Named),
            ],
        };

    private static List<QualificationMessage> Told(
        IReadOnlyCollection<QualificationRow> rows,
        IReadOnlyCollection<StaffSessionRow> ahead,
        LocalDate today
    )
    {
        var counting = rows.Where(q => q.WithdrawnAt is null).ToList();
        var ending = QualificationRules.RunningOut(counting.Select(q => q.Held), today);
        return
        [
            .. rows.Select(q => new QualificationMessage
            {
                Id = q.Id,
                Kind = q.Kind,
                IssuedOn = q.IssuedOn,
                ExpiresOn = q.ExpiresOn,
                Status = QualificationRules.On(q.ExpiresOn, q.WithdrawnAt is not null, today),
                HasProof = q.ProofName is not null,
                SessionsAfter =
                    q.WithdrawnAt is null && ending.Contains(q.Held)
                        ?
                        [
                            .. ahead
                                .Where(s =>
                                    s.NeedsQualification == q.Kind && s.OnDate > q.ExpiresOn
                                )
                                .Select(s => s.Named),
                        ]
                        : [],
            }),
        ];
    }

    private static bool Holds(IEnumerable<QualificationRow> held, StaffSessionRow session) =>
        held.Any(q =>
            q.Kind == session.NeedsQualification
            && q.IssuedOn <= session.OnDate
            && session.OnDate <= q.ExpiresOn
        );
}
