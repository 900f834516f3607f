using System.ComponentModel.DataAnnotations;
using NodaTime;
using Studio.Api.Http;
using Studio.Core.Timetable;

namespace Studio.Api.Timetable.Drafts;

/// <summary>A draft in a list.</summary>
public sealed record DraftSummary(
    long Id,
    string Name,
    LocalDate From,
    LocalDate To,
    DraftOrigin Origin,
    DraftStatus Status,
    int Version,
    Instant MadeAt,
    Instant? EndedAt
)
{
    /// <summary>Of a row.</summary>
    public static DraftSummary Of(DraftRow row) =>
        new(
            row.Id,
            row.Name,
            row.FromOn,
            row.ToOn,
            row.Origin,
            row.Status,
            row.Version,
            row.MadeAt,
            row.EndedAt
        );
}

/// <summary>A conflict by name.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Words">One sentence.</param>
/// <param name="IsHard">It can never be saved; the others the owner may accept.</param>
/// <param name="IsNew">The timetable as it stands does not have it.</param>
/// <param name="Keys">Between which sessions: a session's key, or a draft's new row as a negative number.</param>
/// <param name="InstructorId">Whose, when it is about somebody.</param>
public sealed record ConflictMessage(
    ConflictKind Kind,
    string Words,
    bool IsHard,
    bool IsNew,
    IReadOnlyList<long> Keys,
    long? InstructorId
)
{
    /// <summary>Of a conflict.</summary>
    public static ConflictMessage Of(Conflict conflict, bool isNew) =>
        new(
            conflict.Kind,
            conflict.Words,
            conflict.IsHard,
            isNew,
            conflict.Sessions,
            conflict.InstructorId
        );
}

/// <summary>A session of a draft.</summary>
public sealed record DraftSessionMessage
{
    /// <summary>Key of the row.</summary>
    public required long Id { get; init; }

    /// <summary>The key by which conflicts name it.</summary>
    public required long Key { get; init; }

    /// <summary>The session it changes; null for one that is added.</summary>
    public long? SessionId { get; init; }

    /// <summary>The class.</summary>
    public required long ClassId { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Its date, where it is held.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock, "18:00".</summary>
    public required string StartsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Seats.</summary>
    public required int Seats { get; init; }

    /// <summary>Seats that people have.</summary>
    public required int SeatsTaken { get; init; }

    /// <summary>Whether it is held.</summary>
    public required bool IsHeld { get; init; }

    /// <summary>Whether it stands otherwise than in the timetable.</summary>
    public required bool IsChanged { get; init; }

    /// <summary>How it stands in the timetable, where the draft has it otherwise; null for one that is added.</summary>
    public MeanwhileMessage? Was { get; init; }

    /// <summary>How it stands in the timetable, where somebody changed it since it was copied; to be decided.</summary>
    public MeanwhileMessage? Meanwhile { get; init; }
}

/// <summary>How a session stands in the timetable that a draft has otherwise.</summary>
public sealed record MeanwhileMessage(
    long RoomId,
    long? InstructorId,
    LocalDate On,
    string StartsLocal,
    int Minutes,
    int Seats,
    bool IsHeld
);

/// <summary>A draft with its sessions and all that stands against them.</summary>
public sealed record DraftMessage(
    DraftSummary Draft,
    IReadOnlyList<DraftSessionMessage> Sessions,
    IReadOnlyList<ConflictMessage> Conflicts
);

/// <summary>Sessions of the timetable as it stands, and what stands against them.</summary>
public sealed record TimetableMessage(
    IReadOnlyList<SessionSummary> Sessions,
    IReadOnlyList<ConflictMessage> Conflicts
);

/// <summary>Days to make a draft of.</summary>
public sealed record DraftRequest
{
    /// <summary>Its name.</summary>
    [Required, StringLength(80, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>First day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last day.</summary>
    public required LocalDate To { get; init; }
}

/// <summary>A session of a draft as it should stand.</summary>
public sealed record DraftSessionRequest
{
    /// <summary>The row; null adds one.</summary>
    public long? Id { get; init; }

    /// <summary>The class.</summary>
    public required long ClassId { get; init; }

    /// <summary>The room.</summary>
    public required long RoomId { get; init; }

    /// <summary>Who teaches it.</summary>
    public long? InstructorId { get; init; }

    /// <summary>Its date.</summary>
    public required LocalDate On { get; init; }

    /// <summary>Start by the location's clock, "18:00".</summary>
    [Required, RegularExpression(@"^([01]\d|2[0-3]):[0-5]\d$")]
    public required string StartsLocal { get; init; }

    /// <summary>Length in minutes.</summary>
    [Range(5, 240)]
    public required int Minutes { get; init; }

    /// <summary>Seats.</summary>
    [Range(1, 200)]
    public required int Seats { get; init; }

    /// <summary>Whether it is held.</summary>
    public bool IsHeld { get; init; } = true;
}

/// <summary>Changes to a draft, all or none.</summary>
public sealed record DraftChangeRequest
{
    /// <summary>The version they are made to.</summary>
    public required int Version { get; init; }

    /// <summary>Rows as they should stand.</summary>
    [Required, MaxLength(2000), NoGaps]
    public required IReadOnlyList<DraftSessionRequest> Put { get; init; }

    /// <summary>Rows to take out: one the draft added goes, one it copied is called off.</summary>
    [Required, MaxLength(2000)]
    public IReadOnlyList<long> Remove { get; init; } = [];
}

/// <summary>A session held somewhere while it is being moved.</summary>
public sealed record DraftCheckRequest
{
    /// <summary>As it would stand.</summary>
    [Required]
    public required DraftSessionRequest Session { get; init; }
}

/// <summary>A week to lay onto another.</summary>
public sealed record CopyWeekRequest
{
    /// <summary>The version it is made to.</summary>
    public required int Version { get; init; }

    /// <summary>Any day of the week to copy.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Any day of the week to lay it on.</summary>
    public required LocalDate To { get; init; }
}

/// <summary>Which of two states holds.</summary>
public enum Keep
{
    /// <summary>As it stands in the timetable.</summary>
    Theirs,

    /// <summary>As the draft has it.</summary>
    Mine,
}

/// <summary>What is decided about a session that somebody changed meanwhile.</summary>
public sealed record MeanwhileRequest
{
    /// <summary>The version it is decided in.</summary>
    public required int Version { get; init; }

    /// <summary>The row.</summary>
    public required long Row { get; init; }

    /// <summary>Which holds.</summary>
    public required Keep Keep { get; init; }
}

/// <summary>A draft to be made the timetable.</summary>
public sealed record PublishRequest
{
    /// <summary>The version that was looked at.</summary>
    public required int Version { get; init; }

    /// <summary>Warnings are accepted.</summary>
    public bool Anyway { get; init; }
}
