using NodaTime;
using Studio.Api.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Intensity;

namespace Studio.Api.Intensity;

/// <summary>A heart rate to move at, in beats a minute.</summary>
public sealed record HeartRateMessage
{
    /// <summary>From which it is moderate; null where there is no lower end.</summary>
    public int? Low { get; init; }

    /// <summary>The most.</summary>
    public required int High { get; init; }

    /// <summary>"121 to 140", or "up to 110".</summary>
    public required string Says { get; init; }

    /// <summary>Her letter's ceiling bounds it.</summary>
    public required bool ByLetter { get; init; }

    /// <summary>Where the figures stand.</summary>
    public required IReadOnlyList<SourceMessage> Sources { get; init; }

    /// <summary>Her range on a date; null where there is no figure for her.</summary>
    public static HeartRateMessage? On(
        HerSituation her,
        LocalDate day,
        RuleBook book,
        StudioPolicies policies
    ) =>
        HeartRates.On(her, day, book, policies) is { } range
            ? new()
            {
                Low = range.Low,
                High = range.High,
                Says = range.Says,
                ByLetter = range.ByLetter,
                Sources = [.. range.Sources.Select(FitMessage.Cite)],
            }
            : null;
}

/// <summary>How hard to work: a heart rate where there is one, and what can still be said.</summary>
/// <param name="HeartRate">Her range; null without her date of birth, and after a birth.</param>
/// <param name="TalkTest">What can still be said at moderate effort.</param>
/// <param name="TalkSource">Where that stands.</param>
public sealed record IntensityMessage(
    HeartRateMessage? HeartRate,
    string TalkTest,
    SourceMessage TalkSource
)
{
    /// <summary>For a client on a date.</summary>
    public static IntensityMessage On(
        HerSituation her,
        LocalDate day,
        RuleBook book,
        StudioPolicies policies
    )
    {
        var talk = HeartRates.Talk(book, IntensityLevel.Moderate);
        return new(
            HeartRateMessage.On(her, day, book, policies),
            talk.Words!,
            FitMessage.Cite(talk.Source)
        );
    }
}
