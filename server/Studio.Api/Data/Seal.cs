using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.DataProtection;

namespace Studio.Api.Data;

/// <summary>
/// Seals what the health record holds, so that the database file alone gives nothing away: ASP.NET Core Data Protection
/// with the keys of the keys folder. What was sealed with an older key opens as long as that key is kept.
/// </summary>
public sealed class Seal(IDataProtectionProvider protection)
{
    /// <summary>How a sealed text begins; what does not begin so was written before there was a seal.</summary>
    public const string Mark = "sealed:";

    private readonly IDataProtector _protector = protection.CreateProtector("studio.health");

    /// <summary>Seals a text.</summary>
    public string Close(string text) =>
        Mark + Convert.ToBase64String(_protector.Protect(Encoding.UTF8.GetBytes(text)));

    /// <summary>Opens a sealed text; one that never was sealed is given as it is.</summary>
    /// <exception cref="CryptographicException">Its key is missing, or somebody changed it.</exception>
    public string Open(string text) =>
        text.StartsWith(Mark, StringComparison.Ordinal)
            ? Encoding.UTF8.GetString(_protector.Unprotect(Bytes(text)))
            : text;

    /// <summary>Seals a file's bytes.</summary>
    public byte[] Close(byte[] bytes) => _protector.Protect(bytes);

    /// <summary>Opens a sealed file's bytes.</summary>
    /// <exception cref="CryptographicException">Its key is missing, or somebody changed it.</exception>
    public byte[] Open(byte[] bytes) => _protector.Unprotect(bytes);

    /// <summary>Whether a text is not sealed yet, or with a key that is no longer the newest.</summary>
    public bool IsStale(string text)
    {
        if (!text.StartsWith(Mark, StringComparison.Ordinal))
            return true;
        ((IPersistedDataProtector)_protector).DangerousUnprotect(
            Bytes(text),
            ignoreRevocationErrors: true,
            out var stale,
            out _
        );
        return stale;
    }

    private static byte[] Bytes(string text) => Convert.FromBase64String(text[Mark.Length..]);
}
