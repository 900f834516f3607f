using Studio.Core.Tests.Catalogue;

namespace Studio.Core.Tests.Movements;

/// <summary>Each thing the loader must catch in a row, shown by the shipped file with that one thing broken.</summary>
public class DamagedMovementRows
{
    private const string Movements = "movements.csv";
    private const string Rules = "movement_rules.csv";

    public static TheoryData<string, string, string, string, string> OneThingBroken() =>
        new()
        {
            {
                Movements,
                "squat,",
                ",lower-body,",
                ",legs,",
                "group is 'legs': there is no such group."
            },
            {
                Movements,
                "squat,",
                ",standing,",
                ",floating,",
                "position is 'floating': there is no such position."
            },
            {
                Movements,
                "tree,",
                "balance;",
                "wobble;",
                "traits names 'wobble': there is no such trait."
            },
            {
                Movements,
                "squat,",
                ",4,",
                ",four,",
                "effort is 'four': it must be a whole number."
            },
            { Movements, "squat,", ",4,", ",11,", "effort is 11: the scale ends at 10." },
            { Movements, "squat,", ",4,", ",,", "the effort is missing." },
            { Movements, "squat,", "squat,Squat,", "squat,,", "the name is missing." },
            {
                Movements,
                "tree,",
                "Rest the foot on the inside of the calf and grow tall.",
                "",
                "the cue is missing."
            },
            {
                Movements,
                "tree,",
                "tandem-stand",
                "one-hand-stand",
                "options names 'one-hand-stand': there is no such movement."
            },
            {
                Movements,
                "tree,",
                "tandem-stand;weight-shift",
                "weight-shift;weight-shift",
                "options names 'weight-shift' 2 times."
            },
            {
                Movements,
                "clamshell,",
                "side-lying-leg-slides",
                "side-lying-leg-swing",
                "the option 'side-lying-leg-swing' asks for more effort (4) than 'clamshell' (2)."
            },
            {
                Movements,
                "side-rest,",
                ",0,",
                ",0,",
                "the options go in a circle: side-rest → guided-rest → side-rest."
            },
            {
                Movements,
                "tree,",
                "balance;",
                "works-propped;",
                "'works-propped' is only for what is done flat on the back."
            },
            {
                Rules,
                "turns-third-trimester,",
                ",quick-turns,",
                ",slow-turns,",
                "trait is 'slow-turns': there is no such trait."
            },
            {
                Rules,
                "prone-in-pregnancy,",
                ",prone,",
                ",upside-down,",
                "position is 'upside-down': there is no such position."
            },
            {
                Rules,
                "stretch-in-pregnancy,",
                ",stretch,",
                ",stretches,",
                "group is 'stretches': there is no such group."
            },
            {
                Rules,
                "cat-to-neutral,",
                "cat-and-cow",
                "dog-and-cow",
                "movement is 'dog-and-cow': there is no such movement."
            },
            {
                Rules,
                "supine-showing,",
                ",works-propped,",
                ",works-well,",
                "except names 'works-well': there is no such position, trait or movement."
            },
            {
                Rules,
                "turns-third-trimester,",
                ",third-trimester,",
                ",fourth-trimester,",
                "stages names 'fourth-trimester': there is no such stage."
            },
            {
                Rules,
                "wide-hips-prolapse,",
                "prolapse-or-leaking",
                "prolapse",
                "factor is 'prolapse': there is no such factor or condition."
            },
            {
                Rules,
                "prone-in-pregnancy,",
                ",M13,",
                ",M99,",
                "source is 'M99': there is no such source."
            },
            {
                Rules,
                "prone-in-pregnancy,",
                ",M13,",
                ",,",
                "the source is missing: everything here has a source."
            },
            {
                Rules,
                "prone-in-pregnancy,",
                ",replaced,",
                ",forbidden,",
                "verdict is 'forbidden': it must be as-taught, adapted, replaced, left-out."
            },
            {
                Rules,
                "prone-in-pregnancy,",
                ",not on the belly,",
                ",,",
                "the instruction is missing."
            },
            {
                Rules,
                "heavy-load-light,",
                "lifting=light",
                "lifting",
                "policy is 'lifting': it must be a policy's code, = and one or more of its values."
            },
            {
                Rules,
                "heavy-load-light,",
                "lifting=light",
                "carrying=light",
                "policy names 'carrying': there is no such policy."
            },
            {
                Rules,
                "heavy-load-light,",
                "lifting=light",
                "lifting=feathers",
                "policy gives lifting the value 'feathers': it may be light|by-weight|by-symptoms."
            },
            {
                Rules,
                "effort-in-pregnancy,",
                "policy:effort-most",
                "policy:effort-least",
                "effort_over names the policy 'effort-least': it must be effort-most."
            },
            {
                Rules,
                "effort-far-over,",
                ",7,",
                ",10,",
                "effort_over is '10': it must be 0 to 9, or policy: and a policy's code."
            },
            {
                Rules,
                "effort-far-over,",
                ",7,",
                ",,",
                "it speaks of nothing: give a position, a trait, a group, movements or an effort."
            },
            {
                Rules,
                "prone-in-pregnancy,",
                ",not on the belly,",
                ",{limit} of 10,",
                "the words speak of a {limit}, and effort_over gives none."
            },
            {
                Rules,
                "effort-far-over,",
                ",7,",
                ",9,",
                "no client can ever meet it: it speaks of no movement there is."
            },
            {
                Rules,
                "supine-from-16-weeks,",
                "16w0d,,,,supine",
                "46w0d,,,,supine",
                "no client can ever meet it: from_ga 46w 0d is later than any pregnancy."
            },
            {
                Rules,
                "supine-from-16-weeks,",
                "16w0d,,,,supine",
                "16w0d,,5,,supine",
                "no client can ever meet it: it asks for a gestational age and for the time after birth at once."
            },
            {
                Rules,
                "flexion-showing,",
                "flexion-showing,,,",
                "flexion-showing,,postnatal,",
                "no client can ever meet it: its stages are after the birth, and the rest is before it."
            },
        };

    [Theory]
    [MemberData(nameof(OneThingBroken))]
    public void One_thing_broken_is_named_with_its_file_and_line(
        string file,
        string row,
        string from,
        string to,
        string error
    )
    {
        var line = TheCatalogue.LineOf(file, row);
        Assert.NotEqual(0, line);

        var errors = TheCatalogue.ErrorsOf(
            (
                file,
                text =>
                    error.Contains("circle", StringComparison.Ordinal)
                        ? WithCircle(text)
                        : TheCatalogue.ReplaceOnLine(text, line, from, to)
            )
        );

        Assert.Contains($"{file} line {line}: {error}", errors);
    }

    private static string WithCircle(string text) =>
        string.Join(
            '\n',
            text.Split('\n')
                .Select(line =>
                    line.StartsWith("side-rest,", StringComparison.Ordinal) ? line + "guided-rest"
                    : line.StartsWith("guided-rest,", StringComparison.Ordinal) ? line + "side-rest"
                    : line
                )
        );
}
