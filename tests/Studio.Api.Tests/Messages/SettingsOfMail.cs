using Microsoft.Extensions.Configuration;
using Studio.Api.Http;
using Studio.Api.Messages;

namespace Studio.Api.Tests.Messages;

/// <summary>A setting that cannot be used keeps the studio closed and says what to set.</summary>
public class SettingsOfMail
{
    [Theory]
    [InlineData("Studio__Mail__From", "Mail:Host=mail.example.org")]
    [InlineData("Studio__Mail__From", "Mail:Host=mail.example.org", "Mail:From=nobody")]
    [InlineData(
        "Studio__Mail__Port",
        "Mail:Host=mail.example.org",
        "Mail:From=a@b.example",
        "Mail:Port=smtp"
    )]
    [InlineData(
        "Studio__Mail__Port",
        "Mail:Host=mail.example.org",
        "Mail:From=a@b.example",
        "Mail:Port=70000"
    )]
    [InlineData(
        "Studio__Mail__Security",
        "Mail:Host=mail.example.org",
        "Mail:From=a@b.example",
        "Mail:Security=ssl"
    )]
    [InlineData(
        "this machine only",
        "Mail:Host=mail.example.org",
        "Mail:From=a@b.example",
        "Mail:Security=none"
    )]
    [InlineData(
        "Studio__Mail__Password",
        "Mail:Host=mail.example.org",
        "Mail:From=a@b.example",
        "Mail:User=me"
    )]
    [InlineData(
        "Studio__Mail__TimeoutSeconds",
        "Mail:Host=mail.example.org",
        "Mail:From=a@b.example",
        "Mail:TimeoutSeconds=0"
    )]
    [InlineData("Studio__PublicUrl", "PublicUrl=studio.example.org")]
    [InlineData("Studio__PublicUrl", "PublicUrl=ftp://studio.example.org")]
    public void Is_named(string says, params string[] settings)
    {
        var refused = Assert.Throws<SettingException>(() => Read(settings));
        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void As_it_should_be_is_taken()
    {
        var plain = Read();
        Assert.Null(plain.Server);
        Assert.Equal("http://127.0.0.1:5080", plain.PublicUrl);
        var full = Read(
            "Mail:Host=mail.example.org",
            "Mail:From=studio@example.org",
            "Mail:User=me",
            "Mail:Password=secret words",
            "PublicUrl=https://studio.example.org/"
        );
        Assert.Equal("https://studio.example.org", full.PublicUrl);
        Assert.Equal((MailSecurity.StartTls, 587), (full.Server!.Security, full.Server.Port));
        Assert.Equal(
            465,
            Read(
                "Mail:Host=mail.example.org",
                "Mail:From=a@b.example",
                "Mail:Security=tls"
            ).Server!.Port
        );
        Assert.DoesNotContain("secret words", full.ToString(), StringComparison.Ordinal);
    }

    private static MailSettings Read(params string[] settings) =>
        MailSettings.Read(
            new ConfigurationBuilder()
                .AddInMemoryCollection(
                    settings
                        .Select(s => s.Split('=', 2))
                        .Select(s => KeyValuePair.Create($"Studio:{s[0]}", (string?)s[1]))
                )
                .Build()
        );
}
