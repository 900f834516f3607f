using Studio.Core.Intensity;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>The whole catalogue, checked: stages, sources, factors, conditions, class rules, movements with their rules, and the default policies.</summary>
public sealed class RuleBook
{
    private readonly Dictionary<string, Factor> factorsByCode;
    private readonly Dictionary<string, Condition> conditionsByCode;
    private readonly Dictionary<string, int> factorOrder;

    internal RuleBook(
        StageScheme stages,
        IReadOnlyDictionary<string, Source> sources,
        IReadOnlyList<Factor> factors,
        IReadOnlyList<Condition> conditions,
        IReadOnlyList<ClassRule> classRules,
        IReadOnlyList<PolicyChoice> policyChoices,
        IReadOnlyList<IntensityBand> intensity,
        MovementIndex movements
    )
    {
        Index = movements;
        Intensity = intensity;
        (Stages, Sources, Conditions, ClassRules, PolicyChoices) = (
            stages,
            sources,
            conditions,
            classRules,
            policyChoices
        );
        Factors = [.. factors, .. conditions.Select(c => c.Factor)];
        factorsByCode = Factors.ToDictionary(f => f.Code, StringComparer.Ordinal);
        conditionsByCode = conditions.ToDictionary(c => c.Factor.Code, StringComparer.Ordinal);
        factorOrder = Factors
            .Select((f, at) => (f.Code, at))
            .ToDictionary(f => f.Code, f => f.at, StringComparer.Ordinal);
        Policies = policyChoices.Aggregate(
            new StudioPolicies(),
            (all, choice) => all.With(choice.Code, choice.Default).Value ?? all
        );
    }

    /// <summary>The stage scheme.</summary>
    public StageScheme Stages { get; }

    /// <summary>Sources by id.</summary>
    public IReadOnlyDictionary<string, Source> Sources { get; }

    /// <summary>Every code a client may hold: factors first, then the listed conditions.</summary>
    public IReadOnlyList<Factor> Factors { get; }

    /// <summary>The listed conditions.</summary>
    public IReadOnlyList<Condition> Conditions { get; }

    /// <summary>The class rules.</summary>
    public IReadOnlyList<ClassRule> ClassRules { get; }

    /// <summary>The movements, in the order of a class.</summary>
    public IReadOnlyList<Movement> Movements => Index.Movements;

    /// <summary>The movement rules.</summary>
    public IReadOnlyList<MovementRule> MovementRules => Index.Rules;

    /// <summary>The questions of the screening.</summary>
    public required QuestionSet Questions { get; init; }

    /// <summary>The warning signs, in the order of the file.</summary>
    public required IReadOnlyList<WarningSign> WarningSigns { get; init; }

    /// <summary>What a studio may choose.</summary>
    public IReadOnlyList<PolicyChoice> PolicyChoices { get; }

    /// <summary>Published bands of intensity.</summary>
    public IReadOnlyList<IntensityBand> Intensity { get; }

    /// <summary>The policies of a studio that has chosen nothing.</summary>
    public StudioPolicies Policies { get; }

    /// <summary>Whether there is a class rule or a movement rule with this id, or a condition with this reference.</summary>
    public bool HasRule(string id) =>
        ClassRules.Any(r => r.Id == id)
        || MovementRules.Any(r => r.Id == id)
        || Conditions.Any(c => c.Reference == id);

    /// <summary>The factor or condition with a code; null when there is none.</summary>
    public Factor? FactorOf(string code) => factorsByCode.GetValueOrDefault(code);

    /// <summary>The listed condition with a code; null when there is none.</summary>
    public Condition? ConditionOf(string code) => conditionsByCode.GetValueOrDefault(code);

    /// <summary>The movement with a code; null when there is none.</summary>
    public Movement? MovementOf(string code) => Index.MovementOf(code);

    /// <summary>Movements with their rules at hand, for the engine.</summary>
    internal MovementIndex Index { get; }

    /// <summary>A code's place among <see cref="Factors"/>; last for one that is not there.</summary>
    internal int OrderOf(string factor) => factorOrder.GetValueOrDefault(factor, int.MaxValue);

    /// <summary>These policies with one value changed; refused when the code is unknown or the value not an allowed one.</summary>
    public Answer<StudioPolicies> Choose(StudioPolicies policies, string code, string value) =>
        PolicyChoices.FirstOrDefault(c => c.Code == code) is { } choice && !choice.Allows(value)
            ? new Refusal(
                RefusalKind.Invalid,
                "policy-value",
                $"{code} may be {choice.Allowed}, not \"{value}\".",
                "value"
            )
            : policies.With(code, value);

    /// <summary>The same catalogue with a studio's own stage boundaries.</summary>
    public RuleBook WithStages(StageScheme stages) =>
        new(
            stages,
            Sources,
            [.. Factors.Where(f => ConditionOf(f.Code) is null)],
            Conditions,
            ClassRules,
            PolicyChoices,
            Intensity,
            Index
        )
        {
            Questions = Questions,
            WarningSigns = WarningSigns,
        };

    /// <summary>
    /// Reads and checks the catalogue. Files asked for: <c>stages.csv</c>, <c>sources.csv</c>, <c>factors.csv</c>,
    /// <c>conditions.csv</c>, <c>policies.csv</c>, <c>class_rules.csv</c>, <c>heart_rates.csv</c>, <c>movements.csv</c>,
    /// <c>movement_rules.csv</c>, <c>warning_signs.csv</c> and <c>questions.csv</c>.
    /// </summary>
    /// <param name="open">Opens a file by its name; what it throws is let through.</param>
    /// <exception cref="CatalogueException">Anything is wrong; it holds every error of every file.</exception>
    public static RuleBook Parse(Func<string, TextReader> open)
    {
        var errors = new CatalogueErrors();
        var stages = ReadStages(open, errors);
        var sources = SourceFile.Read(open, errors);
        var factors = FactorFile.Read(open, sources, errors);
        var conditions = ConditionFile.Read(open, sources, factors, errors);
        var policies = PolicyFile.Read(open, sources, errors);
        var known = new KnownNames(
            sources,
            stages,
            [.. factors, .. conditions.Select(c => c.Factor)],
            policies
        );
        var rules = ClassRuleFile.Read(open, known, errors);
        var intensity = HeartRateFile.Read(open, sources, errors);
        var movements = MovementFile.Read(open, errors);
        var movementRules = MovementRuleFile.Read(open, known, movements, errors);
        var signs = WarningSignFile.Read(open, sources, errors);
        var questions = QuestionFile.Read(
            open,
            sources,
            [.. factors, .. conditions.Select(c => c.Factor)],
            signs,
            errors
        );
        errors.ThrowIfAny();
        return new(
            stages!,
            sources,
            factors,
            conditions,
            rules,
            policies,
            intensity,
            new(movements, movementRules)
        )
        {
            Questions = questions,
            WarningSigns = signs,
        };
    }

    private static StageScheme? ReadStages(Func<string, TextReader> open, CatalogueErrors errors)
    {
        const string file = "stages.csv";
        try
        {
            using var text = open(file);
            return StageScheme.Parse(text, file);
        }
        catch (CatalogueException wrong)
        {
            errors.AddWorded(file, wrong.Errors);
            return null;
        }
    }
}
