using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Intensity;
using Studio.Api.Movements;
using Studio.Api.Studios;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Intensity;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Api.Clearance;

/// <summary>Puts together the page a client takes to her clinician.</summary>
public sealed class RequestLetters(RuleBook book, StudioStore studio)
{
    /// <summary>What a letter may ask to leave out: every position, and every trait that is a demand.</summary>
    public static IReadOnlyList<TraitChoice> Choices { get; } =
    [
        .. Positions.All.Select(p => new TraitChoice(p.Key, p.Value, IsPosition: true)),
        .. MovementTraits
            .All.Where(t => t.Key != MovementTraits.WorksPropped)
            .Select(t => new TraitChoice(t.Key, t.Value, IsPosition: false)),
    ];

    /// <summary>The letter.</summary>
    /// <param name="read">The database.</param>
    /// <param name="client">Her.</param>
    /// <param name="knowsAll">The reader may know what her record holds; the front desk may not.</param>
    public async Task<RequestLetter> OfAsync(Read read, ClientRow client, bool knowsAll)
    {
        var today = studio.Today(client.Zone);
        var fits = await Fits.LoadAsync(read, book, [client.Id]);
        var her = fits.Of(client.Id);
        var at = book.Stages.On(her.Pregnancy, today);
        var plans = await PlanStore.AllAsync(read);
        var stages = Ahead(at);
        return new RequestLetter
        {
            StudioName = (await studio.AboutAsync()).Name,
            Name = client.Name,
            On = today,
            Phase = at.Phase,
            DueDate = at.Phase == Phase.Pregnant ? her.Pregnancy?.DueDate : null,
            Age = at.Age?.ToString(),
            DaysSinceBirth = at.DaysSinceBirth,
            Classes =
            [
                .. (await StudioStore.ClassesAsync(read))
                    .Where(c => c.Stages.Any(stages.Contains))
                    .Select(c => Class(c, plans.OfClass(c.Id, today), at, fits.Policies)),
            ],
            EffortMost = at.Phase == Phase.Born ? null : fits.Policies.EffortMost,
            TalkTest = HeartRates.Talk(book, IntensityLevel.Moderate).Words!,
            HeartRate = knowsAll ? HeartRateMessage.On(her, today, book, fits.Policies) : null,
            Conditions = knowsAll ? Conditions(her, today) : null,
            Positions = [.. Choices.Where(c => c.IsPosition).Select(c => c.Name)],
            Demands = [.. Choices.Where(c => !c.IsPosition).Select(c => c.Name)],
        };
    }

    // Her stage and the later ones on the same side of the birth; without dates, every stage of pregnancy.
    private HashSet<string> Ahead(Situation at)
    {
        var side = at.Phase == Phase.Born ? StageCount.Birth : StageCount.Pregnancy;
        var from = at.Stage?.FromDay ?? 0;
        return book
            .Stages.Stages.Where(s => s.CountsFrom == side && s.FromDay >= from)
            .Select(s => s.Code)
            .ToHashSet(StringComparer.Ordinal);
    }

    private RequestedClass Class(
        StudioClass one,
        ClassPlan? plan,
        Situation at,
        StudioPolicies policies
    )
    {
        var movements = (plan?.Items ?? [])
            .Select(i => book.MovementOf(i.Movement))
            .OfType<Movement>()
            .ToList();
        var effort = movements.Select(m => m.Effort).Append(one.Effort).Max();
        return new RequestedClass
        {
            Name = one.Name,
            About = one.About,
            Minutes = one.Minutes,
            // What a plan holds above the studio's limit is never asked of somebody pregnant.
            Effort = at.Phase == Phase.Born ? effort : Math.Min(effort, policies.EffortMost),
            Asks =
            [
                .. movements
                    .SelectMany(m => m.Traits)
                    .Concat(one.Traits)
                    .Where(t => t != MovementTraits.WorksPropped)
                    .Select(ClassTraits.NameOf)
                    .OfType<string>()
                    .Distinct(StringComparer.Ordinal)
                    .Order(StringComparer.Ordinal),
            ],
        };
    }

    private List<string> Conditions(HerSituation her, LocalDate today) =>
        [
            .. her
                .Factors.Where(f => f.IsHeldOn(today))
                .Select(f => book.FactorOf(f.Code)?.Name ?? f.Code)
                .Concat(
                    book.Conditions.Where(c => her.Pregnancy is { } p && c.ComesWith(p.Babies))
                        .Select(c => c.Factor.Name)
                )
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];
}
