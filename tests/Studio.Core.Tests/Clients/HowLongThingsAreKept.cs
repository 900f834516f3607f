using CsCheck;
using Studio.Core.Catalogue;
using Studio.Core.Clients;

namespace Studio.Core.Tests.Clients;

/// <summary>Which part has to be kept until when. The lengths are the studio's own settings; no published source.</summary>
public class HowLongThingsAreKept
{
    private static readonly LocalDate Joined = new(2024, 5, 10);

    [Theory]
    // part, last class, last birth, last incident, years of health, years of contact, last day
    [InlineData(KeptPart.Health, "2026-03-02", null, null, 10, 3, "2036-03-02")]
    [InlineData(KeptPart.Contact, "2026-03-02", null, null, 10, 3, "2029-03-02")]
    [InlineData(KeptPart.Incidents, "2026-03-02", null, null, 10, 3, null)]
    // Never came: from the day she became a client.
    [InlineData(KeptPart.Health, null, null, null, 10, 3, "2034-05-10")]
    [InlineData(KeptPart.Contact, null, null, null, 10, 3, "2027-05-10")]
    // A birth after the last class, and one before it.
    [InlineData(KeptPart.Health, "2026-03-02", "2026-07-20", null, 10, 3, "2036-07-20")]
    [InlineData(KeptPart.Health, "2026-03-02", "2025-07-20", null, 10, 3, "2036-03-02")]
    [InlineData(KeptPart.Contact, "2026-03-02", "2026-07-20", null, 10, 3, "2029-03-02")]
    // What happened counts from its own day, longer or shorter than the rest.
    [InlineData(KeptPart.Incidents, "2026-03-02", null, "2026-04-01", 10, 3, "2036-04-01")]
    [InlineData(KeptPart.Incidents, "2026-03-02", null, "2020-04-01", 10, 3, "2030-04-01")]
    [InlineData(KeptPart.Health, "2026-03-02", null, "2026-04-01", 10, 3, "2036-03-02")]
    // 29 February: the same day where there is one, 1 March where there is none.
    [InlineData(KeptPart.Health, "2024-02-29", null, null, 4, 3, "2028-02-29")]
    [InlineData(KeptPart.Health, "2024-02-29", null, null, 10, 3, "2034-03-01")]
    [InlineData(KeptPart.Contact, "2024-02-29", null, null, 10, 1, "2025-03-01")]
    [InlineData(KeptPart.Incidents, null, null, "2024-02-29", 1, 3, "2025-03-01")]
    [InlineData(KeptPart.Health, "2096-02-29", null, null, 4, 3, "2100-03-01")]
    // 28 February stays 28 February, also into a leap year.
    [InlineData(KeptPart.Health, "2023-02-28", null, null, 1, 3, "2024-02-28")]
    // Nothing is kept.
    [InlineData(KeptPart.Health, "2026-03-02", "2026-07-20", null, 0, 3, null)]
    [InlineData(KeptPart.Incidents, "2026-03-02", null, "2026-04-01", 0, 3, null)]
    [InlineData(KeptPart.Contact, "2026-03-02", null, null, 10, 0, null)]
    public void Follows_from_her_days_and_the_policies(
        KeptPart part,
        string? lastClass,
        string? lastBirth,
        string? lastIncident,
        int health,
        int contact,
        string? lastDay
    ) =>
        Assert.Equal(
            Day(lastDay),
            Retention.LastDay(
                part,
                new RetentionDays
                {
                    Joined = Joined,
                    LastClass = Day(lastClass),
                    LastBirth = Day(lastBirth),
                    LastIncident = Day(lastIncident),
                },
                new StudioPolicies { HealthKeptYears = health, ContactKeptYears = contact }
            )
        );

    [Fact]
    public void Is_nothing_of_a_health_record_in_which_nothing_stands() =>
        Assert.Null(
            Retention.LastDay(
                KeptPart.Health,
                new RetentionDays { Joined = Joined, HasHealth = false },
                new StudioPolicies()
            )
        );

    [Fact]
    public void Ends_after_the_last_day_not_on_it()
    {
        var days = new RetentionDays { Joined = Joined, LastClass = new(2026, 3, 2) };
        var policies = new StudioPolicies { HealthKeptYears = 2, ContactKeptYears = 1 };
        Assert.Equal(2, Retention.On(new(2027, 3, 2), days, policies).Count);
        Assert.Equal(
            [(KeptPart.Health, new LocalDate(2028, 3, 2))],
            Retention.On(new(2027, 3, 3), days, policies)
        );
        Assert.Empty(Retention.On(new(2028, 3, 3), days, policies));
    }

    [Fact]
    public void Is_never_shorter_with_more_years_a_later_class_or_a_later_birth() =>
        Gen.Select(Gen.Int[0, 20_000], Gen.Int[0, 20_000], Gen.Int[1, 30], Gen.Int[0, 400])
            .Sample(
                (came, born, years, later) =>
                {
                    LocalDate Last(int classDay, int birthDay, int kept) =>
                        Retention
                            .LastDay(
                                KeptPart.Health,
                                new RetentionDays
                                {
                                    Joined = Joined,
                                    LastClass = new LocalDate(2000, 1, 1).PlusDays(classDay),
                                    LastBirth = new LocalDate(2000, 1, 1).PlusDays(birthDay),
                                },
                                new StudioPolicies { HealthKeptYears = kept }
                            )!
                            .Value;
                    var last = Last(came, born, years);
                    Assert.True(Last(came + later, born, years) >= last);
                    Assert.True(Last(came, born + later, years) >= last);
                    Assert.True(Last(came, born, years + 1) > last);
                    // Never less than the years promised, and at most the one day more of a 29 February.
                    var from = new LocalDate(2000, 1, 1).PlusDays(Math.Max(came, born));
                    Assert.InRange(Period.DaysBetween(from.PlusYears(years), last), 0, 1);
                },
                iter: 2_000
            );

    private static LocalDate? Day(string? text) =>
        text is null ? null : NodaTime.Text.LocalDatePattern.Iso.Parse(text).Value;
}
