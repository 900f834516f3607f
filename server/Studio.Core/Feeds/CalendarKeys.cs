using System.Security.Cryptography;
using System.Text;

namespace Studio.Core.Feeds;

/// <summary>The secret words of calendars: private addresses, and names of entries that say nothing of what they name.</summary>
public static class CalendarKeys
{
    /// <summary>A new secret part of an address: 256 bits from the system's own source of randomness.</summary>
    public static string NewToken() => Words(RandomNumberGenerator.GetBytes(32));

    /// <summary>What is kept of a token, and all that is ever looked for: nobody can reckon back from it.</summary>
    public static string Digest(string token) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    /// <summary>
    /// The UID of a session in a kind of calendar: a UUID (RFC 7986, 5.3) in the free form of version 8 (RFC 9562, 5.8),
    /// made of the studio's own key, so that two studios never name two sessions alike.
    /// </summary>
    public static string Uid(string studioKey, string reads, long sessionId)
    {
        var bytes = HMACSHA256.HashData(
            Encoding.UTF8.GetBytes(studioKey),
            Encoding.UTF8.GetBytes($"{reads}:{sessionId}")
        );
        bytes[6] = (byte)((bytes[6] & 0x0f) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3f) | 0x80);
        return new Guid(bytes.AsSpan(0, 16), bigEndian: true).ToString();
    }

    // base64url, RFC 4648, 5.
    private static string Words(byte[] bytes) =>
        Convert.ToBase64String(bytes).TrimEnd('=').Replace('+', '-').Replace('/', '_');
}
