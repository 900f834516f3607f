using System.Buffers.Binary;

namespace Studio.Core.Clearance;

/// <summary>What a letter's file may be.</summary>
public enum LetterFileKind
{
    /// <summary>ISO 32000.</summary>
    Pdf,

    /// <summary>ISO/IEC 10918-1.</summary>
    Jpeg,

    /// <summary>ISO/IEC 15948.</summary>
    Png,
}

/// <summary>
/// Tells by its content what the file of a letter, or of the proof of a qualification, is; its name and what the browser
/// says of it count for nothing. A file that could be read as two kinds, carries more behind its end, or would do
/// something when opened is refused.
/// </summary>
public static class LetterFile
{
    /// <summary>The most bytes a letter may have: 10 MiB.</summary>
    public const int MostBytes = 10 * 1024 * 1024;

    /// <summary>Nothing in it.</summary>
    public static readonly Refusal Empty = Refuse(
        "file-empty",
        "The file is empty. Please choose it again, or photograph the paper anew."
    );

    /// <summary>Over the limit.</summary>
    public static readonly Refusal TooLarge = Refuse(
        "file-too-large",
        "The file is larger than 10 MB. A photograph of the paper is enough, or a scan with fewer dots."
    );

    /// <summary>Something else.</summary>
    public static readonly Refusal WrongKind = Refuse(
        "file-kind",
        "This is no PDF, JPEG or PNG, whatever its name says. Please send one of these: a photograph of the paper will do."
    );

    /// <summary>Broken off, or two files in one.</summary>
    public static readonly Refusal Unclean = Refuse(
        "file-unclean",
        "The file is damaged or carries something besides what is on the paper. Please photograph the paper and send the picture."
    );

    /// <summary>It would do something when opened.</summary>
    public static readonly Refusal Active = Refuse(
        "file-active",
        "This PDF holds a program, a form action or another file. Please print it to a new PDF, or photograph the paper."
    );

    private static readonly byte[] PngSignature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    private static readonly byte[][] PdfActions =
    [
        .. new[]
        {
            "/JavaScript",
            "/JS",
            "/Launch",
            "/EmbeddedFile",
            "/OpenAction",
            "/AA",
            "/SubmitForm",
            "/ImportData",
            "/RichMedia",
        }.Select(System.Text.Encoding.ASCII.GetBytes),
    ];

    // Beginnings that must not stand near the start of a picture, nor behind the first byte of a PDF.
    private static readonly byte[][] OtherBeginnings =
    [
        "%PDF-"u8.ToArray(),
        "<html"u8.ToArray(),
        "<HTML"u8.ToArray(),
        "<script"u8.ToArray(),
        "<SCRIPT"u8.ToArray(),
        "<svg"u8.ToArray(),
        "<?php"u8.ToArray(),
        "PK\u0003\u0004"u8.ToArray(),
    ];

    /// <summary>What the file is, or why it is not taken.</summary>
    public static Answer<LetterFileKind> KindOf(ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty)
            return Empty;
        if (bytes.Length > MostBytes)
            return TooLarge;
        if (bytes.StartsWith("%PDF-"u8))
            return Pdf(bytes) is { } refusal ? refusal : LetterFileKind.Pdf;
        if (bytes.StartsWith(PngSignature))
            return IsWholePng(bytes) && !IsAlsoOther(bytes) ? LetterFileKind.Png : Unclean;
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]))
            return IsWholeJpeg(bytes) && !IsAlsoOther(bytes) ? LetterFileKind.Jpeg : Unclean;
        return WrongKind;
    }

    private static Refusal? Pdf(ReadOnlySpan<byte> bytes)
    {
        var end = bytes.LastIndexOf("%%EOF"u8);
        if (end < 0 || !IsBlank(bytes[(end + 5)..]) || IsAlsoOther(bytes[5..]))
            return Unclean;
        foreach (var action in PdfActions)
            for (var rest = bytes; rest.IndexOf(action) is var at and >= 0; )
            {
                // "/AA" is an action, "/AAPL" is a name like any other.
                rest = rest[(at + action.Length)..];
                if (rest.IsEmpty || !char.IsAsciiLetterOrDigit((char)rest[0]))
                    return Active;
            }
        return null;
    }

    private static bool IsBlank(ReadOnlySpan<byte> bytes) =>
        bytes.IndexOfAnyExcept(" \t\r\n\0"u8) < 0;

    private static bool IsAlsoOther(ReadOnlySpan<byte> bytes)
    {
        var start = bytes[..Math.Min(bytes.Length, 1024)];
        foreach (var other in OtherBeginnings)
            if (start.IndexOf(other) >= 0)
                return true;
        return false;
    }

    // Chunk by chunk to IEND, which must be the end (ISO/IEC 15948, 5.3).
    private static bool IsWholePng(ReadOnlySpan<byte> bytes)
    {
        var at = PngSignature.Length;
        var first = true;
        while (at + 12 <= bytes.Length)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]);
            var type = bytes.Slice(at + 4, 4);
            if (length > int.MaxValue || at + 12 + (long)length > bytes.Length)
                return false;
            if (first != type.SequenceEqual("IHDR"u8))
                return false;
            first = false;
            at += 12 + (int)length;
            if (type.SequenceEqual("IEND"u8))
                return length == 0 && at == bytes.Length;
        }

        return false;
    }

    // Segment by segment to the picture itself, then to the end of image, which must be the end (ISO/IEC 10918-1, B.1).
    private static bool IsWholeJpeg(ReadOnlySpan<byte> bytes)
    {
        var at = 2;
        var scanned = false;
        while (at + 1 < bytes.Length)
        {
            if (bytes[at] != 0xFF)
                return false;
            var marker = bytes[at + 1];
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            if (marker == 0xD9)
                return scanned && IsBlank(bytes[(at + 2)..]);
            if (at + 4 > bytes.Length)
                return false;
            var length = BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 2)..]);
            if (length < 2 || at + 2 + length > bytes.Length)
                return false;
            at += 2 + length;
            if (marker != 0xDA)
                continue;
            scanned = true;
            at = EndOfScan(bytes, at);
        }

        return false;
    }

    // Within a scan FF 00 is a byte of the picture and FF D0 to D7 are restarts.
    private static int EndOfScan(ReadOnlySpan<byte> bytes, int at)
    {
        while (at + 1 < bytes.Length)
        {
            if (bytes[at] == 0xFF && bytes[at + 1] is not (0x00 or (>= 0xD0 and <= 0xD7)))
                return at;
            at += bytes[at] == 0xFF ? 2 : 1;
        }

        return bytes.Length;
    }

    private static Refusal Refuse(string code, string message) =>
        new(RefusalKind.Invalid, code, message, "file");
}
