using System.Text.Json;
using NodaTime;

namespace Studio.Api.Incidents;

/// <summary>An entry as it stands in the table, opened.</summary>
public sealed record IncidentRow
{
    /// <summary>Key.</summary>
    public long Id { get; init; }

    /// <summary>Whom it concerns.</summary>
    public long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public string Name { get; init; } = "";

    /// <summary>In which session.</summary>
    public long? SessionId { get; init; }

    /// <summary>The class of that session.</summary>
    public string? ClassName { get; init; }

    /// <summary>The day of that session where it is held.</summary>
    public LocalDate? SessionOn { get; init; }

    /// <summary>When that session begins where it is held, <c>09:30</c>.</summary>
    public string? StartsLocal { get; init; }

    /// <summary>The session's location, or the one she usually comes to.</summary>
    public string Place { get; init; } = "";

    /// <summary>The IANA zone of that location.</summary>
    public string Zone { get; init; } = "";

    /// <summary>The entry this one adds to.</summary>
    public long? AboutId { get; init; }

    /// <summary>When it was raised.</summary>
    public Instant RaisedAt { get; init; }

    /// <summary>Who raised it.</summary>
    public string? RaisedBy { get; init; }

    /// <summary>Codes of warning signs, as JSON.</summary>
    public string Signs { get; init; } = "";

    /// <summary>What happened.</summary>
    public string Happened { get; init; } = "";

    /// <summary>What was done.</summary>
    public string Done { get; init; } = "";

    /// <summary>First day of the hold that followed.</summary>
    public LocalDate? HeldFrom { get; init; }

    /// <summary>The day that hold was lifted; null while it stands.</summary>
    public LocalDate? LiftedOn { get; init; }

    /// <summary>Codes of warning signs.</summary>
    public IReadOnlyList<string> Codes => JsonSerializer.Deserialize<string[]>(Signs)!;
}
