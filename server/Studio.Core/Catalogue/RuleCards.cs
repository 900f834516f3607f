using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>Every rule of a catalogue in one shape, in the order of its files.</summary>
public static class RuleCards
{
    /// <summary>Class rules, movement rules, then what each list says of each condition.</summary>
    public static IReadOnlyList<RuleCard> Of(RuleBook book, StudioPolicies policies) =>
        [
            .. book.ClassRules.Select(rule => Of(rule, book, policies)),
            .. OfMovements(book, policies),
            .. book.Conditions.SelectMany(condition => Of(condition, book, policies)),
        ];

    /// <summary>The movement rules alone.</summary>
    public static IEnumerable<RuleCard> OfMovements(RuleBook book, StudioPolicies policies) =>
        book.MovementRules.Select(rule => Of(rule, book, policies));

    private static RuleCard Of(ClassRule rule, RuleBook book, StudioPolicies policies) =>
        new()
        {
            Id = rule.Id,
            About = rule.Trait is null ? RuleAbout.WholeClass : RuleAbout.ClassTrait,
            Speaks =
                (
                    rule.Trait is { } trait
                        ? $"Classes with: {WhenWords.TraitOf(trait)}"
                        : "Every class"
                )
                + (
                    rule.Except is { } except
                        ? $"; not those with: {WhenWords.TraitOf(except)}"
                        : ""
                ),
            Traits = rule.Trait is { } code ? [code] : [],
            Outcome = rule.Verdict switch
            {
                RuleVerdict.Note => RuleOutcome.Note,
                RuleVerdict.Adapted => RuleOutcome.Adapted,
                RuleVerdict.Letter => RuleOutcome.Letter,
                RuleVerdict.NotSuitable => RuleOutcome.NotSuitable,
            },
            When = WhenWords.Of(rule, book, policies),
            Stages = StagesOf(rule, book),
            Factor = rule.Factor,
            Policy = rule.Policy?.Code ?? rule.UntilBorn?.Policy,
            Counts = rule.Policy?.HoldsIn(policies) ?? true,
            ForHer = rule.ForHer,
            ForInstructor = rule.ForInstructor,
            Lift = rule.Lift?.Replace(
                "{date}",
                "the day it no longer holds",
                StringComparison.Ordinal
            ),
            Source = rule.Source,
        };

    private static RuleCard Of(MovementRule rule, RuleBook book, StudioPolicies policies)
    {
        var limit = rule
            .Target.EffortOver?.In(policies)
            .ToString(System.Globalization.CultureInfo.InvariantCulture);
        return new()
        {
            Id = rule.Id,
            About = RuleAbout.Movements,
            Speaks = WhenWords.TargetOf(rule.Target, book, policies),
            Traits = [.. new[] { rule.Target.Position, rule.Target.Trait }.OfType<string>()],
            Outcome = rule.Verdict switch
            {
                MovementVerdict.AsTaught => RuleOutcome.AsTaught,
                MovementVerdict.Adapted => RuleOutcome.Adapted,
                MovementVerdict.Replaced => RuleOutcome.Replaced,
                MovementVerdict.LeftOut => RuleOutcome.LeftOut,
            },
            When = WhenWords.Of(rule, book, policies),
            Stages = StagesOf(rule, book),
            Factor = rule.Factor,
            Policy = rule.Policy?.Code ?? rule.UntilBorn?.Policy ?? rule.Target.EffortOver?.Policy,
            Counts = rule.Policy?.HoldsIn(policies) ?? true,
            ForHer = rule.ForHer.Replace("{limit}", limit, StringComparison.Ordinal),
            ForInstructor = rule.Instruction.Replace("{limit}", limit, StringComparison.Ordinal),
            Source = rule.Source,
        };
    }

    private static IEnumerable<RuleCard> Of(
        Condition condition,
        RuleBook book,
        StudioPolicies policies
    )
    {
        (string List, Listing? Listing, Guideline[] Under)[] said =
        [
            ("acog", condition.Acog, [Guideline.Stricter, Guideline.Acog]),
            ("canada", condition.Canada, [Guideline.Stricter, Guideline.Canada]),
            ("review", condition.Review, [Guideline.Stricter]),
            ("after birth", condition.AfterBirth, Enum.GetValues<Guideline>()),
        ];
        foreach (var (list, listing, under) in said)
        {
            if (listing is not { Severity: > Severity.None })
                continue;
            var born = list == "after birth";
            var from = Condition.Begins(listing, policies);
            yield return new()
            {
                Id = $"{condition.Reference} {list}",
                About = RuleAbout.Condition,
                Speaks = "Every class",
                Outcome =
                    listing.Severity == Severity.Absolute
                        ? RuleOutcome.NotSuitable
                        : RuleOutcome.Letter,
                When =
                [
                    $"She has: {condition.Factor.Name}",
                    .. from is { } age ? [$"From {age} on"] : Array.Empty<string>(),
                    born ? "Once the baby is born" : "Until the birth",
                    .. under.Length < 3
                        ? [$"Policy guideline is {WhenWords.Values(under.Select(GuidelineOf))}"]
                        : Array.Empty<string>(),
                ],
                Stages =
                [
                    .. book
                        .Stages.Stages.Where(s =>
                            s.CountsFrom == (born ? StageCount.Birth : StageCount.Pregnancy)
                            && (s.ToDay ?? int.MaxValue) >= (from?.Days ?? 0)
                        )
                        .Select(s => s.Code),
                ],
                Factor = condition.Factor.Code,
                Policy = "guideline",
                Counts = under.Contains(policies.Guideline),
                ForHer =
                    listing.Severity == Severity.Absolute
                        ? $"{condition.Factor.Name}: no classes here for now."
                        : $"{condition.Factor.Name}: a word from your clinician is needed first.",
                ForInstructor = condition.Factor.InstructorWords,
                Lift =
                    listing.Severity == Severity.Absolute
                        ? "When her clinician says this is over."
                        : "A letter that counts on that day.",
                Source = listing.Source,
            };
        }
    }

    private static string GuidelineOf(Guideline guideline) =>
        new StudioPolicies { Guideline = guideline }.ValueOf("guideline");

    private static IReadOnlyList<string> StagesOf(RuleWhen rule, RuleBook book) =>
        [
            .. book
                .Stages.Stages.Where(s =>
                    RuleReach.CanHoldIn(rule, book.FactorOf(rule.Factor ?? ""), s)
                )
                .Select(s => s.Code),
        ];
}
