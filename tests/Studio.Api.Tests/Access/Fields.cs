namespace Studio.Api.Tests.Access;

/// <summary>Who may find something in a field of an answer: D the front desk, I an instructor, R a reader of letters, and a
/// dash for nobody below the owner.</summary>
internal static class Fields
{
    /// <summary>By schema and property.</summary>
    public static IReadOnlyDictionary<string, string> Allowed { get; } =
        Table
            .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split(' '))
            .SelectMany(line => line.Skip(2).Select(field => ($"{line[0]}.{field}", line[1])))
            .ToDictionary(f => f.Item1, f => f.Item2, StringComparer.Ordinal);

    private const string Table = """
        CandidateMessage DI answer instructorId name phone reasons standing
        CandidateMessage - against
        CoverMessage DI askedAt candidates insteadOf isAsked isLoud session state
        CoverListMessage D open settles
        MyCoverMessage DI asked mine settles
        CoverAskedMessage I against answer insteadOf mayTake reasons session
        AnsweredScreening R answeredOn answers differs id outcome version
        AvailableHours I from locationId to weekday
        CatalogueMovement I code cue effort equipment group name options position rules traits
        CatalogueMovements I movements restrictions rules
        ChangeMessage - movements reasons
        ChangeReasonMessage - lift source text
        ChangedMovementMessage - how minutes name option position verdict
        Choice D bookingId bookingStatus canBook fit place refusal session
        ChoiceInFull - changes
        ChoiceInFull D choice
        ClassNote I by changedAt className clientId id isMine on sessionId text version writtenAt
        ClassPlanMessage I classId className items mayChange minutes version versions whyNot
        ClearanceMessage D says status validUntil
        ClientBooking D bookingId checkedInAt fit ifCancelled place session status
        ClientCard - bornOn factors intensity
        ClientCard D called clearance email emergencyName emergencyPhone hasAccount homeLocationId id name needs onHold phase phone pregnancy screening sharesConditions tape zone
        ClientFound D called email id location name phone
        DatingHistory D evidence revisions
        DatingRevision D basis dueDate enteredAt enteredBy explanation
        DemoAccount DIR does email password role
        DemoMessage DIR accounts loaded
        EmergencyMessage I name phone
        EvidenceMessage D day detail enteredAt enteredBy kind
        FeedMessage I id madeAt namesClass reads
        FactorChoice DIR code isCondition name
        FactorMessage - code from id isCondition name to
        FitMessage - plan
        FitMessage D age daysSinceBirth label mayHaveGivenBirth reasons stage stageName summary verdict
        FlagMessage D name
        FlagMessage DI called clientId id isNew kind sessionId severity since text
        HeartRateMessage I byLetter high low says sources
        HerSession I className locationName on sessionId startsLocal
        HerMovementMessage I instruction name option position reasons verdict
        HoursMessage I months weeklyMinutesMost weeks
        HoursOf I aheadMinutes aheadSessions from heldMinutes heldSessions name to
        InstructionMessage I source text
        InstructorPage - leftOn
        InstructorPage I availability called email hasAccount id leave name phone qualifications restMinutesLeast weeklyMinutesMost wishes
        IntensityMessage - heartRate talkSource talkTest
        LeaveMessage I from id sessions to
        LetterMessage DR clientId countsUntil filedAt id issuedOn name onPaper reviewedAt says state withdrawn
        LetterMessage R heldSince expiresOn issuedBy mediaType refusedBecause reviewedBy terms
        LetterPerson R called id lastFiledAt name
        LetterTermsMessage R effortMost heartRateMost leaveOut leaveOutWords replacesEarlier words
        LetGoMessage D at bookingId called choices clientId name phone session why
        LiftMessage D on text
        Location DIR code emergencyNumber id name rooms zone
        Me - clientId
        Me DIR accountId email name roles studioName today
        Me I instructorId
        MessageChoice I kind title wanted
        MyMessage - at id kind says subject text
        StopMessage DIR stopped title
        MoveMessage D called clientId crossesOn crossesTo crossesToName id madeAt name steps
        MoveStepMessage D bookingId fit from to
        MovementMessage I code cue effort equipment group groupName name options position positionName traits
        MovementReasonMessage I source text
        Named I code name
        Need D by code says
        NextStage D code name on
        PassEntryMessage D at balance by className credits id kind on paidBack reason says
        PassKindMessage D carriesOver classIds credits currency form id name onSale price priceText runsDays says sessionIds taxPerMille
        PassMessage D balance classes currency form id isUsable lastDay leftToPayBack ledger name paidHow price priceText putOffBecause putOffDays says soldBy soldOn startsOn taxPerMille taxText
        PayLineMessage I amount amountText className currency heads instructorId instructorName locationName minutes on per rate sessionId startsLocal
        PayMessage I byInstructor from lines to totals withoutRate
        PayTotalMessage I amount amountText currency instructorId instructorName sessions
        PersonMessage DI wellAt administrative bookingId called checkedInAt clientId flags mayHaveGivenBirth name place verdict
        PersonMessage I age conditions daysSinceBirth emergency heartRate instructions movements notes stage stageName talkTest
        PlanItemMessage I minutes movement name
        PlanShareMessage - adapted asTaught changed leftOut minutes replaced
        PlanVersionItems I items version
        PlanVersionMessage I followsClass madeAt madeBy version
        PlannedMovementMessage I code cue effort group minutes name position
        PregnancyMessage - babies birthMode
        PregnancyMessage D age ageDays basis birthReportable birthRevocable bornOn daysSinceBirth dueDate explanation mayHaveGivenBirth nextStage pastDue stage stageName term
        QualificationMessage I expiresOn hasProof id issuedOn kind sessionsAfter status
        QuestionMessage D asks code help kind section source
        ReasonMessage - source
        ReasonMessage D code lift text verdict
        RefusalMessage DI code message
        RequestLetter DR age classes daysSinceBirth demands dueDate effortMost name on phase positions studioName talkTest
        RequestLetter R conditions heartRate
        RequestedClass DR about asks effort minutes name
        Room DIR id locationId name seats
        RosterMessage DI emergencyNumber people session waiting
        RosterMessage I plan
        RuleMessage I about counts factor forHer forInstructor id lift outcome policy source speaks stages traits when
        ScreeningForm - draft savedAt
        ScreeningForm D askedBecause asksWhetherChanged emergencyNumber questions says version
        ScreeningMessage D answeredOn says status
        SessionNotes I lastDay notes opensAt whyNot
        SessionPlanMessage I classId className followsClass items mayChange minutes on sessionId startsLocal version versions whyNot
        SessionSummary DI checkedIn classCode classId className endsAt endsLocal id instructorId instructorName instructorQualified locationId locationName minutes on roomId roomName seats seatsTaken stages startsAt startsLocal status unsuitable waiting zone
        SourceMessage DIR cite fromMemory
        StageMessage DIR code countsFrom fromDay name source toDay
        StudioClass DIR about code effort id minutes name needsQualification stages traits
        Tape D bands bookings bornOn dueDate end letters start today
        TapeBand D from name stage to
        TapeBooking D bookingId className on sessionId status verdict
        TapeLetter D from to
        TeachingWishMessage I kind value weight
        TraitChoice DIR code isPosition name
        TraitMessage I code name
        WaitingCount R letters
        WarningSignMessage DIR asks code name source stops when
        """;
}
