namespace Studio.Api.Records;

/// <summary>How a table is told to her.</summary>
/// <param name="Says">What stands in it, for the file.</param>
/// <param name="Section">The heading it stands under; null for one of its own.</param>
/// <param name="Entry">What one row is.</param>
/// <param name="Labels">Its columns in the order in which they are told; one that is not named comes last, under its own name.</param>
/// <param name="Silent">Columns that only tie rows together, or say what another says in words.</param>
public sealed record TableLabels(
    string Says,
    string? Section,
    string Entry,
    IReadOnlyList<(string Column, string Label)> Labels,
    IReadOnlyList<string> Silent
);

/// <summary>The words around what is held, table by table, by the names in the file.</summary>
public static class HeldLabels
{
    private static readonly (string, string) EnteredAt = ("enteredAt", "Entered");
    private static readonly (string, string) EnteredBy = ("enteredBy", "Entered by");

    /// <summary>The headings, in order.</summary>
    public static IReadOnlyList<(string Code, string Title, string Says)> Sections { get; } =
    [
        ("who", "Who you are", "Your name and where you usually come to."),
        ("contact", "How we reach you", "Your contact details and your account."),
        ("emergency", "Whom we call in an emergency", "Given by you."),
        (
            "pregnancies",
            "Pregnancies and due dates",
            "What was given about your dates, every due date that was in force, and the stages."
        ),
        ("factors", "Factors and conditions", "What classes are chosen by."),
        ("questions", "Health questions", "What you answered, and what came of it."),
        ("letters", "Letters", "Letters of your midwife or doctor, and what they ask for."),
        (
            "incidents",
            "Holds and incidents",
            "Warning signs, what happened and what was done, and pauses of your bookings."
        ),
        (
            "notes",
            "Notes about you",
            "What instructors wrote after class, earlier wordings and notes taken back included."
        ),
        ("bookings", "Bookings and check-ins", "Every seat and waitlist place, past and to come."),
        ("passes", "Passes", "What was sold to you, and every line of what became of it."),
        ("moves", "Suggested moves", "What was suggested when a class no longer suited."),
        ("flags", "Flags", "What the studio was reminded of, and who has read it."),
        ("messages", "Messages", "What the studio sent you, or is about to send."),
        (
            "feeds",
            "Calendar addresses",
            "Private addresses your calendar reads your bookings from."
        ),
        ("erasures", "Wishes to be erased", "Whether and when you asked."),
        (
            "audit",
            "Who looked at your record",
            "Each time somebody read or changed something of your health record, the newest first. Here are the newest 200; the file has all of them."
        ),
    ];

    private static readonly Dictionary<string, TableLabels> Tables = new(StringComparer.Ordinal)
    {
        ["clients"] = new(
            "Who she is and how she is reached; one row.",
            "who",
            "You",
            [
                ("name", "Name"),
                ("called", "Likes to be called"),
                ("bornOn", "Date of birth"),
                ("homeLocation", "Usually comes to"),
                ("joinedAt", "Client since"),
                ("sharesConditions", "Instructors may see conditions by name"),
            ],
            ["id", "accountId", "homeLocationId", "erasedAt"]
        ),
        ["accounts"] = new(
            "The account she signs in with, without its password.",
            "contact",
            "Your account",
            [
                ("email", "Signs in with"),
                ("name", "Name"),
                ("madeAt", "Made"),
                ("lockoutUntil", "Locked until"),
                ("failedCount", "Wrong passwords since the last right one"),
            ],
            ["id", "isDemo", "closedAt"]
        ),
        ["accountRoles"] = new(
            "What that account may be.",
            "contact",
            "Role of your account",
            [("role", "Role")],
            ["accountId"]
        ),
        ["pregnancies"] = new(
            "Her pregnancies, as they stand.",
            "pregnancies",
            "Pregnancy",
            [
                ("isCurrent", "Current"),
                ("dueDate", "Due date"),
                ("babies", "Babies"),
                ("bornOn", "Born on"),
                ("birthMode", "Birth"),
                ("endedOn", "Ended on"),
                ("stageName", "Stage"),
                ("gestationalDay", "Days along, as last counted"),
                ("advancedOn", "Last counted on"),
                ("toldAt", "Birth or end told"),
                ("toldBy", "Told by"),
                ("rungAt", "The studio rang you"),
                ("rungBy", "Rung by"),
                ("papersFrom", "Letters and answers count from"),
            ],
            ["id", "stage", "insteadOf"]
        ),
        ["datingEvidence"] = new(
            "Everything that was given about the dates of a pregnancy.",
            "pregnancies",
            "Given about your dates",
            [
                ("kind", "What"),
                ("day", "Day"),
                ("cycleDays", "Length of cycle in days"),
                ("measuredDays", "Days along as measured"),
                ("embryoDays", "Age of the embryo in days"),
                EnteredAt,
                EnteredBy,
            ],
            ["id", "pregnancyId"]
        ),
        ["dueDates"] = new(
            "Every due date that was in force, the newest last, with its explanation.",
            "pregnancies",
            "Due date in force",
            [
                ("dueDate", "Due date"),
                ("basis", "Counted from"),
                ("explanation", "Why"),
                EnteredAt,
                EnteredBy,
            ],
            ["id", "pregnancyId"]
        ),
        ["stageChanges"] = new(
            "The day each stage began.",
            "pregnancies",
            "Stage",
            [("stageName", "Stage"), ("onDate", "Began on")],
            ["pregnancyId", "stage"]
        ),
        ["clientFactors"] = new(
            "Factors and conditions; without a last day while they last.",
            "factors",
            "Factor",
            [("name", "What"), ("fromOn", "From"), ("toOn", "Until"), EnteredAt, EnteredBy],
            ["id", "code", "screeningId"]
        ),
        ["screenings"] = new(
            "Health questions answered: answers by the code of the question, and in words.",
            "questions",
            "Answered",
            [
                ("answeredOn", "On"),
                ("outcome", "What came of it"),
                ("answersInWords", "Answers"),
                ("questionsVersion", "Version of the questions"),
                EnteredAt,
                EnteredBy,
            ],
            ["id", "answers"]
        ),
        ["screeningDrafts"] = new(
            "Answers saved and not sent yet.",
            "questions",
            "Saved, not sent yet",
            [
                ("savedAt", "Saved"),
                ("answersInWords", "Answers"),
                ("questionsVersion", "Version of the questions"),
            ],
            ["id", "answers"]
        ),
        ["nothingChanged"] = new(
            "Days on which she said that nothing had changed.",
            "questions",
            "You said that nothing had changed",
            [("onDate", "On"), EnteredAt],
            []
        ),
        ["letters"] = new(
            "Letters of a clinician and what they ask for; the files are downloaded one by one.",
            "letters",
            "Letter",
            [
                ("state", "State"),
                ("issuedBy", "Written by"),
                ("issuedOn", "Written on"),
                ("expiresOn", "Its last day"),
                ("asksFor", "Asks for"),
                ("replacesEarlier", "Takes the place of earlier ones"),
                ("refusedBecause", "Cannot count because"),
                ("onPaper", "On paper at the studio"),
                ("mediaType", "Kind of file"),
                ("fileBytes", "Size of file in bytes"),
                ("enteredAt", "Came"),
                ("enteredBy", "Filed by"),
                ("reviewedAt", "Read"),
                ("reviewedBy", "Read by"),
                ("withdrawnAt", "Taken back"),
                ("withdrawnBy", "Taken back by"),
            ],
            ["id", "restrictions"]
        ),
        ["incidents"] = new(
            "Warning signs and incidents; aboutId names the entry that one adds to.",
            "incidents",
            "What happened",
            [
                ("raisedAt", "Raised"),
                ("raisedBy", "Raised by"),
                ("session", "Class"),
                ("signsInWords", "Warning signs"),
                ("happened", "What happened"),
                ("done", "What was done"),
            ],
            ["id", "sessionId", "aboutId", "signs"]
        ),
        ["holds"] = new(
            "Pauses of her bookings until a new letter; without a last day while they stand.",
            "incidents",
            "Pause of your bookings",
            [("fromOn", "From"), ("liftedOn", "Lifted on"), EnteredAt, EnteredBy],
            ["id", "incidentId"]
        ),
        ["classNotes"] = new(
            "Notes about her after class; their words are in classNoteVersions.",
            "notes",
            "Note",
            [
                ("session", "Class"),
                ("writtenBy", "Written by"),
                ("withdrawnAt", "Taken back"),
                ("withdrawnBy", "Taken back by"),
            ],
            ["id", "sessionId", "pregnancyId"]
        ),
        ["classNoteVersions"] = new(
            "Every wording of those notes.",
            "notes",
            "Words of a note",
            [("text", "Words"), ("version", "Wording"), ("writtenAt", "Written")],
            ["id", "noteId"]
        ),
        ["bookings"] = new(
            "Seats and waitlist places.",
            "bookings",
            "Booking",
            [
                ("session", "Class"),
                ("status", "State"),
                ("madeAt", "Made"),
                ("madeBy", "Made by"),
                ("promotedAt", "Moved up from the waitlist"),
                ("checkedInAt", "Checked in"),
                ("wellAt", "Said that all was well"),
                ("endedAt", "Ended"),
                ("endedBy", "Ended by"),
                ("letGo", "Let go because the timetable changed"),
                ("seenToAt", "Looked after since"),
            ],
            ["id", "sessionId"]
        ),
        ["passes"] = new(
            "Passes sold to her, with the terms they had that day. Prices are in the smallest unit.",
            "passes",
            "Pass",
            [
                ("name", "Pass"),
                ("form", "Gives"),
                ("startsOn", "From"),
                ("runsDays", "Days it runs"),
                ("carriesOver", "Good for every class after a birth"),
                ("price", "Price, in the smallest unit"),
                ("currency", "Currency"),
                ("taxPerMille", "Tax in it, in thousandths"),
                ("paidHow", "Paid"),
                ("soldOn", "Sold on"),
                ("soldAt", "Entered"),
                ("soldBy", "Sold by"),
            ],
            ["id", "kindId", "takingId"]
        ),
        ["passClasses"] = new(
            "Classes a pass is good for.",
            "passes",
            "Good for",
            [("className", "Class")],
            ["passId", "classId"]
        ),
        ["passSessions"] = new(
            "Sessions of a course.",
            "passes",
            "Session of the course",
            [("session", "Class")],
            ["passId", "sessionId"]
        ),
        ["passEntries"] = new(
            "Every line of a pass's ledger; what is left of it is their sum.",
            "passes",
            "Line",
            [
                ("kind", "What"),
                ("credits", "Classes more or fewer"),
                ("why", "Came back because"),
                ("reason", "Reason"),
                ("at", "At"),
                ("by", "By"),
            ],
            ["id", "passId", "bookingId", "takingId"]
        ),
        ["moves"] = new(
            "Moves that were suggested when she came into a new stage.",
            "moves",
            "Suggested move",
            [
                ("toStageName", "Coming into"),
                ("crossesOn", "On"),
                ("status", "State"),
                ("madeAt", "Suggested"),
                ("decidedAt", "Decided"),
                ("decidedBy", "Decided by"),
                ("reason", "Reason"),
            ],
            ["id", "toStage"]
        ),
        ["moveSteps"] = new(
            "Which booking such a move would have moved where.",
            "moves",
            "Step of a move",
            [("toSession", "To")],
            ["moveId", "bookingId", "toSessionId"]
        ),
        ["flags"] = new(
            "Reminders about her that the program showed to the studio.",
            "flags",
            "Flag",
            [
                ("forDesk", "To the front desk"),
                ("forInstructor", "To the instructor"),
                ("session", "Class"),
                ("since", "Since"),
                ("severity", "Weight"),
                ("openedAt", "Opened"),
                ("closedAt", "Closed"),
            ],
            ["id", "subject", "kind", "sessionId", "instructorId"]
        ),
        ["flagReads"] = new(
            "Who has ticked such a reminder as read.",
            "flags",
            "Read",
            [("who", "By"), ("at", "At")],
            ["flagId", "accountId"]
        ),
        ["messages"] = new(
            "Messages to her: what they were about, when they were made and sent.",
            "messages",
            "Message",
            [
                ("kind", "About"),
                ("session", "Class"),
                ("facts", "What it says"),
                ("status", "State"),
                ("madeAt", "Made"),
                ("notBefore", "Not sent before"),
                ("attempts", "Tries"),
                ("triedAt", "Last tried"),
                ("endedAt", "Ended"),
                ("lastAnswer", "Last answer of the mail server"),
            ],
            [
                "id",
                "about",
                "instructorId",
                "accountId",
                "sessionId",
                "claimedAt",
                "unanswered",
                "heldBack",
            ]
        ),
        ["unwantedMessages"] = new(
            "Kinds of message she does without.",
            "messages",
            "Not wanted",
            [("kind", "About"), ("since", "Since"), ("byLink", "By the link in a message")],
            ["id", "instructorId"]
        ),
        ["feeds"] = new(
            "Private calendar addresses, without the address itself.",
            "feeds",
            "Calendar address",
            [("madeAt", "Made"), ("namesClass", "Names the class"), ("revokedAt", "Taken back")],
            ["id", "accountId", "reads"]
        ),
        ["erasures"] = new(
            "Wishes to be erased.",
            "erasures",
            "Wish",
            [
                ("askedAt", "Asked"),
                ("askedBy", "Asked by"),
                ("withdrawnAt", "Taken back"),
                ("doneAt", "Carried out"),
                ("doneBy", "Carried out by"),
            ],
            ["id", "entries", "files"]
        ),
        ["audit"] = new(
            "Who read or changed which part of her health record, and when.",
            "audit",
            "",
            [
                ("at", "At"),
                ("who", "Who"),
                ("seenAs", "As"),
                ("act", "Did"),
                ("kind", "What"),
                ("session", "Class"),
            ],
            ["id", "accountId", "sessionId"]
        ),
    };

    /// <summary>Tables whose rows are told after the row they belong to, and the column that names it.</summary>
    public static IReadOnlyDictionary<string, (string Table, string Column)> Parents { get; } =
        new Dictionary<string, (string, string)>(StringComparer.Ordinal)
        {
            ["datingEvidence"] = ("pregnancies", "pregnancyId"),
            ["dueDates"] = ("pregnancies", "pregnancyId"),
            ["stageChanges"] = ("pregnancies", "pregnancyId"),
            ["classNoteVersions"] = ("classNotes", "noteId"),
            ["moveSteps"] = ("moves", "moveId"),
            ["passClasses"] = ("passes", "passId"),
            ["passSessions"] = ("passes", "passId"),
            ["passEntries"] = ("passes", "passId"),
            ["flagReads"] = ("flags", "flagId"),
        };

    /// <summary>The words of a table; plain ones for a table that has none of its own yet.</summary>
    public static TableLabels Of(string table) =>
        Tables.GetValueOrDefault(table) ?? new("", null, Plain(table), [], ["id"]);

    /// <summary>The heading of a section.</summary>
    public static string TitleOf(string section) =>
        Sections.Where(s => s.Code == section).Select(s => s.Title).FirstOrDefault()
        ?? Plain(section);

    /// <summary><c>enteredAt</c> as <c>Entered at</c>.</summary>
    public static string Plain(string column)
    {
        var words = string.Concat(
            column.Select(c => char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}")
        );
        return char.ToUpperInvariant(words[0]) + words[1..];
    }
}
