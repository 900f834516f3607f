using NodaTime;
using Studio.Api.Booking;
using Studio.Api.Catalogue;
using Studio.Api.Data;
using Studio.Core;
using Studio.Core.Catalogue;

namespace Studio.Api.Studios;

/// <summary>What a value of a policy would change.</summary>
public sealed record PolicyPreview
{
    /// <summary>What holds now.</summary>
    public required string From { get; init; }

    /// <summary>What would hold.</summary>
    public required string To { get; init; }

    /// <summary>It is less cautious than the catalogue's default, which has to be confirmed.</summary>
    public required bool LessCautious { get; init; }

    /// <summary>What becomes of the bookings ahead.</summary>
    public required Consequences Bookings { get; init; }
}

/// <summary>Chooses policies: what a choice would change, and the choice itself with its entry.</summary>
public sealed class PolicyChanges(NewRules rules, IClock clock)
{
    private static readonly Refusal NoSuchPolicy = new(
        RefusalKind.NotFound,
        "no-such-policy",
        "There is no such policy."
    );

    /// <summary>What a value would change; null for the default. Writes nothing.</summary>
    public async Task<Answer<PolicyPreview>> TryAsync(
        Read read,
        RuleBook book,
        string code,
        string? value
    )
    {
        if (!(await AskAsync(read, book, code, value)).TryGet(out var asked, out var refusal))
            return refusal;
        var fits = await Fits.LoadAsync(read, book, null);
        return new PolicyPreview
        {
            From = asked.From,
            To = asked.To,
            LessCautious = asked.LessCautious,
            Bookings = await Consequences.OfAsync(
                read,
                fits,
                book,
                asked.Policies,
                clock.GetCurrentInstant()
            ),
        };
    }

    /// <summary>Chooses a value; null for the default. The caller commits. Choosing what holds already is no change.</summary>
    public async Task<Refusal?> ChooseAsync(
        Write write,
        string code,
        string? value,
        string why,
        bool confirmed,
        long? by
    )
    {
        if (
            !(await AskAsync(write, write.Book, code, value)).TryGet(out var asked, out var refusal)
        )
            return refusal;
        if (asked.From == asked.To)
            return null;
        if (asked.LessCautious && !confirmed)
            return new(
                RefusalKind.Conflict,
                "less-cautious",
                $"You choose less cautious than the catalogue: {asked.To} instead of {asked.Default}. Confirm that the studio means it; nothing was changed.",
                "confirmed"
            );
        var at = clock.GetCurrentInstant();
        await PolicyStore.SetAsync(
            write,
            code,
            asked.To == asked.Default ? null : asked.To,
            at,
            by
        );
        await PolicyStore.NoteAsync(
            write,
            new()
            {
                Code = code,
                From = asked.From,
                To = asked.To,
                ByDefault = asked.To == asked.Default,
                Why = why,
                MadeAt = at,
            },
            by
        );
        await rules.SettleAsync(write);
        return null;
    }

    private static async Task<Answer<Asked>> AskAsync(
        Read read,
        RuleBook book,
        string code,
        string? value
    )
    {
        if (book.PolicyChoices.FirstOrDefault(c => c.Code == code) is not { } choice)
            return NoSuchPolicy;
        var inForce = await PolicyStore.InForceAsync(read, book);
        var to = value ?? choice.Default;
        return book.Choose(inForce, code, to).TryGet(out var policies, out var refusal)
            ? new Asked(
                inForce.ValueOf(code),
                policies.ValueOf(code),
                choice.Default,
                PolicyCaution.Of(code, policies.ValueOf(code), choice.Default) == Caution.Less,
                policies
            )
            : refusal;
    }

    private sealed record Asked(
        string From,
        string To,
        string Default,
        bool LessCautious,
        StudioPolicies Policies
    );
}
