using NodaTime;

namespace Studio.Core.Pregnancies;

/// <summary>What can be wrong with what was entered; <c>Field</c> is the name the request gives it.</summary>
internal static class DatingRefusals
{
    public static readonly Refusal NothingGiven = Invalid(
        "nothing-given",
        "Enter at least one of these: the first day of the last period, a scan, an embryo transfer or a stated due date.",
        "lastPeriod"
    );

    public static Refusal DateImplausible(LocalDate day, string field) =>
        Invalid("date-implausible", $"{Wording.Date(day)} cannot be right: check the year.", field);

    public static Refusal CycleDays(int days) =>
        Invalid(
            "cycle-days",
            $"A cycle of {days} days cannot be used: enter {EvidenceChecks.ShortestCycle} to {EvidenceChecks.LongestCycle} days, or leave it out.",
            "cycleDays"
        );

    public static Refusal ScanDays(int days) =>
        Invalid("scan-days", $"{days} days over the completed weeks: enter 0 to 6.", "scan.days");

    public static Refusal ScanAge(Scan scan) =>
        Invalid(
            "scan-age",
            $"The scan of {Wording.Date(scan.On)} is entered as {scan.Measured}. A scan dates a pregnancy from"
                + $" {EvidenceChecks.LeastMeasured} to {EvidenceChecks.MostMeasured}: check its weeks and days.",
            "scan.weeks"
        );

    public static Refusal ScansDisagree(Scan one, Scan other) =>
        Invalid(
            "scans-disagree",
            $"Two scans of {Wording.Date(one.On)} measure {one.Measured} and {other.Measured}: keep the one that is right.",
            "scan.date"
        );

    public static Refusal ScanBeforePeriod(Scan scan, LocalDate period) =>
        Invalid(
            "scan-before-period",
            $"The scan of {Wording.Date(scan.On)} is earlier than the last period, {Wording.Date(period)}: check both dates.",
            "scan.date"
        );

    public static Refusal ScanLongAfterPeriod(Scan scan, LocalDate period) =>
        Invalid(
            "scan-long-after-period",
            $"The scan of {Wording.Date(scan.On)} is {new GestationalAge(Period.DaysBetween(period, scan.On))} after the last period,"
                + $" {Wording.Date(period)}; at most {new GestationalAge(GestationalAge.Greatest)} is possible: check both dates.",
            "scan.date"
        );

    public static Refusal ScanBeforeTransfer(Scan scan, LocalDate transfer) =>
        Invalid(
            "scan-before-transfer",
            $"The scan of {Wording.Date(scan.On)} is earlier than the embryo transfer, {Wording.Date(transfer)}: check both dates.",
            "scan.date"
        );

    public static Refusal ScanOutsidePregnancy(Scan scan, DueDate inForce) =>
        Invalid(
            "scan-outside-pregnancy",
            $"By a due date of {Wording.Date(inForce.On)} she would be {GestationalAge.On(scan.On, inForce.On)} on the day of the scan,"
                + $" {Wording.Date(scan.On)}; 0w 0d to {new GestationalAge(GestationalAge.Greatest)} is possible: check both dates.",
            "scan.date"
        );

    public static Refusal EmbryoDays(int days) =>
        Invalid(
            "embryo-days",
            $"An embryo of {days} days cannot be used: enter its age on the day of the transfer, {EvidenceChecks.YoungestEmbryo} to {EvidenceChecks.OldestEmbryo} days.",
            "transfer.embryoDays"
        );

    public static Refusal NotThisPregnancy(
        string what,
        LocalDate gives,
        DueDate inForce,
        string field
    ) =>
        Invalid(
            "not-this-pregnancy",
            $"{char.ToUpperInvariant(what[0])}{what[1..]} gives a due date of {Wording.Date(gives)}, {Wording.Apart(gives, inForce.On)} than {Wording.Date(inForce.On)}:"
                + " they cannot belong to the same pregnancy. Check the dates.",
            field
        );

    public static Refusal AgeImpossible(LocalDate day, LocalDate dueDate, GestationalAge age)
    {
        var cameTo =
            age.Days < 0
                ? $"{Wording.Date(day)} is {Wording.Days(-age.Days)} before that pregnancy began"
                : $"she would be {age} on {Wording.Date(day)}";
        return Invalid(
            "age-impossible",
            $"By a due date of {Wording.Date(dueDate)}, {cameTo}; 0w 0d to {new GestationalAge(GestationalAge.Greatest)} is possible."
                + " Check the year of the due date, or of what it was reckoned from, and the day asked about.",
            "on"
        );
    }

    private static Refusal Invalid(string code, string message, string field) =>
        new(RefusalKind.Invalid, code, message, field);
}
