using System.Collections;
using System.ComponentModel.DataAnnotations;

namespace Studio.Api.Http;

/// <summary>A list in a request none of whose places is empty (<c>null</c> in JSON).</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class NoGapsAttribute : ValidationAttribute
{
    /// <summary>Says which list it is.</summary>
    public NoGapsAttribute()
        : base("{0} has an empty entry. Leave it out, or fill it in.") { }

    /// <inheritdoc/>
    public override bool IsValid(object? value) =>
        value is not IEnumerable entries || entries.Cast<object?>().All(entry => entry is not null);
}
