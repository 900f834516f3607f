namespace Studio.Core.Accounts;

/// <summary>Every way of saying no to what is done with an account.</summary>
public static class AccountRefusals
{
    /// <summary>There is none.</summary>
    public static readonly Refusal NoSuchAccount = new(
        RefusalKind.NotFound,
        "no-such-account",
        "There is no such account."
    );

    /// <summary>Somebody must be able to give roles back.</summary>
    public static readonly Refusal LastOwner = new(
        RefusalKind.Conflict,
        "last-owner",
        "This is the only owner. Make somebody else an owner first, then take the role away here.",
        "roles"
    );

    /// <summary>Why an account cannot have these roles, or null.</summary>
    /// <param name="roles">All it would have.</param>
    /// <param name="isClients">It belongs to a client.</param>
    /// <param name="isInstructors">It belongs to an instructor.</param>
    /// <param name="isLastOwner">Nobody else is an owner.</param>
    public static Refusal? WhyNot(
        IReadOnlyCollection<Role> roles,
        bool isClients,
        bool isInstructors,
        bool isLastOwner
    ) =>
        isLastOwner && !roles.Contains(Role.Owner) ? LastOwner
        : roles.Contains(Role.Client) != isClients
            ? Tied(
                isClients
                    ? "This account belongs to a client and stays one: it is her way to her own page."
                    : "This account belongs to no client, so it cannot be one. Give her an account on her card."
            )
        : roles.Contains(Role.Instructor) != isInstructors
            ? Tied(
                isInstructors
                    ? "This account belongs to an instructor and stays one: it is her way to her rosters."
                    : "This account belongs to no instructor, so it cannot be one. Give her an account among the instructors."
            )
        : null;

    private static Refusal Tied(string message) =>
        new(RefusalKind.Invalid, "role-is-tied", message, "roles");
}
