using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace Studio.Core.Messages;

/// <summary>Lays a message out as text and as HTML.</summary>
internal static class MessageLayout
{
    private const string Font =
        "font-family:Georgia,'Times New Roman',serif;font-size:17px;line-height:1.5;color:#25221c";

    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    public static string Text(Said said, MessageKind kind, MessageFrame frame)
    {
        var text = new StringBuilder();
        Paragraph(Greeting(frame));
        foreach (var words in said.Before)
            Paragraph(words);
        if (said.Lines.Count > 0)
            Paragraph(string.Join('\n', said.Lines.Select(line => $"  - {line}")));
        foreach (var words in said.After)
            Paragraph(words);
        if (frame.Page is { } page)
            Paragraph($"{said.Press}:\n{page}");
        Paragraph(OneLine.Of(frame.StudioName));
        text.Append("--\n");
        foreach (var words in Foot(kind, frame))
            text.Append(words).Append('\n');
        if (frame.Stop is { } stop)
            text.Append("Stop messages of this kind: ").Append(stop).Append('\n');
        if (frame.Choices is { } choices)
            text.Append("Choose what you receive: ").Append(choices).Append('\n');
        return text.ToString();

        void Paragraph(string words) => text.Append(words).Append("\n\n");
    }

    public static string Html(Said said, MessageKind kind, MessageFrame frame)
    {
        var html = new StringBuilder();
        html.Append(
            $"""
            <!doctype html>
            <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
            <title>{Safe(OneLine.Of(said.Subject))}</title></head>
            <body style="margin:0;padding:24px 16px;background:#fffdf8">
            <div style="max-width:34em;margin:0 auto;{Font}">

            """
        );
        Paragraph(Greeting(frame));
        foreach (var words in said.Before)
            Paragraph(words);
        if (said.Lines.Count > 0)
        {
            html.Append("<ul style=\"margin:0 0 1em;padding-left:1.2em\">\n");
            foreach (var line in said.Lines)
                html.Append($"<li style=\"margin:0 0 .3em\"><strong>{Safe(line)}</strong></li>\n");
            html.Append("</ul>\n");
        }

        foreach (var words in said.After)
            Paragraph(words);
        if (frame.Page is { } page)
            html.Append(
                $"<p style=\"margin:1.4em 0\"><a href=\"{Safe(page)}\" style=\"display:inline-block;padding:.6em 1.1em;background:#1f5a3c;color:#ffffff;text-decoration:none;border-radius:4px\">{Safe(said.Press)}</a></p>\n"
            );
        Paragraph(OneLine.Of(frame.StudioName));
        html.Append(
            "<p style=\"margin:2em 0 0;padding-top:.8em;border-top:1px solid #d9d2c5;font-size:14px;color:#5a544b\">"
        );
        html.Append(string.Join("<br>\n", Foot(kind, frame).Select(Safe)));
        if (frame.Stop is { } stop)
            html.Append($"<br>\n{Link(stop, "Stop messages of this kind")}");
        if (frame.Choices is { } choices)
            html.Append($"<br>\n{Link(choices, "Choose what you receive")}");
        return html.Append("</p>\n</div>\n</body></html>\n").ToString();

        void Paragraph(string words) =>
            html.Append($"<p style=\"margin:0 0 1em\">{Safe(words)}</p>\n");

        static string Link(string to, string words) =>
            $"<a href=\"{Safe(to)}\" style=\"color:#1f5a3c\">{Safe(words)}</a>";
    }

    private static string Greeting(MessageFrame frame) =>
        OneLine.Of(frame.Called) is { Length: > 0 } called ? $"Hello {called}," : "Hello,";

    private static IEnumerable<string> Foot(MessageKind kind, MessageFrame frame)
    {
        yield return "This message was written by a program; answers to it are not read.";
        if (kind.IsEssential() && kind != MessageKind.Test)
            yield return "It is about something that is yours at the studio, so it cannot be stopped.";
    }

    private static string Safe(string words) => Encoder.Encode(words);
}
