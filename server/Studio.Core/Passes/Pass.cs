using NodaTime;

namespace Studio.Core.Passes;

/// <summary>What a pass gives.</summary>
public enum PassForm
{
    /// <summary>A number of classes within a number of weeks.</summary>
    Classes,

    /// <summary>Certain sessions, named when it is sold.</summary>
    Course,

    /// <summary>Any number of classes for a month.</summary>
    Monthly,

    /// <summary>One class.</summary>
    DropIn,

    /// <summary>One class without charge, once in a lifetime.</summary>
    Trial,
}

/// <summary>A pass somebody has, as far as the rules need it.</summary>
public sealed record Pass
{
    /// <summary>Key; of two that end together the older pays first.</summary>
    public required long Id { get; init; }

    /// <summary>What it gives.</summary>
    public required PassForm Form { get; init; }

    /// <summary>The first day on which it can be used.</summary>
    public required LocalDate StartsOn { get; init; }

    /// <summary>Days it runs, its first included; a day on which its clock stands still is not one of them.</summary>
    public required int RunsDays { get; init; }

    /// <summary>Classes it is good for; empty: all.</summary>
    public IReadOnlySet<long> Classes { get; init; } = new HashSet<long>();

    /// <summary>Sessions of a course; empty for every other form.</summary>
    public IReadOnlySet<long> Sessions { get; init; } = new HashSet<long>();

    /// <summary>What was put down in its ledger, oldest first.</summary>
    public IReadOnlyList<LedgerEntry> Ledger { get; init; } = [];

    /// <summary>From this day on what is left of it is good for every class: a birth, where its kind carries over.</summary>
    public LocalDate? GoodForAllFrom { get; init; }

    /// <summary>It counts no credits.</summary>
    public bool IsUnlimited => Form == PassForm.Monthly;

    /// <summary>Credits left: the sum of its ledger.</summary>
    public int Balance => Ledger.Sum(e => e.Credits);

    /// <summary>What was left of it was paid back at least once.</summary>
    public bool IsRefunded => Ledger.Any(e => e.Kind == EntryKind.Refunded);

    /// <summary>
    /// It was paid back and nothing is left. A credit that a booking gives back after that is hers again, so that it can
    /// be used, or paid back in turn.
    /// </summary>
    public bool IsClosed => IsRefunded && (IsUnlimited || Balance == 0);
}

/// <summary>Why a line stands in a ledger.</summary>
public enum EntryKind
{
    /// <summary>Sold: the credits it came with.</summary>
    Sold,

    /// <summary>A booking took one.</summary>
    Spent,

    /// <summary>A booking gave it back.</summary>
    Returned,

    /// <summary>The studio gave something, with a reason.</summary>
    Goodwill,

    /// <summary>The rest was paid back, with a reason.</summary>
    Refunded,
}

/// <summary>A line of a pass's ledger. Lines are added, never changed.</summary>
/// <param name="Kind">Why.</param>
/// <param name="Credits">Credits more (positive) or fewer.</param>
/// <param name="BookingId">The booking, for what was spent and returned.</param>
public sealed record LedgerEntry(EntryKind Kind, int Credits, long? BookingId = null);

/// <summary>Days on which no pass of hers runs out: a hold, the weeks around a birth, after a loss.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day; null while it goes on.</param>
public sealed record StandStill(LocalDate From, LocalDate? To);
