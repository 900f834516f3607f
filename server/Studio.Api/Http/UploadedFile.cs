using Studio.Core;

namespace Studio.Api.Http;

/// <summary>Reads the one file of a form, never more of it than is allowed.</summary>
public static class UploadedFile
{
    /// <summary>
    /// The bytes of the form's file; null when the form has none. One byte more than <paramref name="mostBytes"/> is read
    /// of a file that is too large, so that the caller can say so.
    /// </summary>
    /// <param name="request">The request.</param>
    /// <param name="mostBytes">The most bytes that are of use.</param>
    /// <param name="unreadable">What to say of a form that cannot be read.</param>
    public static async Task<Answer<byte[]?>> ReadAsync(
        HttpRequest request,
        int mostBytes,
        Refusal unreadable
    )
    {
        if (!request.HasFormContentType)
            return unreadable;
        try
        {
            var files = (await request.ReadFormAsync()).Files;
            if (files.Count > 1)
                return unreadable;
            if (files.Count == 0)
                return (byte[]?)null;
            await using var stream = files[0].OpenReadStream();
            using var bytes = new MemoryStream();
            var buffer = new byte[81920];
            int count;
            while (bytes.Length <= mostBytes && (count = await stream.ReadAsync(buffer)) > 0)
                bytes.Write(buffer, 0, count);
            return bytes.ToArray();
        }
        // A form without a boundary, or one that ends before its parts do.
        catch (Exception broken) when (broken is InvalidDataException or IOException)
        {
            return unreadable;
        }
    }
}
