using NodaTime;
using Studio.Api.Data;
using Studio.Api.Timetable;
using Studio.Core;
using Studio.Core.Catalogue;
using Studio.Core.Passes;

namespace Studio.Api.Passes;

/// <summary>What a client has to pay with, and when it runs out, as things stand in one transaction.</summary>
public sealed class Purse
{
    private readonly bool _needed;
    private readonly IReadOnlyList<StandStill> _stills;

    private Purse(List<PassRow> passes, StandStillFacts facts, bool needed)
    {
        Passes = passes;
        Causes = PassClock.Causes(facts);
        _stills = PassClock.StandStills(facts);
        _needed = needed;
    }

    /// <summary>Her passes, in the order in which they were sold.</summary>
    public IReadOnlyList<PassRow> Passes { get; }

    /// <summary>When no pass of hers runs, with what stops it.</summary>
    public IReadOnlyList<(StillCause Cause, StandStill Still)> Causes { get; }

    /// <summary>Loads it.</summary>
    public static async Task<Purse> LoadAsync(Read read, long clientId, StudioPolicies policies) =>
        (await LoadAsync(read, [clientId], policies))[clientId];

    /// <summary>Loads those of several clients; of everybody who has a pass when null.</summary>
    public static async Task<Dictionary<long, Purse>> LoadAsync(
        Read read,
        IReadOnlyCollection<long>? clientIds,
        StudioPolicies policies
    )
    {
        var passes = (await PassStore.OfAsync(read, clientIds)).ToLookup(p => p.ClientId);
        var owners = clientIds ?? [.. passes.Select(p => p.Key)];
        // Without a pass nothing can stand still.
        var withPass = owners.Where(passes.Contains).ToList();
        var facts = withPass.Count == 0 ? null : await PassStore.StillFactsAsync(read, withPass);
        return owners
            .Distinct()
            .ToDictionary(
                id => id,
                id => new Purse(
                    [.. passes[id]],
                    Facts(facts is null ? [] : facts[id], policies),
                    policies.PassesNeeded
                )
            );
    }

    /// <summary>The pass that pays for a session; null when none does.</summary>
    public PassRow? ThatPays(SessionRow session) =>
        PassRules.ThatPays(
            Passes.Select(p => p.Pass),
            session.Id,
            session.ClassId,
            session.OnDate,
            _stills
        )
            is { } pass
            ? Passes.Single(p => p.Id == pass.Id)
            : null;

    /// <summary>Why she cannot book without a pass for it; null when she can, or has one.</summary>
    /// <param name="session">The session.</param>
    /// <param name="herself">The words are for her.</param>
    public Refusal? WhyNot(SessionRow session, bool herself) =>
        _needed && ThatPays(session) is null ? PassRefusals.NeedsPass(herself) : null;

    /// <summary>The last day of a pass; null while nobody knows. A course ends with its last session.</summary>
    public LocalDate? LastDay(Pass pass) => PassClock.LastDay(pass, StillsOf(pass));

    /// <summary>Days by which its last day was put off; null while nobody knows.</summary>
    public int? PutOffDays(Pass pass) => PassClock.PutOffDays(pass, StillsOf(pass));

    private IReadOnlyList<StandStill> StillsOf(Pass pass) =>
        pass.Form == PassForm.Course ? [] : _stills;

    private static StandStillFacts Facts(IEnumerable<StillFact> facts, StudioPolicies policies)
    {
        var all = facts.ToList();
        return new StandStillFacts(
            [.. all.Where(f => f.IsHold).Select(f => (f.FromOn!.Value, f.LiftedOn))],
            [
                .. all.Where(f => !f.IsHold)
                    .Select(f => new PassPregnancy(f.DueDate, f.BornOn, f.EndedOn, f.BackOn)),
            ],
            policies.PassStopsBeforeDueWeeks,
            policies.PassStopsAfterBirthWeeks
        );
    }
}
