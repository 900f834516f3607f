using System.Text;
using System.Text.Json.Nodes;

namespace Studio.Api.Tests.Imports;

public class AGoodFile
{
    private static readonly string Two =
        ImportDesk.Header
        + """

            Velda Ambersley,Vel,+351 990 1,velda@mail.example,Ivo Ambersley,+351 990 2,quay-house,yes,2025-11-10,30,2026-01-05,8w1d,,,,2,,,,back-pain:2026-02-01;wrist-pain:2026-01-01:2026-02-01,2026-02-20,nothing-found,Dr Wenna Ashdown,2026-02-01,2026-05-01,
            Tamsin Overby,,+351 990 3,,,,Quay-House,no,,,,,,,,,2026-01-20,caesarean,,,,,,,,2026-03-01
            """;

    [Fact]
    public async Task Is_taken_whole_and_each_cell_is_where_it_belongs()
    {
        await using var desk = await ImportDesk.Open();
        var report = await desk.Import(Two, 200);
        Assert.Equal((2, 2), (report.Number("rowsRead"), report.Number("rowsAccepted")));
        Assert.Empty(report["refused"]!.AsArray());

        var found = (await desk.Owner.Read("/api/clients?find=velda"))[0]!;
        var velda = await desk.Owner.Read($"/api/clients/{found.Number("id")}");
        Assert.Equal("Vel", velda.Text("called"));
        Assert.True((bool)velda["sharesConditions"]!);
        Assert.Equal(2, velda["pregnancy"]!.Number("babies"));
        Assert.Equal("valid", velda["clearance"]!.Text("status"));
        Assert.Equal("current", velda["screening"]!.Text("status"));
        Assert.Equal(
            ["back-pain", "wrist-pain"],
            velda["factors"]!.AsArray().Select(f => f!.Text("code")).Order()
        );
        found = (await desk.Owner.Read("/api/clients?find=tamsin"))[0]!;
        var tamsin = await desk.Owner.Read($"/api/clients/{found.Number("id")}");
        Assert.Equal("Tamsin Overby", tamsin.Text("called"));
        Assert.Equal("caesarean", tamsin["pregnancy"]!.Text("birthMode"));
        Assert.Equal(41, tamsin["pregnancy"]!.Number("daysSinceBirth"));
        Assert.Equal("early-recovery", tamsin["pregnancy"]!.Text("stage"));
        Assert.True((bool)tamsin["onHold"]!);
        // The nightly job has nothing to add: stages and flags are set by the import itself.
        Assert.NotEmpty((await desk.Owner.Read("/api/flags")).AsArray());
    }

    [Fact]
    public async Task Is_only_looked_at_in_a_dry_run()
    {
        await using var desk = await ImportDesk.Open();
        var report = await desk.Import(Two, 200, dryRun: true);
        Assert.True((bool)report["dryRun"]!);
        Assert.Equal(2, report.Number("rowsAccepted"));
        var preview = report["preview"]!.AsArray();
        Assert.Equal(
            ["2 Vel Second trimester", "3 Tamsin Overby Early recovery"],
            preview.Select(p => $"{p!.Number("line")} {p!.Text("called")} {p!.Text("stageName")}")
        );
        Assert.Equal(0, await desk.Written());
        await desk.Import(Two, 200);
    }

    [Theory]
    [InlineData("crlf")]
    [InlineData("byte order mark")]
    [InlineData("semicolons")]
    [InlineData("tabs")]
    [InlineData("no last line end")]
    [InlineData("blank lines at the end")]
    [InlineData("header in capitals")]
    [InlineData("spaces around")]
    [InlineData("columns in another order")]
    [InlineData("in a form")]
    public async Task Is_taken_in_every_usual_shape(string shape)
    {
        const string file =
            "name,phone,home_location\nAlma Børresen,12345,quay-house\n李美玲,67890,quay-house\n";
        var text = shape switch
        {
            "crlf" => file.Replace("\n", "\r\n"),
            "byte order mark" => "\uFEFF" + file,
            "semicolons" => file.Replace(',', ';'),
            "tabs" => file.Replace(',', '\t'),
            "no last line end" => file.TrimEnd(),
            "blank lines at the end" => file + "\n\n",
            "header in capitals" => file.Replace(
                "name,phone,home_location",
                "Name,Phone,Home_Location"
            ),
            "spaces around" => file.Replace(",", " , "),
            "columns in another order" =>
                "home_location,name,phone\nquay-house,Alma Børresen,12345\nquay-house,李美玲,67890",
            _ => file,
        };
        await using var desk = await ImportDesk.Open();
        var bytes = Encoding.UTF8.GetBytes(text);
        var report =
            shape == "in a form"
                ? await desk.ImportForm(bytes, 200)
                : await desk.Import(bytes, 200);
        Assert.Equal(2, report.Number("rowsAccepted"));
        Assert.Equal(
            ["Alma Børresen", "李美玲"],
            await desk.App.Rows<string>("select name from clients order by id")
        );
    }

    [Fact]
    public async Task Keeps_separators_and_quotation_marks_inside_quoted_cells()
    {
        await using var desk = await ImportDesk.Open();
        await desk.Import(
            "name,phone,home_location\n\"Overby, Tamsin \"\"Tam\"\"\",\"1,2\",quay-house\n",
            200
        );
        Assert.Equal(
            "Overby, Tamsin \"Tam\"",
            await desk.App.Value<string>("select name from clients")
        );
    }

    [Fact]
    public async Task Is_the_example_that_the_program_gives()
    {
        await using var desk = await ImportDesk.Open();
        var example = await desk.Owner.GetByteArrayAsync(
            "/api/imports/clients/example",
            TestContext.Current.CancellationToken
        );
        var report = await desk.Import(example, 200);
        Assert.True(report.Number("rowsAccepted") > 0);
    }

    [Fact]
    public async Task Tells_its_sender_how_far_it_has_come()
    {
        await using var desk = await ImportDesk.Open();
        var rows = Enumerable.Range(1, 60).Select(i => $"Person {i},{i},quay-house");
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken
        );
        stop.CancelAfter(TimeSpan.FromSeconds(20));
        using var stream = await desk.Owner.GetAsync(
            "/api/live",
            HttpCompletionOption.ResponseHeadersRead,
            stop.Token
        );
        using var lines = new StreamReader(await stream.Content.ReadAsStreamAsync(stop.Token));
        await lines.ReadLineAsync(stop.Token);
        await desk.Import("name,phone,home_location\n" + string.Join('\n', rows), 200);
        var told = new List<JsonNode>();
        while (told is not [.., var last] || last.Number("read") < 60)
        {
            if (
                await lines.ReadLineAsync(stop.Token) is { } line
                && line.StartsWith("data: ", StringComparison.Ordinal)
                && line.Contains("\"read\"")
            )
                told.Add(JsonNode.Parse(line["data: ".Length..])!);
        }

        Assert.Equal([25, 50, 60], told.Select(t => t.Number("read")));
        Assert.All(told, t => Assert.Equal(60, t.Number("of")));
    }

    [Fact]
    public async Task Is_refused_when_an_address_stands_in_it_twice_or_is_taken()
    {
        await using var desk = await ImportDesk.Open();
        await desk.Import("name,email,home_location\nFirst,first@mail.example,quay-house", 200);
        var report = await desk.Import(
            """
            name,email,home_location
            Second,second@mail.example,quay-house
            Third,SECOND@mail.example,quay-house
            Fourth,First@Mail.example,quay-house
            """,
            422
        );
        Assert.Equal(
            ["3 email", "4 email"],
            report["refused"]!.AsArray().Select(r => $"{r!.Number("line")} {r!.Text("column")}")
        );
        Assert.Equal(1, await desk.App.Value<long>("select count(*) from clients"));
    }
}
