using Studio.Core.Accounts;

namespace Studio.Api.Rosters;

/// <summary>A flag's words for one reader.</summary>
public static class FlagWords
{
    /// <summary>The flag as this reader may see it; null when it is nothing for her.</summary>
    public static FlagMessage? For(FlagRow flag, Audience audience)
    {
        // The owner teaches nobody: she reads what the desk reads, and the roster's own words where there are some.
        var text = audience switch
        {
            Audience.Instructor => flag.ForInstructor,
            Audience.Owner or Audience.FrontDesk => flag.ForDesk,
            Audience.Herself => null,
        };
        return text is null
            ? null
            : new FlagMessage
            {
                Id = flag.Id,
                Kind = flag.Kind,
                Severity = flag.Severity,
                Text = text,
                Since = flag.Since,
                IsNew = flag.ReadAt is null,
                ClientId = flag.ClientId,
                Called = flag.Called,
                Name = audience == Audience.Instructor ? null : flag.Name,
                SessionId = flag.SessionId,
            };
    }
}
