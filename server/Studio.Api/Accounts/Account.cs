using NodaTime;

namespace Studio.Api.Accounts;

/// <summary>Somebody who may sign in.</summary>
public sealed class Account
{
    /// <summary>Key.</summary>
    public long Id { get; set; }

    /// <summary>E-mail address as typed.</summary>
    public string Email { get; set; } = "";

    /// <summary>E-mail address for look-ups.</summary>
    public string NormalizedEmail { get; set; } = "";

    /// <summary>Name shown in the shell.</summary>
    public string Name { get; set; } = "";

    /// <summary>Hash of the password.</summary>
    public string? PasswordHash { get; set; }

    /// <summary>Changes when sign-ins elsewhere must end.</summary>
    public string SecurityStamp { get; set; } = "";

    /// <summary>Locked out until then.</summary>
    public Instant? LockoutUntil { get; set; }

    /// <summary>Wrong passwords in a row.</summary>
    public int FailedCount { get; set; }

    /// <summary>Belongs to the demo studio.</summary>
    public bool IsDemo { get; set; }

    /// <summary>When it was made.</summary>
    public Instant MadeAt { get; set; }
}
