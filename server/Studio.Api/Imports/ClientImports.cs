using NodaTime;
using Studio.Api.Clearance;
using Studio.Api.Clients;
using Studio.Api.Data;
using Studio.Api.Http;
using Studio.Api.Jobs;
using Studio.Api.Pregnancies;
using Studio.Api.Rosters;
using Studio.Api.Screenings;
using Studio.Api.Studios;
using Studio.Core;
using Studio.Core.Catalogue;

namespace Studio.Api.Imports;

/// <summary>A row as it will be taken.</summary>
public sealed record PreviewRow(
    int Line,
    string Name,
    string Called,
    string? StageName,
    LocalDate? DueDate
);

/// <summary>What an import did, or would do.</summary>
public sealed record ImportReport
{
    /// <summary>Nothing was written.</summary>
    public required bool DryRun { get; init; }

    /// <summary>Rows read.</summary>
    public required int RowsRead { get; init; }

    /// <summary>Rows taken; 0 when any was refused and it was not a dry run: all or nothing.</summary>
    public required int RowsAccepted { get; init; }

    /// <summary>Rows refused, each cell at fault.</summary>
    public required IReadOnlyList<RefusedRow> Refused { get; init; }

    /// <summary>The first rows as they will be taken.</summary>
    public required IReadOnlyList<PreviewRow> Preview { get; init; }
}

/// <summary>Takes clients in from a CSV file; all or nothing.</summary>
public sealed class ClientImports(
    RuleBook book,
    ClientIntake intake,
    AdvanceSweep advance,
    FlagSweep flags,
    StudioStore studio,
    Live live,
    IClock clock
)
{
    private const int PreviewRows = 20;
    private const int TellEvery = 25;

    /// <summary>Reads, checks and writes; the caller commits when nothing was refused.</summary>
    public async Task<ImportReport> RunAsync(Write write, string csv, bool dryRun, long? by)
    {
        var refused = new List<RefusedRow>();
        var rows = CsvText.Read(csv, ClientRowReader.Required, ClientRowReader.Optional, refused);
        var locations = (await StudioStore.LocationsAsync(write)).ToDictionary(
            l => l.Code,
            StringComparer.OrdinalIgnoreCase
        );
        var preview = new List<PreviewRow>();
        var taken = new List<long>();
        var read = 0;
        foreach (var row in rows)
        {
            if (++read % TellEvery == 0 && by is { } account)
                live.Publish(account, new ImportProgress(read, rows.Count));
            if (
                new ClientRowReader(row, code => book.FactorOf(code) is not null).Read(refused)
                is not { } client
            )
                continue;
            if (!locations.TryGetValue(client.HomeLocation, out var location))
            {
                refused.Add(
                    new(
                        row.Line,
                        "home_location",
                        $"There is no location '{client.HomeLocation}'. Known: {string.Join(", ", locations.Keys)}."
                    )
                );
                continue;
            }

            var today = studio.Today(location.Zone);
            if (WhyNot(client, today) is { } wrong)
                refused.Add(wrong);
            else if (
                (
                    await intake.AddAsync(
                        write,
                        client.Client with
                        {
                            HomeLocationId = location.Id,
                        },
                        by,
                        client.LossOn
                    )
                ).TryGet(out var id, out var refusal)
            )
            {
                await AddHealthAsync(write, id, client, today, by);
                taken.Add(id);
                if (preview.Count < PreviewRows)
                    preview.Add(await PreviewAsync(write, id, client, today));
            }
            else
                refused.Add(new(row.Line, ColumnOf(refusal), refusal.Message));
        }

        if (by is { } sender)
            live.Publish(sender, new ImportProgress(read, rows.Count));
        if (refused.Count == 0 && !dryRun)
        {
            foreach (var location in locations.Values.DistinctBy(l => l.Zone))
                await advance.ZoneAsync(write, location.Zone, studio.Today(location.Zone));
            await flags.RefreshAsync(write, null);
            write.Tell("client");
        }

        return new ImportReport
        {
            DryRun = dryRun,
            RowsRead = rows.Count,
            RowsAccepted = refused.Count == 0 || dryRun ? taken.Count : 0,
            Refused = [.. refused.OrderBy(r => r.Line)],
            Preview = preview,
        };
    }

    private async Task AddHealthAsync(
        Write write,
        long id,
        ImportedClient client,
        LocalDate today,
        long? by
    )
    {
        var now = clock.GetCurrentInstant();
        foreach (var factor in client.Factors)
            await HealthStore.AddFactorAsync(
                write,
                id,
                factor.Code,
                factor.From,
                factor.To,
                now,
                by
            );
        if (client.Screening is { } screening)
            await ScreeningStore.AddOutcomeAsync(
                write,
                id,
                screening.AnsweredOn,
                screening.Outcome,
                now,
                by
            );
        // The letter before the hold: an imported hold stands until a letter is filed here.
        if (client.Letter is { } letter)
            await LetterStore.AddAsync(
                write,
                id,
                new LetterRead(
                    letter.IssuedBy,
                    letter.IssuedOn,
                    letter.ExpiresOn,
                    new(),
                    ReplacesEarlier: false
                ),
                today,
                now,
                by
            );
        if (client.HoldFrom is { } from)
            await HealthStore.HoldAsync(write, id, from, now, by);
    }

    private async Task<PreviewRow> PreviewAsync(
        Write write,
        long id,
        ImportedClient client,
        LocalDate today
    )
    {
        var pregnancy = (await SituationStore.OfAsync(write, id)).Pregnancy;
        return new PreviewRow(
            client.Line,
            client.Client.Name,
            client.Client.Called is { Length: > 0 } called ? called : client.Client.Name,
            book.Stages.On(pregnancy, today).Stage?.Name,
            pregnancy?.DueDate
        );
    }

    private static RefusedRow? WhyNot(ImportedClient client, LocalDate today) =>
        client.LossOn > today ? new(client.Line, "loss_on", "This date lies in the future.")
        : client.LossOn is not null && client.Client.BornOn is not null
            ? new(client.Line, "loss_on", "A birth and a loss are both given for one pregnancy.")
        : client.LossOn is not null && client.Client.Dating == new EvidenceRequest()
            ? new(
                client.Line,
                "loss_on",
                "A loss needs the pregnancy's dates beside it, so that it is kept with the right one."
            )
        : client.Screening?.AnsweredOn > today
            ? new(client.Line, "screened_on", "This date lies in the future.")
        : client.Letter?.IssuedOn > today
            ? new(client.Line, "letter_issued_on", "This date lies in the future.")
        : client.HoldFrom > today ? new(client.Line, "hold_from", "This date lies in the future.")
        : null;

    private static string ColumnOf(Refusal refusal) =>
        refusal.Field switch
        {
            "lastPeriod" => "last_period",
            "cycleDays" => "cycle_days",
            "scan.date" => "scan_date",
            "scan" or "scan.weeks" or "scan.days" => "scan_age",
            "transfer" or "transfer.date" => "transfer_date",
            "transfer.embryoDays" => "embryo_days",
            "stated" => "stated_due_date",
            "bornOn" => "born_on",
            "on" => "last_period",
            { } field => field,
            null => "",
        };
}
