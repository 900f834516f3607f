using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>Whose messages of which kind a link stops.</summary>
/// <param name="ClientId">This client's.</param>
/// <param name="InstructorId">Or this instructor's.</param>
/// <param name="Kind">Of this kind.</param>
public sealed record Stopping(long? ClientId, long? InstructorId, MessageKind Kind);

/// <summary>The addresses that stand in messages.</summary>
public sealed class MailLinks(MailSettings settings, IDataProtectionProvider protection)
{
    private readonly IDataProtector _stops = protection.CreateProtector("studio.messages.stop");

    /// <summary>A page of ours.</summary>
    public string Page(string path) => settings.PublicUrl + path;

    /// <summary>
    /// The link that stops a kind with one press, signed in or not. It is signed, so that nobody can stop what is
    /// somebody else's; it says nothing to whoever reads it.
    /// </summary>
    public string Stop(Stopping what) => Page($"/mail/stop/{Token(what)}");

    /// <summary>The signed part of it.</summary>
    public string Token(Stopping what) =>
        _stops.Protect($"{what.ClientId}/{what.InstructorId}/{what.Kind.OnTheWire()}");

    /// <summary>What a signed part stops; null when it is none of ours.</summary>
    public Stopping? Read(string token)
    {
        try
        {
            var parts = _stops.Unprotect(token).Split('/');
            return MessageKinds.Find(parts[2]) is { } kind
                ? new(Id(parts[0]), Id(parts[1]), kind)
                : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private static long? Id(string text) =>
        long.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var id)
            ? id
            : null;
}
