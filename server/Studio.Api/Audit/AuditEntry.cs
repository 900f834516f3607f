using NodaTime;

namespace Studio.Api.Audit;

/// <summary>What was done with a health record.</summary>
public enum AuditAct
{
    /// <summary>Somebody read it.</summary>
    Read,

    /// <summary>Somebody changed it.</summary>
    Change,
}

/// <summary>The parts of a health record that the audit tells apart; never what stands in them.</summary>
public static class AuditKinds
{
    /// <summary>Her card: stage, factors, what is needed from her.</summary>
    public const string Card = "card";

    /// <summary>How sessions suit her, with reasons.</summary>
    public const string Fit = "fit";

    /// <summary>A roster she is on.</summary>
    public const string Roster = "roster";

    /// <summary>What was given about her dates.</summary>
    public const string Dates = "dates";

    /// <summary>Factors and conditions.</summary>
    public const string Factors = "factors";

    /// <summary>Answers to the health questions.</summary>
    public const string Screening = "screening";

    /// <summary>Clearance letters.</summary>
    public const string Letter = "letter";

    /// <summary>The file of a letter.</summary>
    public const string LetterFile = "letter file";

    /// <summary>Warning signs at the door or in class.</summary>
    public const string Incident = "incident";

    /// <summary>A birth.</summary>
    public const string Birth = "birth";

    /// <summary>Another day or mode of a birth.</summary>
    public const string BirthCorrected = "birth corrected";

    /// <summary>A birth that was reported by mistake.</summary>
    public const string BirthTakenBack = "birth taken back";

    /// <summary>A call to her.</summary>
    public const string Call = "call";

    /// <summary>The way back after a loss.</summary>
    public const string Return = "return";

    /// <summary>The end of a pregnancy.</summary>
    public const string Ending = "ending";

    /// <summary>What instructors may see by name.</summary>
    public const string Sharing = "sharing";

    /// <summary>Her record as a new client, or from a file.</summary>
    public const string Intake = "intake";

    /// <summary>All that is held about her.</summary>
    public const string Export = "export";

    /// <summary>The removal of what is held about her.</summary>
    public const string Erasure = "erasure";

    /// <summary>This trail.</summary>
    public const string Trail = "trail";
}

/// <summary>One entry, as it stands in the table.</summary>
public sealed record AuditRow
{
    /// <summary>Its number, from 1 without gaps.</summary>
    public long Id { get; init; }

    /// <summary>When.</summary>
    public Instant At { get; init; }

    /// <summary>Whose account; null for the program itself.</summary>
    public long? AccountId { get; init; }

    /// <summary>The name on that account.</summary>
    public string? Who { get; init; }

    /// <summary>As what she did it.</summary>
    public string SeenAs { get; init; } = "";

    /// <summary>Whose record.</summary>
    public long ClientId { get; init; }

    /// <summary>Her name.</summary>
    public string? Whose { get; init; }

    /// <summary>Read or change.</summary>
    public AuditAct Act { get; init; }

    /// <summary>Which part.</summary>
    public string Kind { get; init; } = "";

    /// <summary>The session whose roster it was.</summary>
    public long? SessionId { get; init; }

    /// <summary>Keyed hash over this entry and the one before.</summary>
    public string Hash { get; init; } = "";
}
