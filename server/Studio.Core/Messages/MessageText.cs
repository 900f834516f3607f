namespace Studio.Core.Messages;

/// <summary>Around a message: from whom, to whom, and where it leads.</summary>
public sealed record MessageFrame
{
    /// <summary>The studio's name.</summary>
    public required string StudioName { get; init; }

    /// <summary>What she likes to be called.</summary>
    public required string Called { get; init; }

    /// <summary>Address of her own page; null when she has no account and so no page.</summary>
    public string? Page { get; init; }

    /// <summary>Where messages of this kind can be stopped with one press; null when they cannot.</summary>
    public string? Stop { get; init; }

    /// <summary>Where she chooses what she receives; null when she has no page.</summary>
    public string? Choices { get; init; }
}

/// <summary>A message as it is read.</summary>
/// <param name="Subject">Its subject, one line; it names neither a class nor anything of anybody's health.</param>
/// <param name="Text">The whole of it as plain text.</param>
/// <param name="Html">The same as HTML, with styles inline and nothing fetched from elsewhere.</param>
/// <param name="Heart">What it has to say, without greeting, links and foot; one paragraph a line.</param>
public sealed record MessageText(string Subject, string Text, string Html, string Heart)
{
    /// <summary>
    /// Puts a message into words. What the facts hold is taken as words only: it can neither begin a new header line nor
    /// be read as markup.
    /// </summary>
    /// <param name="kind">What it is about.</param>
    /// <param name="facts">
    /// <c>lines</c>: sentences with class, day, hour and place, one a line. <c>place</c>: her number on the waitlist.
    /// <c>until</c>: how long a seat is kept. <c>moved</c>: her bookings were moved together.
    /// </param>
    /// <param name="frame">Around it.</param>
    public static MessageText Of(
        MessageKind kind,
        IReadOnlyDictionary<string, string> facts,
        MessageFrame frame
    )
    {
        var said = MessageWords.Of(kind, facts, frame.Page is not null);
        return new(
            OneLine.Of(said.Subject),
            MessageLayout.Text(said, kind, frame),
            MessageLayout.Html(said, kind, frame),
            string.Join('\n', said.Before.Concat(said.Lines).Concat(said.After))
        );
    }
}
