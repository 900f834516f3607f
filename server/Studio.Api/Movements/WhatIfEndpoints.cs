using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using Studio.Api.Accounts;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Accounts;
using Studio.Core.Catalogue;
using Studio.Core.Clients;
using Studio.Core.Movements;
using Studio.Core.Pregnancies;

namespace Studio.Api.Movements;

/// <summary>A question about nobody in particular.</summary>
public sealed record WhatIfRequest
{
    /// <summary>Code of a stage, its first day is meant; or else a due date.</summary>
    [StringLength(60)]
    public string? Stage { get; init; }

    /// <summary>A due date, with the date asked for.</summary>
    public LocalDate? DueDate { get; init; }

    /// <summary>The date asked for; today when left out.</summary>
    public LocalDate? On { get; init; }

    /// <summary>How the baby was born, after a birth; not known when left out, which is the cautious reading.</summary>
    public BirthMode? BirthMode { get; init; }

    /// <summary>Codes of factors and conditions.</summary>
    [MaxLength(100)]
    public IReadOnlyList<string?>? Factors { get; init; }

    /// <summary>Positions and traits that a letter leaves out.</summary>
    [MaxLength(100)]
    public IReadOnlyList<string?>? Restrictions { get; init; }

    /// <summary>A letter's effort ceiling, 0 to 10.</summary>
    [Range(0, 10)]
    public int? EffortMost { get; init; }

    /// <summary>The class whose plan is asked about; every movement of the catalogue when left out.</summary>
    public long? PlanId { get; init; }
}

/// <summary>What would become of each movement.</summary>
/// <param name="Age">Gestational age on that date, "24w 3d".</param>
/// <param name="Stage">Code of the stage.</param>
/// <param name="StageName">Its name.</param>
/// <param name="Movements">Each movement with its verdict.</param>
public sealed record WhatIfAnswer(
    string? Age,
    string Stage,
    string StageName,
    IReadOnlyList<HerMovementMessage> Movements
);

/// <summary>Asks the rules without naming anybody; stores nothing.</summary>
public static class WhatIfEndpoints
{
    /// <summary>Maps the route.</summary>
    public static void MapWhatIf(this IEndpointRouteBuilder app) =>
        app.MapPost("/api/what-if", AskAsync)
            .WithName("WhatIf")
            .WithTags("Movements")
            .RequireAuthorization(Policies.Teaching)
            .ProducesProblem(400)
            .ProducesProblem(404);

    private static async Task<Results<Ok<WhatIfAnswer>, ProblemHttpResult>> AskAsync(
        WhatIfRequest request,
        Database database,
        RuleBook book,
        StudioStore studio
    )
    {
        var on = request.On ?? (await studio.AboutAsync()).Today;
        if (!HerPregnancy(request, on, book).TryGet(out var pregnancy, out var refusal))
            return refusal.ToProblem();
        List<string> factors =
        [
            .. (request.Factors ?? []).Select(f => f ?? "").Distinct(StringComparer.Ordinal),
        ];
        List<string> restrictions = [.. (request.Restrictions ?? []).Select(r => r ?? "")];
        if (Unknown(factors, restrictions, book) is { } unknown)
            return unknown.ToProblem();

        await using var read = await database.ReadAsync();
        var plan = new ClassPlan([.. book.Movements.Select(m => new PlanItem(m.Code, 1))]);
        if (request.PlanId is { } classId)
        {
            if ((await PlanStore.AllAsync(read)).OfClass(classId, on) is not { } ofClass)
                return new Refusal(
                    RefusalKind.NotFound,
                    "no-such-plan",
                    "This class has no plan."
                ).ToProblem();
            plan = ofClass;
        }

        var her = new HerSituation
        {
            Pregnancy = pregnancy,
            Factors = [.. factors.Select(code => new HeldFactor(code, on, null))],
            Restrictions =
                restrictions.Count > 0 || request.EffortMost is not null
                    ?
                    [
                        new Restriction
                        {
                            From = on,
                            LeaveOut = restrictions.ToHashSet(StringComparer.Ordinal),
                            EffortMost = request.EffortMost,
                        },
                    ]
                    : [],
        };
        var fit = PlanRules.Of(plan, her, on, book, await PolicyStore.InForceAsync(read, book));
        return TypedResults.Ok(
            new WhatIfAnswer(
                fit.Situation.Age?.ToString(),
                fit.Situation.Stage!.Code,
                fit.Situation.Stage.Name,
                PlanWords.Hers(fit, Audience.Owner, shares: true)
            )
        );
    }

    private static Answer<Pregnancy> HerPregnancy(
        WhatIfRequest request,
        LocalDate on,
        RuleBook book
    )
    {
        if (request.DueDate is { } due)
            return Dating.AgeOn(on, due).TryGet(out _, out var refusal)
                ? new Pregnancy { DueDate = due }
                : refusal with
                {
                    Field = "dueDate",
                };
        if (book.Stages.Stages.FirstOrDefault(s => s.Code == request.Stage) is not { } stage)
            return new Refusal(
                RefusalKind.Invalid,
                "no-such-stage",
                "Say either a stage of the scheme or a due date.",
                "stage"
            );
        return stage.CountsFrom == StageCount.Pregnancy
            ? new Pregnancy { DueDate = on.PlusDays(GestationalAge.AtDueDate - stage.FromDay) }
            : new Pregnancy
            {
                BornOn = on.PlusDays(-stage.FromDay),
                BirthMode = request.BirthMode ?? Core.Pregnancies.BirthMode.Unknown,
            };
    }

    private static Refusal? Unknown(
        IReadOnlyList<string> factors,
        IReadOnlyList<string> restrictions,
        RuleBook book
    ) =>
        factors.FirstOrDefault(f => book.FactorOf(f) is null) is { } factor
            ? new(
                RefusalKind.Invalid,
                "no-such-factor",
                $"The catalogue has no factor \"{factor}\".",
                "factors"
            )
        : restrictions.FirstOrDefault(r =>
            !Positions.All.ContainsKey(r) && !MovementTraits.All.ContainsKey(r)
        )
            is { } restriction
            ? new(
                RefusalKind.Invalid,
                "no-such-restriction",
                $"There is no position or trait \"{restriction}\".",
                "restrictions"
            )
        : null;
}
