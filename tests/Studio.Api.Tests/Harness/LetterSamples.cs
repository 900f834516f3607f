using System.Buffers.Binary;
using System.Net.Http.Headers;
using System.Text;

namespace Studio.Api.Tests.Harness;

/// <summary>The smallest whole files of the kinds a letter may be.</summary>
internal static class LetterSamples
{
    /// <summary>One grey dot. Chunks as in ISO/IEC 15948; the sums are not looked at.</summary>
    public static byte[] Png { get; } =
    [
        0x89,
        .. "PNG\r\n\u001a\n"u8,
        .. Chunk("IHDR", [0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]),
        .. Chunk("IDAT", [0x78, 0x9C, 0x63, 0x60, 0, 0, 0, 2, 0, 1]),
        .. Chunk("IEND", []),
    ];

    /// <summary>A start, one table, a scan of three bytes with a restart, and the end (ISO/IEC 10918-1, B.1).</summary>
    public static byte[] Jpeg { get; } =
    [
        .. (byte[])[0xFF, 0xD8],
        .. (byte[])[0xFF, 0xE0, 0x00, 0x04, 0x4A, 0x46],
        .. (byte[])[0xFF, 0xDA, 0x00, 0x03, 0x01],
        .. (byte[])[0x11, 0xFF, 0x00, 0xFF, 0xD0, 0x22],
        .. (byte[])[0xFF, 0xD9],
    ];

    /// <summary>A page without anything on it.</summary>
    public static byte[] Pdf { get; } =
        Encoding.ASCII.GetBytes(
            "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
                + "2 0 obj<</Type/Pages/Count 1/Kids[3 0 R]>>endobj\n"
                + "3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 595 842]>>endobj\n"
                + "trailer<</Root 1 0 R/Size 4>>\n%%EOF\n"
        );

    /// <summary>A form with one file, under whatever name.</summary>
    public static MultipartFormDataContent Form(byte[] bytes, string name, string? type = null)
    {
        var file = new ByteArrayContent(bytes);
        file.Headers.ContentType = new MediaTypeHeaderValue(type ?? "application/octet-stream");
        return new MultipartFormDataContent { { file, "file", name } };
    }

    private static byte[] Chunk(string type, byte[] data)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, data.Length);
        return [.. length, .. Encoding.ASCII.GetBytes(type), .. data, 0, 0, 0, 0];
    }
}
