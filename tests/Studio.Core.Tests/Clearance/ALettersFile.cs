using System.Text;
using CsCheck;
using Studio.Core.Clearance;

namespace Studio.Core.Tests.Clearance;

/// <summary>
/// Beginnings and ends of the formats: PDF by ISO 32000-1, 7.5; PNG by ISO/IEC 15948, 5.2 and 5.3; JPEG by ISO/IEC 10918-1,
/// annex B.1.
/// </summary>
public class ALettersFile
{
    private static readonly byte[] Png =
    [
        0x89,
        .. "PNG\r\n\u001a\n"u8,
        .. Chunk("IHDR", new byte[13]),
        .. Chunk("IDAT", [1, 2, 3]),
        .. Chunk("IEND", []),
    ];

    private static readonly byte[] Jpeg =
    [
        0xFF,
        0xD8,
        .. (byte[])[0xFF, 0xE0, 0x00, 0x04, 0x4A, 0x46],
        .. (byte[])[0xFF, 0xDA, 0x00, 0x03, 0x01],
        .. (byte[])[0x11, 0xFF, 0x00, 0xFF, 0xD0, 0x22],
        0xFF,
        0xD9,
    ];

    private static readonly byte[] Pdf = Text(
        "%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n"
    );

    public static TheoryData<byte[], LetterFileKind> Whole =>
        new()
        {
            { Pdf, LetterFileKind.Pdf },
            { Jpeg, LetterFileKind.Jpeg },
            { Png, LetterFileKind.Png },
            { [.. Jpeg[..2], 0xFF, .. Jpeg[2..]], LetterFileKind.Jpeg },
        };

    public static TheoryData<string, byte[], string> Broken =>
        new()
        {
            { "nothing", [], "file-empty" },
            { "a page of the web", Text("<html><body>letter</body></html>"), "file-kind" },
            { "a program", Text("MZ\u0090\0"), "file-kind" },
            { "a packed folder", Text("PK\u0003\u0004letter.pdf"), "file-kind" },
            { "a picture of another kind", Text("GIF89a........"), "file-kind" },
            { "a PDF that begins later", [1, 2, .. Pdf], "file-kind" },
            { "a PDF broken off", Pdf[..^8], "file-unclean" },
            {
                "a PDF with a folder behind it",
                [.. Pdf, .. Text("PK\u0003\u0004")],
                "file-unclean"
            },
            {
                "a PDF that is a page of the web too",
                Text("%PDF-1.4\n<html>\n%%EOF"),
                "file-unclean"
            },
            { "a PDF in a PDF", [.. Pdf[..9], .. Pdf], "file-unclean" },
            {
                "a PDF with a script",
                Text("%PDF-1.4\n<</S/JavaScript/JS(x)>>\n%%EOF"),
                "file-active"
            },
            {
                "a PDF that starts something",
                Text("%PDF-1.4\n<</OpenAction 2 0 R>>\n%%EOF"),
                "file-active"
            },
            {
                "a PDF with a file in it",
                Text("%PDF-1.4\n<</Type/EmbeddedFile>>\n%%EOF"),
                "file-active"
            },
            { "a PNG broken off", Png[..^1], "file-unclean" },
            { "a PNG with more behind it", [.. Png, 0], "file-unclean" },
            { "a PNG whose first chunk is another", [.. Png[..8], .. Png[33..]], "file-unclean" },
            {
                "a PNG that claims more than it has",
                [.. Png[..8], 0xFF, 0xFF, 0xFF, 0xFF, .. Png[12..]],
                "file-unclean"
            },
            {
                "a PNG with a PDF in a chunk",
                [.. Png[..33], .. Chunk("tEXt", Pdf), .. Png[33..]],
                "file-unclean"
            },
            { "a JPEG broken off", Jpeg[..^2], "file-unclean" },
            {
                "a JPEG with a folder behind it",
                [.. Jpeg, .. Text("PK\u0003\u0004")],
                "file-unclean"
            },
            { "a JPEG without a picture", [.. Jpeg[..8], 0xFF, 0xD9], "file-unclean" },
            {
                "a JPEG with a PDF in a comment",
                [.. Jpeg[..2], 0xFF, 0xFE, 0, 9, .. "%PDF-1."u8, .. Jpeg[2..]],
                "file-unclean"
            },
            { "more than 10 MB", new byte[LetterFile.MostBytes + 1], "file-too-large" },
        };

    [Theory]
    [MemberData(nameof(Whole))]
    public void Is_known_by_its_content(byte[] bytes, LetterFileKind kind)
    {
        Assert.True(LetterFile.KindOf(bytes).TryGet(out var found, out var refusal), refusal?.Code);
        Assert.Equal(kind, found);
    }

    [Theory]
    [MemberData(nameof(Broken))]
    public void Is_refused_when_it_is_anything_else(string what, byte[] bytes, string code)
    {
        var refusal = LetterFile.KindOf(bytes).Refusal;

        Assert.True(refusal?.Code == code, $"{what}: {refusal?.Code ?? "taken"}");
        Assert.Equal("file", refusal!.Field);
    }

    [Fact]
    public void A_name_that_only_begins_like_an_action_is_none() =>
        Assert.Null(LetterFile.KindOf(Text("%PDF-1.4\n<</AAPL:Keywords[]>>\n%%EOF")).Refusal);

    [Fact]
    public void Whatever_the_bytes_it_answers() =>
        Gen.Select(Gen.OneOf(Pdf, Jpeg, Png), Gen.Byte.Array[0, 60], Gen.Int[0, 100])
            .Sample(
                (whole, noise, cut) =>
                {
                    byte[] bytes = [.. whole[..Math.Min(cut, whole.Length)], .. noise];
                    var answer = LetterFile.KindOf(bytes);
                    // Either refused, or a whole file up to its last check sum or line end.
                    return answer.Refusal is not null || cut >= whole.Length - 4;
                },
                iter: 20_000
            );

    private static byte[] Text(string text) => Encoding.Latin1.GetBytes(text);

    private static byte[] Chunk(string type, byte[] data) =>
        [0, 0, 0, (byte)data.Length, .. Text(type), .. data, 0, 0, 0, 0];
}
