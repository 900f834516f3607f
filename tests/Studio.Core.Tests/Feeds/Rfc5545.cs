using System.Text;
using System.Text.RegularExpressions;

namespace Studio.Core.Tests.Feeds;

/// <summary>
/// A reading of RFC 5545 of the tests' own, which shares nothing with what writes: what is wrong with a calendar's octets,
/// each with the section that says so.
/// </summary>
public static partial class Rfc5545
{
    /// <summary>One component with its properties and those inside it.</summary>
    public sealed record Component(string Name)
    {
        /// <summary>Name, parameters and value of each property.</summary>
        public List<(
            string Name,
            Dictionary<string, string> With,
            string Value
        )> Properties { get; } = [];

        /// <summary>Inside it.</summary>
        public List<Component> Inside { get; } = [];

        /// <summary>The values of a property.</summary>
        public IReadOnlyList<string> Values(string name) =>
            [.. Properties.Where(p => p.Name == name).Select(p => p.Value)];

        /// <summary>The one value of a property.</summary>
        public string Value(string name) => Values(name).Single();

        /// <summary>The components of a name inside it.</summary>
        public IReadOnlyList<Component> Of(string name) => [.. Inside.Where(c => c.Name == name)];
    }

    /// <summary>The calendar, and all that is wrong with it.</summary>
    public static (Component? Calendar, IReadOnlyList<string> Wrong) Read(byte[] octets)
    {
        var wrong = new List<string>();
        for (var i = 0; i < octets.Length; i++)
            if (
                octets[i] == '\n' && (i == 0 || octets[i - 1] != '\r')
                || octets[i] == '\r' && (i + 1 == octets.Length || octets[i + 1] != '\n')
            )
                wrong.Add($"3.1: a line break at {i} is not CRLF");
            else if ((octets[i] < 0x20 && octets[i] is not (9 or 10 or 13)) || octets[i] == 0x7f)
                wrong.Add($"3.1: control character {octets[i]} at {i}");
        string text;
        try
        {
            text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(octets);
        }
        catch (DecoderFallbackException)
        {
            return (null, [.. wrong, "6: not UTF-8, or a character cut in two"]);
        }
        if (!text.EndsWith("\r\n", StringComparison.Ordinal))
            wrong.Add("3.1: the last line is not ended");
        var lines = text.Split("\r\n")[..^1];
        foreach (var line in lines)
        {
            if (Encoding.UTF8.GetByteCount(line) > 75)
                wrong.Add($"3.1: more than 75 octets: {line}");
        }

        var open = new Stack<Component>();
        Component? calendar = null;
        foreach (var line in text.Replace("\r\n ", "").Replace("\r\n\t", "").Split("\r\n")[..^1])
        {
            if (ContentLine().Match(line) is not { Success: true } match)
            {
                wrong.Add($"3.1: not a content line: {line}");
                continue;
            }
            var name = match.Groups["name"].Value.ToUpperInvariant();
            var value = match.Groups["value"].Value;
            if (name == "BEGIN")
            {
                var begun = new Component(value);
                if (open.Count > 0)
                    open.Peek().Inside.Add(begun);
                else if (calendar is null)
                    calendar = begun;
                else
                    wrong.Add("3.4: more than one object");
                open.Push(begun);
            }
            else if (name == "END")
            {
                if (open.Count == 0 || open.Pop().Name != value)
                    wrong.Add($"3.6: END:{value} ends nothing");
            }
            else if (open.Count == 0)
                wrong.Add($"3.4: outside of everything: {line}");
            else
                open.Peek()
                    .Properties.Add(
                        (
                            name,
                            match
                                .Groups["with"]
                                .Captures.Select(c => c.Value.Split('=', 2))
                                .ToDictionary(p => p[0], p => p[1].Trim('"')),
                            value
                        )
                    );
        }

        if (open.Count > 0 || calendar is null)
            return (calendar, [.. wrong, "3.6: not everything is ended"]);
        Check(calendar, wrong);
        return (calendar, wrong);
    }

    /// <summary>TEXT as it is meant (3.3.11).</summary>
    public static string Unescape(string text) =>
        Escaped().Replace(text, m => m.Value[1] is 'n' or 'N' ? "\n" : m.Value[1].ToString());

    private static void Check(Component calendar, List<string> wrong)
    {
        if (calendar.Name != "VCALENDAR")
            wrong.Add("3.4: not a VCALENDAR");
        Once(calendar, "3.6", ["PRODID", "VERSION"], wrong);
        if (calendar.Inside.Count == 0)
            wrong.Add("3.6: a calendar must hold at least one component");
        if (calendar.Values("VERSION") is not ["2.0"])
            wrong.Add("3.7.4: VERSION is not 2.0");
        var zones = calendar.Of("VTIMEZONE");
        foreach (var zone in zones)
        {
            Once(zone, "3.6.5", ["TZID"], wrong);
            if (zone.Inside.Count == 0)
                wrong.Add("3.6.5: neither STANDARD nor DAYLIGHT");
            foreach (var part in zone.Inside)
            {
                if (part.Name is not ("STANDARD" or "DAYLIGHT"))
                    wrong.Add($"3.6.5: {part.Name} in a zone");
                Once(part, "3.6.5", ["DTSTART", "TZOFFSETFROM", "TZOFFSETTO"], wrong);
                if (!part.Values("DTSTART").All(onset => LocalTime().IsMatch(onset)))
                    wrong.Add("3.6.5: DTSTART of an observance must be a local time");
                foreach (
                    var offset in part.Values("TZOFFSETFROM").Concat(part.Values("TZOFFSETTO"))
                )
                    if (!OffsetFromUtc().IsMatch(offset) || offset is "-0000" or "-000000")
                        wrong.Add($"3.3.14: {offset} is no offset");
            }
        }
        if (zones.Select(z => z.Value("TZID")).Distinct().Count() != zones.Count)
            wrong.Add("3.8.3.1: a TZID is told twice");

        var events = calendar.Of("VEVENT");
        foreach (var one in events)
        {
            Once(one, "3.6.1", ["UID", "DTSTAMP", "DTSTART"], wrong);
            foreach (
                var name in new[]
                {
                    "DTEND",
                    "SUMMARY",
                    "LOCATION",
                    "DESCRIPTION",
                    "STATUS",
                    "SEQUENCE",
                    "LAST-MODIFIED",
                    "TRANSP",
                    "CLASS",
                }
            )
                if (one.Values(name).Count > 1)
                    wrong.Add($"3.6.1: {name} must not occur more than once");
            foreach (var (name, with, value) in one.Properties)
            {
                var fits = name switch
                {
                    // 3.8.7.2, 3.8.7.3: in UTC.
                    "DTSTAMP" or "LAST-MODIFIED" => UtcTime().IsMatch(value) && with.Count == 0,
                    // 3.3.5, 3.8.2.4: local with a TZID, or in UTC without one.
                    "DTSTART" or "DTEND" => with.ContainsKey("TZID")
                        ? LocalTime().IsMatch(value)
                        : UtcTime().IsMatch(value),
                    "STATUS" => value is "CONFIRMED" or "TENTATIVE" or "CANCELLED", // 3.8.1.11
                    "TRANSP" => value is "OPAQUE" or "TRANSPARENT", // 3.8.2.7
                    "CLASS" => value is "PUBLIC" or "PRIVATE" or "CONFIDENTIAL", // 3.8.1.3
                    "SEQUENCE" => int.TryParse(value, out var n) && n >= 0, // 3.8.7.4
                    // 3.3.11: comma, semicolon and backslash stand behind a backslash.
                    "SUMMARY" or "LOCATION" or "DESCRIPTION" or "UID" => TextValue().IsMatch(value),
                    _ => false,
                };
                if (!fits)
                    wrong.Add($"3.8: {name} {string.Join(';', with)} {value}");
                if (with.TryGetValue("TZID", out var id) && zones.All(z => z.Value("TZID") != id))
                    wrong.Add($"3.2.19: no VTIMEZONE for {id}");
            }
        }
        if (events.Select(e => e.Value("UID")).Distinct().Count() != events.Count)
            wrong.Add("3.8.4.7: a UID is told twice");
    }

    private static void Once(Component of, string section, string[] names, List<string> wrong)
    {
        foreach (var name in names)
            if (of.Values(name).Count != 1)
                wrong.Add($"{section}: {name} must occur once in {of.Name}");
    }

    [GeneratedRegex(
        "^(?<name>[A-Za-z0-9-]+)(;(?<with>[A-Za-z0-9-]+=(\"[^\"\\p{Cc}]*\"|[^\";:,\\p{Cc}]*)))*:(?<value>.*)$",
        RegexOptions.Singleline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex ContentLine();

    [GeneratedRegex(@"\\[\\;,nN]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Escaped();

    [GeneratedRegex(@"^([^\\;,\p{Cc}]|\\[\\;,nN])*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TextValue();

    [GeneratedRegex(@"^\d{8}T\d{6}$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex LocalTime();

    [GeneratedRegex(@"^\d{8}T\d{6}Z$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex UtcTime();

    [GeneratedRegex(@"^[+-]\d{4}(\d{2})?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex OffsetFromUtc();
}
