using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Http;
using Studio.Core.Passes;

namespace Studio.Api.Passes;

/// <summary>A kind of pass as the studio sells it.</summary>
public sealed record PassKindMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>What it gives.</summary>
    public required PassForm Form { get; init; }

    /// <summary>Classes; null for a course and a monthly pass.</summary>
    public int? Credits { get; init; }

    /// <summary>Days it runs; null for a course and a monthly pass.</summary>
    public int? RunsDays { get; init; }

    /// <summary>With tax, in the smallest unit.</summary>
    public required long Price { get; init; }

    /// <summary>The same as a decimal number.</summary>
    public required string PriceText { get; init; }

    /// <summary>ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>Rate of the tax inside the price, in thousandths.</summary>
    public required int TaxPerMille { get; init; }

    /// <summary>After a birth what is left of it is good for every class.</summary>
    public required bool CarriesOver { get; init; }

    /// <summary>It is sold.</summary>
    public required bool OnSale { get; init; }

    /// <summary>Classes it is good for; none: every class.</summary>
    public required IReadOnlyList<long> ClassIds { get; init; }

    /// <summary>Sessions of a course.</summary>
    public required IReadOnlyList<long> SessionIds { get; init; }

    /// <summary>What it gives, in a line.</summary>
    public required string Says { get; init; }
}

/// <summary>A kind of pass to enter, or as it shall be from now on; what was sold before stays as it was.</summary>
public sealed record PassKindRequest
{
    /// <summary>Its name.</summary>
    [Required, StringLength(80, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>What it gives.</summary>
    public required PassForm Form { get; init; }

    /// <summary>Classes; left out for a course and a monthly pass.</summary>
    [Range(1, 500)]
    public int? Credits { get; init; }

    /// <summary>Days it runs; left out for a course and a monthly pass.</summary>
    [Range(1, 1100)]
    public int? RunsDays { get; init; }

    /// <summary>With tax, in the smallest unit of the currency.</summary>
    [Range(0, 100_000_000)]
    public required long Price { get; init; }

    /// <summary>ISO 4217.</summary>
    [Required, StringLength(3, MinimumLength = 3)]
    public required string Currency { get; init; }

    /// <summary>Rate of the tax inside the price, in thousandths.</summary>
    [Range(0, 1000)]
    public required int TaxPerMille { get; init; }

    /// <summary>After a birth what is left of it is good for every class.</summary>
    public required bool CarriesOver { get; init; }

    /// <summary>It is sold.</summary>
    public required bool OnSale { get; init; }

    /// <summary>Classes it is good for; none: every class.</summary>
    [Required, NoGaps, MaxLength(200)]
    public required IReadOnlyList<long> ClassIds { get; init; }

    /// <summary>Sessions of a course; none for any other form.</summary>
    [Required, NoGaps, MaxLength(200)]
    public required IReadOnlyList<long> SessionIds { get; init; }
}

/// <summary>A sale at the desk.</summary>
public sealed record SellPassRequest
{
    /// <summary>Which kind.</summary>
    [Range(1, long.MaxValue)]
    public required long KindId { get; init; }

    /// <summary>How it was paid; left out when it costs nothing.</summary>
    public PaidHow? PaidHow { get; init; }

    /// <summary>Its first day where she usually comes to; today when left out.</summary>
    public LocalDate? StartsOn { get; init; }
}

/// <summary>Credits given for good will.</summary>
public sealed record GoodwillRequest
{
    /// <summary>How many classes.</summary>
    [Range(1, 50)]
    public required int Credits { get; init; }

    /// <summary>Why, in the studio's words; she can read it.</summary>
    [Required, StringLength(500, MinimumLength = 1)]
    public required string Reason { get; init; }
}

/// <summary>Paying back what is left of a pass.</summary>
public sealed record RefundRequest
{
    /// <summary>How much is paid back, in the smallest unit.</summary>
    [Range(0, 100_000_000)]
    public required long Amount { get; init; }

    /// <summary>How; left out when nothing is.</summary>
    public PaidHow? PaidHow { get; init; }

    /// <summary>Why, in the studio's words; she can read it.</summary>
    [Required, StringLength(500, MinimumLength = 1)]
    public required string Reason { get; init; }
}

/// <summary>A line of a pass's ledger.</summary>
public sealed record PassEntryMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Why it stands there.</summary>
    public required EntryKind Kind { get; init; }

    /// <summary>The same in words.</summary>
    public required string Says { get; init; }

    /// <summary>Credits more (positive) or fewer.</summary>
    public required int Credits { get; init; }

    /// <summary>The balance after it.</summary>
    public required int Balance { get; init; }

    /// <summary>When.</summary>
    public required Instant At { get; init; }

    /// <summary>The class it was about.</summary>
    public string? ClassName { get; init; }

    /// <summary>Its date, where it is held.</summary>
    public LocalDate? On { get; init; }

    /// <summary>Why, for goodwill and for what was paid back.</summary>
    public string? Reason { get; init; }

    /// <summary>What was paid back, as a decimal number.</summary>
    public string? PaidBack { get; init; }

    /// <summary>Who put it down; null for the program.</summary>
    public string? By { get; init; }
}

/// <summary>A pass of somebody's, with its ledger.</summary>
public sealed record PassMessage
{
    /// <summary>Key.</summary>
    public required long Id { get; init; }

    /// <summary>Name of its kind when it was sold.</summary>
    public required string Name { get; init; }

    /// <summary>What it gives.</summary>
    public required PassForm Form { get; init; }

    /// <summary>Classes it is good for, by name; none: every class.</summary>
    public required IReadOnlyList<string> Classes { get; init; }

    /// <summary>Credits left: the sum of its ledger; null for a monthly pass, which counts none.</summary>
    public int? Balance { get; init; }

    /// <summary>First day.</summary>
    public required LocalDate StartsOn { get; init; }

    /// <summary>Last day; null while its clock stands still and nobody knows until when.</summary>
    public LocalDate? LastDay { get; init; }

    /// <summary>Days by which its last day was put off; null while nobody knows.</summary>
    public int? PutOffDays { get; init; }

    /// <summary>Why it was put off, a line each.</summary>
    public required IReadOnlyList<string> PutOffBecause { get; init; }

    /// <summary>It can pay for a class today or later.</summary>
    public required bool IsUsable { get; init; }

    /// <summary>What is left and until when, in a line.</summary>
    public required string Says { get; init; }

    /// <summary>Day of the sale.</summary>
    public required LocalDate SoldOn { get; init; }

    /// <summary>Who sold it.</summary>
    public string? SoldBy { get; init; }

    /// <summary>How it was paid; null when it cost nothing.</summary>
    public PaidHow? PaidHow { get; init; }

    /// <summary>With tax, in the smallest unit.</summary>
    public required long Price { get; init; }

    /// <summary>The same as a decimal number.</summary>
    public required string PriceText { get; init; }

    /// <summary>The tax inside it, as a decimal number.</summary>
    public required string TaxText { get; init; }

    /// <summary>Rate of the tax, in thousandths.</summary>
    public required int TaxPerMille { get; init; }

    /// <summary>ISO 4217.</summary>
    public required string Currency { get; init; }

    /// <summary>The most that can still be paid back, in the smallest unit.</summary>
    public required long LeftToPayBack { get; init; }

    /// <summary>Its ledger, oldest first.</summary>
    public required IReadOnlyList<PassEntryMessage> Ledger { get; init; }
}
