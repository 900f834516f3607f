using System.Globalization;
using System.Net;
using MimeKit;
using Studio.Api.Http;

namespace Studio.Api.Messages;

/// <summary>How the talk with the mail server is kept from others.</summary>
public enum MailSecurity
{
    /// <summary>Not at all; only to this machine itself.</summary>
    None,

    /// <summary>Begun in the open and secured before anything is said (RFC 3207).</summary>
    StartTls,

    /// <summary>Secured from the first byte (RFC 8314).</summary>
    Tls,
}

/// <summary>The mail server messages are handed to.</summary>
public sealed record MailServer
{
    /// <summary>Its name or address.</summary>
    public required string Host { get; init; }

    /// <summary>Its port.</summary>
    public required int Port { get; init; }

    /// <summary>How the talk is secured.</summary>
    public required MailSecurity Security { get; init; }

    /// <summary>With whom to sign in; null for not at all.</summary>
    public string? User { get; init; }

    /// <summary>The password.</summary>
    public string? Password { get; init; }

    /// <summary>How long one answer may take; RFC 5321, 4.5.3.2, asks for patience up to ten minutes.</summary>
    public required TimeSpan Patience { get; init; }

    // The password is in no text of it.
    /// <inheritdoc/>
    public override string ToString() => $"{Host}:{Port}";
}

/// <summary>The settings about messages.</summary>
/// <param name="Server">The mail server; null: messages are written to files.</param>
/// <param name="From">From which address.</param>
/// <param name="PublicUrl">Where the studio's pages are for the world, without a slash at the end.</param>
public sealed record MailSettings(MailServer? Server, string From, string PublicUrl)
{
    private const string NobodysAddress = "studio@studio.invalid";

    /// <summary>From the settings <c>Studio:Mail</c> and <c>Studio:PublicUrl</c>.</summary>
    /// <exception cref="SettingException">One of them cannot be used.</exception>
    public static MailSettings Read(IConfiguration configuration)
    {
        var url = UrlFrom(configuration);
        var mail = configuration.GetSection("Studio:Mail");
        var from = mail["From"];
        if (from is not null && !IsAddress(from))
            throw Wrong("From", from, "an e-mail address such as studio@example.org");
        if (mail["Host"] is not { Length: > 0 } host)
            return new(null, from ?? NobodysAddress, url);
        if (from is null)
            throw new SettingException(
                "Studio__Mail__Host is set, so Studio__Mail__From has to be as well: the address messages come from."
            );
        var security = (mail["Security"] ?? "startTls") switch
        {
            "startTls" => MailSecurity.StartTls,
            "tls" => MailSecurity.Tls,
            "none" when IsThisMachine(host) => MailSecurity.None,
            "none" => throw new SettingException(
                $"Studio__Mail__Security is 'none', which is for a mail server on this machine only, and {host} is another. Set it to startTls or tls."
            ),
            var other => throw Wrong("Security", other, "startTls, tls or none"),
        };
        var port =
            mail["Port"] is not { } written ? (security == MailSecurity.Tls ? 465 : 587)
            : int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number is > 0 and <= 65535
                ? number
            : throw Wrong("Port", written, "a number from 1 to 65535");
        var patience =
            mail["TimeoutSeconds"] is not { } seconds ? 600
            : int.TryParse(seconds, NumberStyles.None, CultureInfo.InvariantCulture, out var most)
            && most is > 0 and <= 3600
                ? most
            : throw Wrong("TimeoutSeconds", seconds, "a number from 1 to 3600");
        var (user, password) = (mail["User"], mail["Password"]);
        if (string.IsNullOrEmpty(user) != string.IsNullOrEmpty(password))
            throw new SettingException(
                "Studio__Mail__User and Studio__Mail__Password go together: set both, or neither when the mail server asks for no sign-in."
            );
        return new(
            new()
            {
                Host = host,
                Port = port,
                Security = security,
                User = string.IsNullOrEmpty(user) ? null : user,
                Password = string.IsNullOrEmpty(password) ? null : password,
                Patience = TimeSpan.FromSeconds(patience),
            },
            from,
            url
        );
    }

    /// <summary>Whether a text is one e-mail address and nothing else.</summary>
    public static bool IsAddress(string text) =>
        MailboxAddress.TryParse(text, out var address)
        && string.Equals(address.Address, text, StringComparison.Ordinal)
        && text.Contains('@', StringComparison.Ordinal);

    private static string UrlFrom(IConfiguration configuration)
    {
        if (configuration["Studio:PublicUrl"] is { Length: > 0 } set)
            return
                Uri.TryCreate(set, UriKind.Absolute, out var uri)
                && uri.Scheme is "http" or "https"
                && uri is { Query: "", Fragment: "", UserInfo: "" }
                ? uri.AbsoluteUri.TrimEnd('/')
                : throw new SettingException(
                    $"The setting Studio__PublicUrl is '{set}'; it takes the address people open, such as https://studio.example.org."
                );
        // What it listens on itself is right on this machine, and nowhere else.
        var listens = (configuration["urls"] ?? configuration["ASPNETCORE_URLS"] ?? "")
            .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .FirstOrDefault();
        return Uri.TryCreate(listens, UriKind.Absolute, out var own)
            ? own.GetLeftPart(UriPartial.Authority)
            : "http://127.0.0.1:5080";
    }

    private static bool IsThisMachine(string host) =>
        string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
        || IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address);

    private static SettingException Wrong(string name, string value, string takes) =>
        new($"The setting Studio__Mail__{name} is '{value}'; it takes {takes}.");
}
