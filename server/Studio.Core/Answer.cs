using System.Diagnostics.CodeAnalysis;

namespace Studio.Core;

/// <summary>What a rule answers when it may also say no: a value, or the refusal that stands in its place.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public sealed record Answer<T>
{
    private Answer(T? value, Refusal? refusal) => (Value, Refusal) = (value, refusal);

    /// <summary>The value, when the answer is not a refusal.</summary>
    public T? Value { get; }

    /// <summary>The refusal, when there is no value.</summary>
    public Refusal? Refusal { get; }

    /// <summary>Takes the answer apart; true when there is a value.</summary>
    public bool TryGet([NotNullWhen(true)] out T? value, [NotNullWhen(false)] out Refusal? refusal)
    {
        (value, refusal) = (Value, Refusal);
        return Refusal is null;
    }

    /// <summary>A value is an answer.</summary>
    public static implicit operator Answer<T>(T value) => new(value, null);

    /// <summary>A refusal is an answer.</summary>
    public static implicit operator Answer<T>(Refusal refusal) => new(default, refusal);
}
