using Studio.Api.Catalogue;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Movements;
using Studio.Api.Studios;
using Studio.Api.Timetable;
using Studio.Core.Booking;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;

namespace Studio.Api.Booking;

/// <summary>The rules with the studio's data laid before them: loaded once a request, asked as often as needed.</summary>
public sealed class Fits
{
    private readonly RuleBook _book;
    private readonly StudioPolicies _policies;
    private readonly IReadOnlyDictionary<long, ClassProfile> _classes;
    private readonly IReadOnlyDictionary<long, HerSituation> _situations;
    private readonly Plans _plans;

    private Fits(
        RuleBook book,
        StudioPolicies policies,
        IReadOnlyDictionary<long, ClassProfile> classes,
        IReadOnlyDictionary<long, HerSituation> situations,
        Plans plans
    ) =>
        (_book, _policies, _classes, _situations, _plans) = (
            book,
            policies,
            classes,
            situations,
            plans
        );

    /// <summary>The rules it goes by.</summary>
    public RuleBook Book => _book;

    /// <summary>The policies in force.</summary>
    public StudioPolicies Policies => _policies;

    /// <summary>The same studio under other rules and policies, to see what they would make of it.</summary>
    public Fits Under(RuleBook book, StudioPolicies policies) =>
        new(book, policies, _classes, _situations, _plans);

    /// <summary>Loads classes, policies and these clients (everybody when null).</summary>
    /// <exception cref="RulesChangedException">A write asks by rules that are no longer in force.</exception>
    public static async Task<Fits> LoadAsync(
        Read read,
        RuleBook book,
        IReadOnlyCollection<long>? clientIds
    )
    {
        if (read is Write write && write.Book != book)
            throw new RulesChangedException();
        var classes = (await StudioStore.ClassesAsync(read)).ToDictionary(
            c => c.Id,
            c => new ClassProfile
            {
                Code = c.Code,
                Name = c.Name,
                Stages = c.Stages.ToHashSet(StringComparer.Ordinal),
                Traits = c.Traits.ToHashSet(StringComparer.Ordinal),
            }
        );
        return new Fits(
            book,
            await PolicyStore.InForceAsync(read, book),
            classes,
            await SituationStore.OfAsync(read, clientIds),
            await PlanStore.AllAsync(read)
        );
    }

    /// <summary>What is known of a client; she was among those loaded.</summary>
    public HerSituation Of(long clientId) => _situations[clientId];

    /// <summary>
    /// Whether her pregnancy has ended, whatever the date where a session is held: after a loss she is on no list below the
    /// owner's.
    /// </summary>
    public bool HasEnded(long clientId) => _situations[clientId].Pregnancy is { EndedOn: not null };

    /// <summary>How a session suits a client on the session's own date.</summary>
    public Fit Of(long clientId, SessionRow session) => Of(clientId, session.Dated);

    /// <inheritdoc cref="Of(long, SessionRow)"/>
    public Fit Of(long clientId, DatedClass session) => Of(clientId, session, _plans.Of(session));

    /// <summary>How a session would suit a client on its own date under another plan.</summary>
    public Fit Of(long clientId, DatedClass session, ClassPlan? plan) =>
        FitRules.Of(
            _situations[clientId],
            _classes[session.ClassId],
            session.On,
            _book,
            _policies,
            plan
        );

    /// <summary>The plan of a session; null when neither it nor its class has one.</summary>
    public ClassPlan? PlanOf(SessionRow session) => _plans.Of(session.Dated);
}
