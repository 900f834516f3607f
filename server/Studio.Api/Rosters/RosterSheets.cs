using NodaTime;
using Studio.Api.Audit;
using Studio.Api.Booking;
using Studio.Api.Data;
using Studio.Api.Intensity;
using Studio.Api.Movements;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Accounts;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Intensity;

namespace Studio.Api.Rosters;

/// <summary>Puts a roster together, everything as of the session's own date and as far as the reader may know.</summary>
public sealed class RosterSheets(
    RuleBook book,
    StudioStore studio,
    SessionSummaries summaries,
    HealthAudit audit
)
{
    /// <summary>The roster.</summary>
    public async Task<RosterMessage> OfAsync(
        Read read,
        SessionRow session,
        Audience audience,
        long accountId
    )
    {
        var bookings = await BookingStore.InAsync(read, [session.Id]);
        var ids = bookings.Select(b => b.ClientId).ToList();
        var fits = await Fits.LoadAsync(read, book, ids);
        var contacts = (await ContactsAsync(read, ids)).ToDictionary(c => c.Id);
        var flags = (await FlagStore.StandingAsync(read, accountId, ids)).ToLookup(f => f.ClientId);
        var near = Math.Abs(Period.DaysBetween(session.OnDate, studio.Today(session.Zone))) <= 1;
        var notes = await NotesAsync(read, session, bookings, audience, accountId);
        var place = 0;

        // After a loss she is on no list below the owner's.
        var people = bookings
            .Where(b => audience == Audience.Owner || !fits.HasEnded(b.ClientId))
            .Select(b =>
                Person(b, session, fits, contacts[b.ClientId], flags[b.ClientId], audience, near)
            )
            .Select(p =>
                p with
                {
                    Message = p.Message with { Notes = [.. notes[p.Message.ClientId]] },
                }
            )
            .ToList();
        // The desk sees who comes and who may not; what an instructor sees is health.
        if (audience is Audience.Owner or Audience.Instructor)
            audit.Saw(people.Select(p => p.Message.ClientId));
        return new RosterMessage
        {
            Session = (await summaries.WithUnsuitableAsync(read, [session])).Single(),
            EmergencyNumber = await read.ValueAsync<string>(
                "select emergency_number from locations where id = @LocationId",
                session
            ),
            Plan =
                audience is Audience.Instructor or Audience.Owner
                && fits.PlanOf(session) is { } plan
                    ? PlanWords.Taught(plan, book)
                    : [],
            People =
            [
                .. people
                    .Where(p => p.Status == BookingStatus.Booked)
                    .Select(p => p.Message)
                    .OrderBy(p => p.Called, StringComparer.Ordinal)
                    .ThenBy(p => p.Name, StringComparer.Ordinal)
                    .ThenBy(p => p.BookingId),
            ],
            Waiting =
            [
                .. people
                    .Where(p => p.Status == BookingStatus.Waiting)
                    .Select(p => p.Message with { Place = ++place }),
            ],
        };
    }

    private (BookingStatus Status, PersonMessage Message) Person(
        BookingRow booking,
        SessionRow session,
        Fits fits,
        ContactRow contact,
        IEnumerable<FlagRow> flags,
        Audience audience,
        bool near
    )
    {
        var fit = fits.Of(booking.ClientId, session);
        var teaches = audience is Audience.Instructor or Audience.Owner;
        var names =
            teaches && (contact.SharesConditions || audience == Audience.Owner)
                ? fits.Of(booking.ClientId)
                    .Factors.Where(f => f.IsHeldOn(session.OnDate))
                    .Select(f => book.FactorOf(f.Code)?.Name)
                    .OfType<string>()
                    .Distinct(StringComparer.Ordinal)
                : [];
        return (
            booking.Status,
            new PersonMessage
            {
                BookingId = booking.Id,
                ClientId = booking.ClientId,
                Called = booking.Called,
                Name = booking.Name,
                CheckedInAt = booking.CheckedInAt,
                WellAt = booking.WellAt,
                Verdict = fit.Verdict,
                Administrative =
                    fit.Verdict >= Suits.NeedsClearance
                        ? FitWords.Summary(fit, Audience.FrontDesk)
                        : null,
                Age = teaches ? fit.Situation.Age?.ToString() : null,
                Stage = teaches ? fit.Situation.Stage?.Code : null,
                StageName = teaches ? fit.Situation.Stage?.Name : null,
                DaysSinceBirth = teaches ? fit.Situation.DaysSinceBirth : null,
                MayHaveGivenBirth = teaches && fit.Situation.MayHaveGivenBirth,
                HeartRate = teaches
                    ? HeartRateMessage.On(
                        fits.Of(booking.ClientId),
                        session.OnDate,
                        book,
                        fits.Policies
                    )
                    : null,
                TalkTest = teaches ? HeartRates.Talk(book, IntensityLevel.Moderate).Words : null,
                Instructions = teaches
                    ?
                    [
                        .. fit
                            .Reasons.Where(r => r.ForInstructor is not null)
                            .DistinctBy(r => r.ForInstructor, StringComparer.Ordinal)
                            .Select(r => new InstructionMessage(
                                r.ForInstructor!,
                                // The source's own title may name the condition.
                                r.Source
                                    is { } source
                                && (
                                    r.Factor is null
                                    || contact.SharesConditions
                                    || audience == Audience.Owner
                                )
                                    ? FitMessage.Cite(source)
                                    : null
                            )),
                    ]
                    : [],
                Movements =
                    teaches && fit.Plan is { } plan
                        ? PlanWords.Hers(
                            plan,
                            audience,
                            contact.SharesConditions || audience == Audience.Owner
                        )
                        : [],
                Flags =
                [
                    .. flags
                        .Where(f => f.SessionId is null || f.SessionId == session.Id)
                        .Select(f => FlagWords.For(f, audience))
                        .OfType<FlagMessage>(),
                ],
                Conditions = [.. names],
                Notes = [],
                Emergency =
                    teaches && near && contact.EmergencyPhone.Length > 0
                        ? new EmergencyMessage(contact.EmergencyName, contact.EmergencyPhone)
                        : null,
            }
        );
    }

    // What was seen of those with a seat in classes before this one: a roster of long ago is no window on what came since.
    private static async Task<ILookup<long, ClassNote>> NotesAsync(
        Read read,
        SessionRow session,
        IEnumerable<BookingRow> bookings,
        Audience audience,
        long accountId
    )
    {
        var wanted = new NotesWanted
        {
            ClientIds = audience is Audience.Instructor or Audience.Owner
                ? [.. bookings.Where(b => b.Status == BookingStatus.Booked).Select(b => b.ClientId)]
                : [],
            Before = session.StartsAt,
            WithEnded = audience == Audience.Owner,
        };
        var notes = wanted.ClientIds.Count == 0 ? [] : await NoteStore.ListAsync(read, wanted);
        return notes.Select(n => n.For(accountId)).ToLookup(n => n.ClientId);
    }

    private static Task<List<ContactRow>> ContactsAsync(Read read, IReadOnlyCollection<long> ids) =>
        read.ListAsync<ContactRow>(
            """
            select id, emergency_name as EmergencyName, emergency_phone as EmergencyPhone,
                   shares_conditions as SharesConditions
              from clients where id in @ids
            """,
            new { ids }
        );

    private sealed record ContactRow
    {
        public long Id { get; init; }
        public string EmergencyName { get; init; } = "";
        public string EmergencyPhone { get; init; } = "";
        public bool SharesConditions { get; init; }
    }
}
