namespace Studio.Core.Catalogue;

/// <summary>Where in the questions one stands.</summary>
public enum QuestionSection
{
    /// <summary>What she agrees to.</summary>
    Agreement,

    /// <summary>Her dates.</summary>
    Dates,

    /// <summary>Warning signs, now.</summary>
    Signs,

    /// <summary>Earlier pregnancies, and how active she was.</summary>
    Before,

    /// <summary>The conditions of the published lists.</summary>
    Health,

    /// <summary>How her body feels now.</summary>
    Now,

    /// <summary>Whom to call.</summary>
    Emergency,
}

/// <summary>How a question is answered.</summary>
public enum QuestionKind
{
    /// <summary>Yes, no, or not sure.</summary>
    YesNo,

    /// <summary>She agrees; without it nothing is kept.</summary>
    Agree,

    /// <summary>Something on her page is right.</summary>
    Confirm,

    /// <summary>Her own words; may stay empty.</summary>
    Text,
}

/// <summary>To whom something is said or asked.</summary>
public enum AskedWhen
{
    /// <summary>While she is pregnant.</summary>
    Pregnancy,

    /// <summary>Once the baby is born.</summary>
    AfterBirth,

    /// <summary>Always.</summary>
    Always,
}

/// <summary>One question of the screening.</summary>
/// <param name="Code">Stable, kebab-case.</param>
/// <param name="Section">Where it stands.</param>
/// <param name="When">To whom it is asked.</param>
/// <param name="Kind">How it is answered.</param>
/// <param name="About">The factor, condition or warning sign that a yes means; null when it means none.</param>
/// <param name="Asks">The question, in our own words.</param>
/// <param name="Help">What stands below it; may be blank.</param>
/// <param name="Source">Why it is asked.</param>
public sealed record Question(
    string Code,
    QuestionSection Section,
    AskedWhen When,
    QuestionKind Kind,
    string? About,
    string Asks,
    string Help,
    Source Source
)
{
    /// <summary>Whether it must be answered.</summary>
    public bool IsRequired => Kind != QuestionKind.Text;
}

/// <summary>A warning sign of the published lists.</summary>
/// <param name="Code">Stable, kebab-case.</param>
/// <param name="Reference">The fact row it restates, W01 to W13.</param>
/// <param name="When">To whom it is shown.</param>
/// <param name="Name">In a few words, for one tap.</param>
/// <param name="Asks">In a sentence.</param>
/// <param name="Stops">Stop the class and refer her; false: slow down and seek advice.</param>
/// <param name="Source">Where it stands.</param>
public sealed record WarningSign(
    string Code,
    string Reference,
    AskedWhen When,
    string Name,
    string Asks,
    bool Stops,
    Source Source
);
