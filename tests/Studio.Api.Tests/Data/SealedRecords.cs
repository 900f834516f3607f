using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.Extensions.DependencyInjection;
using Studio.Api.Data;
using Studio.Api.Tests.Jobs;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Data;

public class SealedRecords
{
    [Fact]
    public async Task Give_nothing_of_her_health_away_to_whoever_has_the_file_alone()
    {
        await using var app = await StudioApp.Empty();
        var owner = await app.SignedInAs(Role.Owner);
        var her = await app.HasClient();
        await (
            await owner.Post(
                $"/api/clients/{her}/factors",
                new { code = "prolapse-or-leaking", from = "2026-02-01" }
            )
        ).Is(201);
        await (
            await owner.Post(
                $"/api/clients/{her}/clearances",
                new
                {
                    issuedBy = "Dr Morwenna Tresilian",
                    issuedOn = "2026-03-01",
                    expiresOn = "2026-06-01",
                    words = "Keeps a chair beside her.",
                }
            )
        ).Is(201);
        await app.HasBooking(await app.HasSession(app.Today.PlusDays(2)), her);
        await app.ByHand("flags");

        var file = await ReadAll(app.Services.GetRequiredService<DataFolder>().Folder);
        foreach (
            var word in new[]
            {
                "prolapse-or-leaking",
                "Morwenna",
                "chair beside",
                "Both feet stay down",
            }
        )
            Assert.DoesNotContain(word, file, StringComparison.Ordinal);
        Assert.Contains("sealed:", file, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stay_readable_when_the_key_is_replaced_and_are_sealed_anew_in_the_night()
    {
        await using var app = await StudioApp.Empty();
        var her = await app.HasClient();
        var owner = await app.SignedInAs(Role.Owner);
        await (
            await owner.Post(
                $"/api/clients/{her}/factors",
                new { code = "back-pain", from = "2026-02-01" }
            )
        ).Is(201);
        var before = await Sealed(app, her);

        var keys = app.Services.GetRequiredService<IKeyManager>();
        var now = DateTimeOffset.UtcNow;
        keys.CreateNewKey(activationDate: now, expirationDate: now.AddDays(90));
        // Another start picks the new key up.
        await using var next = StudioApp.In(
            app.Services.GetRequiredService<DataFolder>().Folder,
            StudioApp.Start,
            demo: false
        );
        Assert.Equal("back-pain", Opened(next, await Sealed(next, her)));
        var after = await Sealed(next, her);
        Assert.NotEqual(before, after);
        Assert.False(next.Services.GetRequiredService<Seal>().IsStale(after));
    }

    [Fact]
    public async Task Of_an_older_program_are_sealed_at_the_next_start()
    {
        await using var app = await StudioApp.Empty();
        var her = await app.HasClient();
        await app.HasFactor(her, "wrist-pain");
        Assert.Equal("wrist-pain", await Sealed(app, her));

        await using var next = StudioApp.In(
            app.Services.GetRequiredService<DataFolder>().Folder,
            StudioApp.Start,
            demo: false
        );
        var text = await Sealed(next, her);
        Assert.StartsWith(Seal.Mark, text, StringComparison.Ordinal);
        Assert.Equal("wrist-pain", Opened(next, text));
    }

    [Fact]
    public async Task That_somebody_changed_are_not_opened()
    {
        await using var app = await StudioApp.Empty();
        var seal = app.Services.GetRequiredService<Seal>();
        var text = seal.Close("separation-now");
        var changed = text[..^6] + (text[^6] == 'A' ? 'B' : 'A') + text[^5..];
        Assert.ThrowsAny<CryptographicException>(() => seal.Open(changed));
    }

    [Fact]
    public async Task Are_not_alike_when_what_they_hold_is()
    {
        await using var app = await StudioApp.Empty();
        var seal = app.Services.GetRequiredService<Seal>();
        Assert.NotEqual(seal.Close("twins"), seal.Close("twins"));
    }

    private static Task<string> Sealed(StudioApp app, long her) =>
        app.Value<string>("select code from client_factors where client_id = @her", new { her });

    private static string Opened(StudioApp app, string text) =>
        app.Services.GetRequiredService<Seal>().Open(text);

    // The database and its write-ahead log, as they lie there.
    private static async Task<string> ReadAll(string folder)
    {
        var text = new System.Text.StringBuilder();
        foreach (var file in Directory.GetFiles(folder, "studio.db*"))
        {
            await using var stream = new FileStream(
                file,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite
            );
            using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
            text.Append(await reader.ReadToEndAsync(TestContext.Current.CancellationToken));
        }

        return text.ToString();
    }
}
