using Studio.Core.Catalogue;
using Studio.Core.Pregnancies;

namespace Studio.Api.Incidents;

/// <summary>Makes messages of entries.</summary>
public static class IncidentWords
{
    /// <summary>An entry with what was added to it.</summary>
    public static IncidentMessage For(
        IncidentRow first,
        IEnumerable<IncidentRow> more,
        RuleBook book
    ) =>
        new()
        {
            Id = first.Id,
            ClientId = first.ClientId,
            Name = first.Name,
            SessionId = first.SessionId,
            ClassName = first.ClassName,
            SessionOn = first.SessionOn,
            StartsLocal = first.StartsLocal,
            Place = first.Place,
            Zone = first.Zone,
            RaisedAt = first.RaisedAt,
            RaisedBy = first.RaisedBy,
            // A sign that the catalogue no longer knows stays readable by its code.
            Signs =
            [
                .. first.Codes.Select(code =>
                    book.WarningSigns.FirstOrDefault(s => s.Code == code)?.Name ?? code
                ),
            ],
            Happened = first.Happened,
            Done = first.Done,
            HoldStands = first is { HeldFrom: not null, LiftedOn: null },
            Hold = Hold(first),
            More =
            [
                .. more.Select(m => new IncidentAddition(
                    m.Id,
                    m.RaisedAt,
                    m.RaisedBy,
                    m.Happened,
                    m.Done
                )),
            ],
        };

    private static string Hold(IncidentRow entry) =>
        entry.HeldFrom is not { } from ? "No hold followed."
        : entry.LiftedOn is { } lifted
            ? $"Held from {Wording.Date(from)}, lifted on {Wording.Date(lifted)} by a letter that was read."
        : $"The hold stands since {Wording.Date(from)}. A letter written on {Wording.Date(from)} or later lifts it, once it has been read.";
}
