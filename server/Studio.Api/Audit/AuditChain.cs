using System.Security.Cryptography;
using System.Text;
using NodaTime.Text;

namespace Studio.Api.Audit;

/// <summary>
/// The hashes that tie the entries of the audit together: HMAC-SHA-256 (RFC 2104) over the hash before and the entry's
/// own fields. Whoever has the file but not the key cannot make one up.
/// </summary>
public static class AuditChain
{
    /// <summary>The hash before the first entry.</summary>
    public const string Beginning = "";

    /// <summary>A key.</summary>
    public static byte[] NewKey() => RandomNumberGenerator.GetBytes(32);

    /// <summary>The hash of an entry that follows another.</summary>
    public static string Next(byte[] key, string before, AuditRow entry) =>
        Hash(
            key,
            [
                before,
                entry.Id.ToString(),
                InstantPattern.ExtendedIso.Format(entry.At),
                entry.AccountId?.ToString() ?? "-",
                entry.SeenAs,
                entry.ClientId.ToString(),
                entry.Act.ToString(),
                entry.Kind,
                entry.SessionId?.ToString() ?? "-",
            ]
        );

    /// <summary>The proof that the chain ends with this entry.</summary>
    public static string Proof(byte[] key, long entries, string hash) =>
        Hash(key, ["head", entries.ToString(), hash]);

    // Each part with its length before it, so that no two lists of parts read the same.
    private static string Hash(byte[] key, string[] parts) =>
        Convert.ToHexStringLower(
            HMACSHA256.HashData(
                key,
                Encoding.UTF8.GetBytes(string.Concat(parts.Select(p => $"{p.Length}:{p}")))
            )
        );
}
