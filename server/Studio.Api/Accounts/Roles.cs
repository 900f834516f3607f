using System.Text.Json;
using Studio.Core.Accounts;

namespace Studio.Api.Accounts;

/// <summary>Roles as they are stored, claimed and sent: camelCase.</summary>
public static class Roles
{
    /// <summary>"owner", "reviewer", "frontDesk", "instructor", "client".</summary>
    public static string OnTheWire(this Role role) =>
        JsonNamingPolicy.CamelCase.ConvertName(role.ToString());

    /// <summary>The roles among these words; unknown words are left out.</summary>
    public static IReadOnlySet<Role> Parse(IEnumerable<string> words) =>
        words
            .Select(w =>
                Enum.TryParse<Role>(w, ignoreCase: true, out var role) ? role : (Role?)null
            )
            .OfType<Role>()
            .ToHashSet();
}
