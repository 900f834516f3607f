using Studio.Core.Catalogue;

namespace Studio.Core.Movements;

/// <summary>Reads <c>movements.csv</c>: one movement to a row, checked whole before anything is used.</summary>
internal static class MovementFile
{
    private const string File = "movements.csv";
    private const int MostEffort = 10;

    private static readonly string[] Columns =
    [
        "code",
        "name",
        "group",
        "position",
        "traits",
        "effort",
        "equipment",
        "cue",
        "options",
    ];

    public static IReadOnlyList<Movement> Read(
        Func<string, TextReader> open,
        CatalogueErrors errors
    )
    {
        var rows = CatalogueTable.Read(open, File, Columns, errors);
        CatalogueTable.CheckUnique(rows, "code");
        CatalogueTable.CheckUnique(rows, "name");
        var read = rows.Select(row => (Row: row, Movement: Of(row))).ToList();
        var movements = read.DistinctBy(r => r.Movement.Code)
            .ToDictionary(r => r.Movement.Code, StringComparer.Ordinal);
        foreach (var (row, movement) in read)
            CheckOptions(
                row,
                movement,
                code => movements.TryGetValue(code, out var found) ? found.Movement : null
            );
        foreach (var circle in OptionCircles.In([.. movements.Values.Select(r => r.Movement)]))
            movements[circle[0]]
                .Row.Error($"the options go in a circle: {string.Join(" → ", circle)}.");
        return [.. movements.Values.Select(r => r.Movement)];
    }

    private static Movement Of(CatalogueRow row)
    {
        var group = row.Required("group");
        if (group.Length > 0 && !MovementGroups.All.ContainsKey(group))
            row.Error($"group is '{group}': there is no such group.");
        var position = row.Required("position");
        if (position.Length > 0 && !Positions.All.ContainsKey(position))
            row.Error($"position is '{position}': there is no such position.");
        var traits = row.List("traits");
        foreach (var trait in traits.Where(t => !MovementTraits.All.ContainsKey(t)))
            row.Error($"traits names '{trait}': there is no such trait.");
        if (traits.Contains(MovementTraits.WorksPropped) && position != Positions.Supine)
            row.Error(
                $"'{MovementTraits.WorksPropped}' is only for what is done flat on the back."
            );
        row.Required("effort");
        var effort = row.Number("effort");
        if (effort > MostEffort)
            row.Error($"effort is {effort}: the scale ends at {MostEffort}.");
        return new()
        {
            Code = row.Required("code"),
            Name = row.Required("name"),
            Group = group,
            Position = position,
            Traits = traits.ToHashSet(StringComparer.Ordinal),
            Effort = effort ?? 0,
            Equipment = row.List("equipment"),
            Cue = row.Required("cue"),
            Options = row.List("options"),
        };
    }

    private static void CheckOptions(
        CatalogueRow row,
        Movement movement,
        Func<string, Movement?> find
    )
    {
        foreach (var code in movement.Options)
            if (find(code) is not { } option)
                row.Error($"options names '{code}': there is no such movement.");
            else if (option.Effort > movement.Effort)
                row.Error(
                    $"the option '{code}' asks for more effort ({option.Effort}) than '{movement.Code}' ({movement.Effort})."
                );
        foreach (var twice in movement.Options.GroupBy(o => o).Where(o => o.Count() > 1))
            row.Error($"options names '{twice.Key}' {twice.Count()} times.");
    }
}

/// <summary>Finds options that lead back to where they began.</summary>
internal static class OptionCircles
{
    /// <summary>Each circle once, from its first movement in the file's order back to it.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> In(IReadOnlyList<Movement> movements)
    {
        var byCode = movements.ToDictionary(m => m.Code, StringComparer.Ordinal);
        var circles = new List<IReadOnlyList<string>>();
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var movement in movements)
            Walk(movement.Code, []);
        return circles;

        void Walk(string code, List<string> path)
        {
            if (path.IndexOf(code) is >= 0 and var at)
                circles.Add([.. path[at..], code]);
            else if (!done.Contains(code) && byCode.TryGetValue(code, out var here))
            {
                path.Add(code);
                foreach (var option in here.Options)
                    Walk(option, path);
                path.RemoveAt(path.Count - 1);
                done.Add(code);
            }
        }
    }
}
