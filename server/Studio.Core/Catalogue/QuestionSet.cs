using Studio.Core.Pregnancies;

namespace Studio.Core.Catalogue;

/// <summary>The questions of the screening.</summary>
/// <param name="Version">Kept with every answer, so that an old answer is read beside the question it answered.</param>
/// <param name="All">In the order of the file.</param>
public sealed record QuestionSet(int Version, IReadOnlyList<Question> All)
{
    /// <summary>Those asked of somebody who is where she is; who has no dates yet is asked what a pregnant client is.</summary>
    public IEnumerable<Question> For(Phase phase) => All.Where(q => IsMeant(q.When, phase));

    /// <summary>Whether something meant for some is meant for her.</summary>
    public static bool IsMeant(AskedWhen when, Phase phase) =>
        when switch
        {
            AskedWhen.Always => true,
            AskedWhen.AfterBirth => phase == Phase.Born,
            AskedWhen.Pregnancy => phase is Phase.Pregnant or Phase.BeforeDates or Phase.Unknown,
        };
}
