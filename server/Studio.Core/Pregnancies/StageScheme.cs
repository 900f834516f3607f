using NodaTime;
using Studio.Core.Catalogue;

namespace Studio.Core.Pregnancies;

/// <summary>
/// The stages, in order: those of pregnancy first, then those after birth. Within each count they follow one
/// another without gap or overlap from day 0 on, and the last stays open.
/// </summary>
public sealed class StageScheme
{
    // As the file has them, so that a moved boundary no longer claims the publication, and one moved back does.
    private readonly IReadOnlyList<Stage> published;

    private StageScheme(IReadOnlyList<Stage> stages, IReadOnlyList<Stage> published) =>
        (Stages, this.published) = (stages, published);

    /// <summary>All stages in order.</summary>
    public IReadOnlyList<Stage> Stages { get; }

    /// <summary>Reads the scheme and checks it whole.</summary>
    /// <param name="csv">The text, with a header row.</param>
    /// <param name="file">The file's name, for the errors.</param>
    /// <exception cref="CatalogueException">Anything is wrong with it; every error is named with its line.</exception>
    public static StageScheme Parse(TextReader csv, string file)
    {
        var stages = StageFile.Read(csv, file);
        return new(stages, stages);
    }

    /// <summary>
    /// The scheme with one boundary moved: the stage begins on another day, and the one before it ends on the day
    /// before. Refused for a stage there is not, for the first stage of a count, and where a stage would be left empty.
    /// </summary>
    /// <param name="code">The stage that begins at the boundary.</param>
    /// <param name="fromDay">Its new first day, in the stage's own count.</param>
    public Answer<StageScheme> WithBoundary(string code, int fromDay)
    {
        if (Stages.FirstOrDefault(stage => stage.Code == code) is not { } moved)
            return new Refusal(
                RefusalKind.NotFound,
                "no-such-stage",
                $"There is no stage '{code}'.",
                "code"
            );
        if (
            Stages.LastOrDefault(stage =>
                stage.CountsFrom == moved.CountsFrom && stage.FromDay < moved.FromDay
            )
            is not { } before
        )
            return Refuse(
                "stage-begins-the-count",
                $"{moved.Name} begins the count and stays at day 0."
            );

        var earliest = before.FromDay + 1;
        var latest = moved.ToDay ?? LatestStart(moved.CountsFrom);
        if (fromDay < earliest || fromDay > latest)
            return Refuse(
                "stage-left-empty",
                $"{moved.Name} can begin on day {earliest} to day {latest}, not on day {fromDay}."
            );

        return new StageScheme(
            [
                .. Stages.Select(stage =>
                    stage == moved ? Sourced(stage with { FromDay = fromDay })
                    : stage == before ? Sourced(stage with { ToDay = fromDay - 1 })
                    : stage
                ),
            ],
            published
        );
    }

    /// <summary>Where a client is on a date; without a pregnancy, nobody knows.</summary>
    public Situation On(Pregnancy? p, LocalDate day)
    {
        if (p is null)
            return new() { On = day, Phase = Phase.Unknown };
        if (p.EndedOn <= day)
            return new() { On = day, Phase = Phase.Ended };
        if (p.BornOn is { } born && born <= day)
        {
            var since = Period.DaysBetween(born, day);
            return new()
            {
                On = day,
                Phase = Phase.Born,
                DaysSinceBirth = since,
                Stage = At(StageCount.Birth, since),
            };
        }
        if (p.DueDate is not { } due)
            return new() { On = day, Phase = Phase.Unknown };

        var age = GestationalAge.On(day, due);
        if (age.Days < 0)
            return new() { On = day, Phase = Phase.BeforeDates };
        return new()
        {
            On = day,
            Phase = Phase.Pregnant,
            Age = age,
            Stage = At(StageCount.Pregnancy, age.Days),
            MayHaveGivenBirth =
                age.Days >= GestationalAge.AtEarlyTerm && p is { BornOn: null, EndedOn: null },
            PastPostterm = age.Days >= GestationalAge.AtPostterm,
            Term = Situation.TermOf(age),
        };
    }

    /// <summary>
    /// The dates of every stage she has, in order. Those of pregnancy end the day before the birth, or before the
    /// loss; those after birth are there once the birth is. A stage she never reached is left out.
    /// </summary>
    public IReadOnlyList<StageBand> Bands(Pregnancy p)
    {
        var end = p.EndedOn is { } ended ? DayNumber.Of(ended) - 1 : (int?)null;
        var endOfPregnancy = p.BornOn is { } birth ? Earlier(end, DayNumber.Of(birth) - 1) : end;
        return
        [
            .. p.DueDate is { } due
                ? Of(
                    StageCount.Pregnancy,
                    DayNumber.Of(due) - GestationalAge.AtDueDate,
                    endOfPregnancy
                )
                : [],
            .. p.BornOn is { } born ? Of(StageCount.Birth, DayNumber.Of(born), end) : [],
        ];
    }

    /// <summary>The next stage with its first date, as far as it can be told; null when nothing is known to follow.</summary>
    public StageBand? Next(Pregnancy p, LocalDate day) =>
        Bands(p).FirstOrDefault(band => band.From > day);

    /// <summary>
    /// The latest day on which a stage can begin: the greatest possible age, and a year after birth, which is as far
    /// as the guidelines for that time reach (UK Chief Medical Officers, 2019; Davenport et al., 2025).
    /// </summary>
    internal static int LatestStart(StageCount count) =>
        count switch
        {
            StageCount.Pregnancy => GestationalAge.Greatest,
            StageCount.Birth => 365,
        };

    private Stage At(StageCount count, int day) =>
        Stages.Last(stage => stage.CountsFrom == count && stage.FromDay <= day);

    private IEnumerable<StageBand> Of(StageCount count, int dayZero, int? end) =>
        from stage in Stages
        where stage.CountsFrom == count
        let first = Math.Max(dayZero + stage.FromDay, DayNumber.First)
        let last = Earlier(end, dayZero + stage.ToDay)
        where first <= Math.Min(last ?? DayNumber.Last, DayNumber.Last)
        select new StageBand(
            stage,
            DayNumber.ToDate(first),
            last <= DayNumber.Last ? DayNumber.ToDate(last.Value) : null
        );

    private static int? Earlier(int? one, int? other) =>
        one is null ? other
        : other is null ? one
        : Math.Min(one.Value, other.Value);

    private Stage Sourced(Stage stage)
    {
        var original = published.First(one => one.Code == stage.Code);
        return stage with
        {
            Source =
                (stage.FromDay, stage.ToDay) == (original.FromDay, original.ToDay)
                    ? original.Source
                    : $"Set by the studio; published otherwise: {original.Source}",
        };
    }

    private static Refusal Refuse(string code, string message) =>
        new(RefusalKind.Invalid, code, message, "fromDay");

    /// <summary>Days as plain numbers, so that sums near either end of the calendar cannot leave it.</summary>
    private static class DayNumber
    {
        private static readonly LocalDate Zero = new(2000, 1, 1);

        public static readonly int First = Of(LocalDate.MinIsoValue);
        public static readonly int Last = Of(LocalDate.MaxIsoValue);

        public static int Of(LocalDate day) => Period.DaysBetween(Zero, day);

        public static LocalDate ToDate(int number) => Zero.PlusDays(number);
    }
}
