using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Screenings;

namespace Studio.Api.Screenings;

/// <summary>An answer to one question.</summary>
public sealed record AnswerMessage
{
    /// <summary>"yes", "no", "unsure", "agreed", "right", or own words.</summary>
    [Required(AllowEmptyStrings = true), StringLength(ScreeningAnswers.MostLetters)]
    public required string Value { get; init; }

    /// <summary>For a yes: since when, where she says so.</summary>
    public LocalDate? Since { get; init; }
}

/// <summary>Answers, all of them or as far as she has come.</summary>
public sealed record AnswersRequest
{
    /// <summary>The version of the questions that were shown.</summary>
    public required int Version { get; init; }

    /// <summary>By code of the question.</summary>
    [Required, MaxLength(200)]
    public required IReadOnlyDictionary<string, AnswerMessage?> Answers { get; init; }

    internal IReadOnlyDictionary<string, GivenAnswer> Given() =>
        Answers
            .Where(a => a.Value is not null)
            .ToDictionary(
                a => a.Key,
                a => // What stands in a dictionary is not checked before it arrives here.
                new GivenAnswer((a.Value!.Value ?? "").Trim(), a.Value.Since),
                StringComparer.Ordinal
            );
}

/// <summary>One question.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Section">Where it stands.</param>
/// <param name="Kind">How it is answered.</param>
/// <param name="Asks">The question.</param>
/// <param name="Help">What stands below it.</param>
/// <param name="Source">Why it is asked.</param>
public sealed record QuestionMessage(
    string Code,
    QuestionSection Section,
    QuestionKind Kind,
    string Asks,
    string Help,
    SourceMessage Source
);

/// <summary>The questions, why they are asked, and how far she has come.</summary>
public sealed record ScreeningForm
{
    /// <summary>Version of the questions.</summary>
    public required int Version { get; init; }

    /// <summary>Why they are asked today; empty when they are not.</summary>
    public required IReadOnlyList<AskedBecause> AskedBecause { get; init; }

    /// <summary>The same in words.</summary>
    public required string Says { get; init; }

    /// <summary>The questions for where she is.</summary>
    public required IReadOnlyList<QuestionMessage> Questions { get; init; }

    /// <summary>What she has answered so far; only for herself and the owner.</summary>
    public IReadOnlyDictionary<string, AnswerMessage>? Draft { get; init; }

    /// <summary>When she last saved.</summary>
    public Instant? SavedAt { get; init; }

    /// <summary>She is asked today, before her first class of the week, if anything has changed.</summary>
    public required bool AsksWhetherChanged { get; init; }

    /// <summary>Number to call when it is bad or sudden.</summary>
    public required string EmergencyNumber { get; init; }
}

/// <summary>Why a screening came out as it did.</summary>
/// <param name="Question">Code of the question.</param>
/// <param name="Asks">The question.</param>
/// <param name="Outcome">What this answer alone comes to.</param>
/// <param name="Text">In words for her.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record ScreeningReasonMessage(
    string Question,
    string Asks,
    ScreeningOutcome Outcome,
    string Text,
    SourceMessage Source
);

/// <summary>What came of a screening.</summary>
public sealed record ScreeningAnswer
{
    /// <summary>Its key.</summary>
    public required long Id { get; init; }

    /// <summary>What came of it.</summary>
    public required ScreeningOutcome Outcome { get; init; }

    /// <summary>In words, and what to do now.</summary>
    public required string Says { get; init; }

    /// <summary>Every reason, strictest first; not for the front desk.</summary>
    public IReadOnlyList<ScreeningReasonMessage>? Reasons { get; init; }

    /// <summary>All her bookings are on hold now.</summary>
    public required bool OnHold { get; init; }

    /// <summary>Number to call when it is bad or sudden.</summary>
    public required string EmergencyNumber { get; init; }
}

/// <summary>A screening that was answered; for herself, the owner and whoever reads letters.</summary>
public sealed record AnsweredScreening
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>The day.</summary>
    public required LocalDate AnsweredOn { get; init; }

    /// <summary>What came of it.</summary>
    public required ScreeningOutcome Outcome { get; init; }

    /// <summary>Version of the questions; null when only the outcome was recorded.</summary>
    public int? Version { get; init; }

    /// <summary>The answers by code; empty when only the outcome was recorded.</summary>
    public required IReadOnlyDictionary<string, AnswerMessage> Answers { get; init; }

    /// <summary>Questions whose answer differs from what staff entered and still stands on her page.</summary>
    public required IReadOnlyList<string> Differs { get; init; }
}
