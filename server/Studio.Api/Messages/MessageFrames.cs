using Studio.Core.Messages;

namespace Studio.Api.Messages;

/// <summary>Puts a message into its frame: whom it greets and where it leads.</summary>
public static class MessageFrames
{
    /// <summary>The frame.</summary>
    public static MessageFrame Of(MessageRow row, string studioName, MailLinks links)
    {
        var choices =
            row.ClientId is not null ? "/my/messages"
            : row.InstructorId is not null ? "/teach/messages"
            : null;
        return new()
        {
            StudioName = studioName,
            Called = row.Called,
            Page = row.HasPage ? links.Page(PageOf(row)) : null,
            Stop =
                row.Kind.IsEssential() || choices is null
                    ? null
                    : links.Stop(new(row.ClientId, row.InstructorId, row.Kind)),
            Choices = row.HasPage && choices is not null ? links.Page(choices) : null,
        };
    }

    private static string PageOf(MessageRow row) =>
        row.ClientId is not null ? "/my"
        : row.Kind is MessageKind.CoverAsked ? "/teach/cover"
        : row.InstructorId is not null ? "/teach/week"
        : "/studio/messages";
}
