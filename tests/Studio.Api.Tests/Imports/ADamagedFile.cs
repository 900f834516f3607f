using System.Text;

namespace Studio.Api.Tests.Imports;

/// <summary>Files of which nothing may be taken, so that they can all be sent to the same studio.</summary>
public class ADamagedFile(ImportDesk desk) : IClassFixture<ImportDesk>
{
    [Theory]
    [InlineData("name", "", "missing")]
    [InlineData("name", "long", "longer than 200")]
    [InlineData("home_location", "nowhere", "There is no location 'nowhere'. Known: quay-house.")]
    [InlineData("home_location", "", "missing")]
    [InlineData("phone", "", "phone number or an e-mail")]
    [InlineData("email", "no-address", "not an e-mail address")]
    [InlineData("email", "two@at@signs", "not an e-mail address")]
    [InlineData("shares_conditions", "maybe", "not one of yes, no")]
    [InlineData("last_period", "10.11.2025", "not a date such as")]
    [InlineData("last_period", "2025-02-29", "not a date such as")]
    [InlineData("last_period", "-9998-01-01", "check the year")]
    [InlineData("last_period", "9999-12-31", "check the year")]
    [InlineData("last_period", "2024-01-01", "is possible")]
    [InlineData("cycle_days", "19", "from 20 to 45")]
    [InlineData("cycle_days", "x", "from 20 to 45")]
    [InlineData("scan_date", "2026-01-05", "scan_age", "go together")]
    [InlineData("scan_age", "8w1d", "scan_date", "go together")]
    [InlineData("scan_age", "eight weeks", "not an age such as 8w1d")]
    [InlineData("transfer_date", "2025-12-01", "embryo_days", "go together")]
    [InlineData("embryo_days", "9", "from 1 to 7")]
    [InlineData("stated_due_date", "soon", "not a date")]
    [InlineData("babies", "9", "from 1 to 8")]
    [InlineData("babies", "1.5", "from 1 to 8")]
    [InlineData("born_on", "2026-03-03", "lies in the future")]
    [InlineData("birth_mode", "stork", "not one of")]
    [InlineData("birth_mode", "vaginal", "born_on", "not when")]
    [InlineData("loss_on", "2026-03-03", "lies in the future")]
    [InlineData("loss_on", "2026-01-01", "needs the pregnancy's dates")]
    [InlineData("factors", "no-such-thing:2026-01-01", "no factor 'no-such-thing'")]
    [InlineData("factors", "back-pain", "is not a code, a first day")]
    [InlineData("factors", "back-pain:2026-02-02:2026-02-01", "ends before it begins")]
    [InlineData("factors", "back-pain:then", "not a date")]
    [InlineData("screened_on", "2026-01-01", "screening_outcome", "go together")]
    [InlineData("screening_outcome", "fine", "not one of")]
    [InlineData("letter_issued_on", "2026-01-01", "letter_expires_on", "go together")]
    [InlineData("hold_from", "2026-03-03", "lies in the future")]
    [InlineData("hold_from", "never", "not a date")]
    public async Task Is_refused_with_line_column_and_reason(
        string column,
        string cell,
        string columnOrReason,
        string? reason = null
    )
    {
        var (told, says) = reason is null ? (column, columnOrReason) : (columnOrReason, reason);
        var file = File(column, cell == "long" ? new string('x', 201) : cell);
        foreach (var dryRun in new[] { true, false })
        {
            var report = await desk.Import(file, dryRun ? 200 : 422, dryRun);
            var refused = Assert.Single(report["refused"]!.AsArray())!;
            Assert.Equal((3, told), (refused.Number("line"), refused.Text("column")));
            Assert.Contains(says, refused.Text("reason"));
            Assert.Equal(dryRun ? 1 : 0, report.Number("rowsAccepted"));
            Assert.Equal(0, await desk.Written());
        }
    }

    [Fact]
    public async Task Is_refused_with_every_cell_at_fault_at_once()
    {
        var report = await desk.Import(
            """
            name,phone,home_location,babies,born_on
            ,1,quay-house,0,yesterday
            Somebody,2,quay-house,1,
            Another,3,elsewhere,12,
            """,
            422
        );
        Assert.Equal(
            ["2 babies", "2 born_on", "2 name", "4 babies"],
            report["refused"]!
                .AsArray()
                .Select(r => $"{r!.Number("line")} {r!.Text("column")}")
                .Order()
        );
    }

    [Fact]
    public async Task Counts_lines_as_the_file_has_them_even_behind_a_line_end_in_a_cell()
    {
        var report = await desk.Import(
            "name,phone,home_location\n\"Two\nlines\",1,quay-house\nGood,2,quay-house\nBad,3,elsewhere\n",
            422
        );
        Assert.Equal(
            ["2 name", "5 home_location"],
            report["refused"]!.AsArray().Select(r => $"{r!.Number("line")} {r!.Text("column")}")
        );
    }

    [Theory]
    [InlineData("", 1, "")]
    [InlineData("   \n", 1, "")]
    [InlineData("phone,home_location\n1,quay-house", 1, "name")]
    [InlineData("name,phone,home_location,shoe_size\nA,1,quay-house,38", 1, "shoe_size")]
    [InlineData("name,name,phone,home_location\nA,A,1,quay-house", 1, "name")]
    [InlineData("name,phone,home_location\nA,1", 2, "")]
    [InlineData("name,phone,home_location\nA,1,quay-house,more", 2, "")]
    [InlineData("name,phone,home_location\n\"A,1,quay-house\n", 2, "")]
    public async Task Is_refused_as_a_whole_when_its_shape_is_wrong(
        string file,
        int line,
        string column
    )
    {
        var report = await desk.Import(file, 422);
        Assert.Contains(
            report["refused"]!.AsArray(),
            r => r!.Number("line") == line && r!.Text("column") == column
        );
        Assert.Equal(0, await desk.Written());
    }

    [Fact]
    public async Task Is_refused_when_it_is_no_text()
    {
        // The first bytes of a picture; then zeros, which are UTF-8 and no table.
        var picture = await desk.Import(
            [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0xFF],
            400
        );
        Assert.Equal("not-text", picture.Text("code"));
        await desk.Import(new byte[5000], 422);
    }

    [Fact]
    public async Task Is_refused_when_it_is_larger_than_five_megabytes()
    {
        var large = Encoding.UTF8.GetBytes(
            "name,phone,home_location\n" + new string('x', 6 * 1024 * 1024)
        );
        Assert.Equal("too-large", (await desk.Import(large, 413)).Text("code"));
        Assert.Equal("too-large", (await desk.ImportForm(large, 413)).Text("code"));
    }

    [Theory]
    [InlineData("multipart/form-data")]
    [InlineData("multipart/form-data; boundary=none-of-it")]
    [InlineData("application/x-www-form-urlencoded")]
    public async Task Is_refused_when_the_form_holds_no_file(string type)
    {
        using var content = new StringContent("nothing of the kind");
        content.Headers.Remove("Content-Type");
        content.Headers.TryAddWithoutValidation("Content-Type", type);
        using var answer = await desk.Owner.PostAsync(
            "/api/imports/clients",
            content,
            TestContext.Current.CancellationToken
        );
        Assert.Contains((int)answer.StatusCode, new[] { 400, 415 });
        await answer.Is((int)answer.StatusCode);
    }

    // A good row, and below it the same with one cell changed.
    private static string File(string column, string cell)
    {
        var columns = new[] { "name", "phone", "home_location", column }.Distinct().ToList();
        var good = columns.Select(c =>
            c switch
            {
                "name" => "Somebody",
                "phone" => "123456",
                "home_location" => "quay-house",
                _ => "",
            }
        );
        var bad = columns.Zip(good, (c, value) => c == column ? cell : value);
        return string.Join('\n', new[] { columns, good, bad }.Select(r => string.Join(',', r)));
    }
}
