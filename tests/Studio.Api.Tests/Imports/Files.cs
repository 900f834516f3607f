using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Studio.Core.Accounts;

namespace Studio.Api.Tests.Imports;

/// <summary>A studio of its own to import into, and its owner.</summary>
public sealed class ImportDesk : IAsyncLifetime
{
    /// <summary>The columns, in the order in which the examples here give them.</summary>
    public const string Header =
        "name,called,phone,email,emergency_name,emergency_phone,home_location,shares_conditions,last_period,cycle_days,scan_date,scan_age,transfer_date,embryo_days,stated_due_date,babies,born_on,birth_mode,loss_on,factors,screened_on,screening_outcome,letter_issued_by,letter_issued_on,letter_expires_on,hold_from";

    /// <summary>The studio; its location's code is quay-house.</summary>
    public StudioApp App { get; private set; } = null!;

    /// <summary>The owner, signed in.</summary>
    public HttpClient Owner { get; private set; } = null!;

    /// <summary>Opens it.</summary>
    public static async Task<ImportDesk> Open()
    {
        var desk = new ImportDesk();
        await desk.InitializeAsync();
        return desk;
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        App = await StudioApp.Empty();
        await App.HasLocation();
        Owner = await App.SignedInAs(Role.Owner);
    }

    /// <summary>Sends the bytes as the body.</summary>
    public async Task<JsonNode> Import(byte[] file, int status, bool dryRun = false)
    {
        using var content = new ByteArrayContent(file);
        content.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
        return await Send(content, status, dryRun);
    }

    /// <summary>Sends the text as the body.</summary>
    public Task<JsonNode> Import(string file, int status, bool dryRun = false) =>
        Import(Encoding.UTF8.GetBytes(file), status, dryRun);

    /// <summary>Sends the bytes as a file in a form.</summary>
    public async Task<JsonNode> ImportForm(byte[] file, int status)
    {
        using var form = new MultipartFormDataContent();
        using var part = new ByteArrayContent(file);
        form.Add(part, "file", "clients.csv");
        return await Send(form, status, dryRun: false);
    }

    /// <summary>How many clients there are, and everything that hangs on them.</summary>
    public Task<long> Written() =>
        App.Value<long>(
            """
            select (select count(*) from clients) + (select count(*) from pregnancies) + (select count(*) from due_dates)
                 + (select count(*) from client_factors) + (select count(*) from letters) + (select count(*) from flags)
                 + (select count(*) from screenings) + (select count(*) from holds) + (select count(*) from stage_changes)
            """
        );

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => App.DisposeAsync();

    private async Task<JsonNode> Send(HttpContent content, int status, bool dryRun)
    {
        using var answer = await Owner.PostAsync(
            $"/api/imports/clients?dryRun={(dryRun ? "true" : "false")}",
            content,
            TestContext.Current.CancellationToken
        );
        return await answer.Is(status);
    }
}
