namespace Studio.Core.Tests.Catalogue;

/// <summary>Each thing the loader must catch in a row, shown by the shipped file with that one thing broken.</summary>
public class DamagedRows
{
    private const string Rules = "class_rules.csv";
    private const string Conditions = "conditions.csv";
    private const string Questions = "questions.csv";
    private const string Signs = "warning_signs.csv";
    private const string Rates = "heart_rates.csv";

    public static TheoryData<string, string, string, string, string> OneThingBroken() =>
        new()
        {
            {
                Questions,
                "back-pain,",
                ",back-pain,",
                ",sore-back,",
                "about is 'sore-back': there is no such factor, condition or warning sign."
            },
            {
                Questions,
                "back-pain,",
                ",1,",
                ",2,",
                "the version must be one number, the same on every line."
            },
            {
                Questions,
                "showing,",
                ",pregnancy,",
                ",always,",
                "'showing' must be asked 'pregnancy', whenever it can be true."
            },
            {
                Questions,
                "agreement,",
                ",agree,,",
                ",agree,back-pain,",
                "about is 'back-pain', but only yes and no say whether that is true."
            },
            {
                Questions,
                "wrist-pain,",
                ",wrist-pain,",
                ",,",
                "a yes means nothing: the factor, condition or sign it is about is missing."
            },
            {
                Signs,
                "sign-calf,",
                ",yes,no,no,yes,",
                ",no,no,no,no,",
                "no list names it, and yet it stops a class."
            },
            {
                Signs,
                "sign-calf,",
                ",stop,",
                ",rest,",
                "action is 'rest': it must be stop, slow-down."
            },
            {
                Signs,
                "sign-calf,",
                ",stop,W10",
                ",stop,W99",
                "source is 'W99': there is no such source."
            },
            {
                Rates,
                "canada,,28,moderate",
                ",125,146,",
                ",146,125,",
                "low 146 is not less than high 125."
            },
            {
                Rates,
                "canada,,28,moderate",
                "canada,",
                "norway,",
                "population is 'norway': it must be canada, acog, adults."
            },
            {
                Rates,
                "canada,,28,moderate",
                ",beats/min,",
                ",beats,",
                "unit is 'beats': it must be beats/min, percent, borg, cr10, talk."
            },
            {
                Rates,
                "canada,,28,moderate",
                ",I02,",
                ",I99,",
                "source is 'I99': there is no such source."
            },
            { Rates, "canada,,28,moderate", ",146,", ",,", "the high is missing." },
            {
                Rates,
                "canada,30,,moderate",
                "canada,30,,",
                "canada,30,29,",
                "age_from 30 is more than age_to 29."
            },
            {
                Rates,
                "adults,,,moderate,,,talk",
                ",,,talk,",
                ",,4,talk,",
                "a talk test is words: it has no low and no high."
            },
            {
                Rules,
                "balance-in-third-trimester",
                ",balance,",
                ",juggling,",
                "trait is 'juggling': there is no such trait."
            },
            {
                Rules,
                "first-days-after-birth",
                "breath-only",
                "breathing",
                "except is 'breathing': there is no such trait."
            },
            {
                Rules,
                "prone-in-pregnancy",
                "first-trimester",
                "zeroth-trimester",
                "stages names 'zeroth-trimester': there is no such stage."
            },
            {
                Rules,
                "wide-hips-pelvic-pain",
                "pelvic-girdle-pain",
                "pelvic-pain",
                "factor is 'pelvic-pain': there is no such factor or condition."
            },
            {
                Rules,
                "prone-in-pregnancy",
                ",M13,",
                ",M99,",
                "source is 'M99': there is no such source."
            },
            {
                Rules,
                "prone-in-pregnancy",
                ",M13,",
                ",,",
                "the source is missing: everything here has a source."
            },
            {
                Rules,
                "prone-in-pregnancy",
                ",adapted,",
                ",changed,",
                "verdict is 'changed': it must be note, adapted, letter, not-suitable."
            },
            {
                Rules,
                "caesarean-first-weeks",
                ",caesarean,",
                ",cesarean,",
                "birth_mode is 'cesarean': it must be vaginal, assisted, caesarean, unknown."
            },
            {
                Rules,
                "balance-in-third-trimester",
                "28w0d",
                "28w7d",
                "from_ga is '28w7d': it must be weeks and days such as 26w0d."
            },
            {
                Rules,
                "caesarean-first-weeks",
                "policy:after-caesarean-days",
                "policy:look-ahead-days",
                "until_born names the policy 'look-ahead-days': it must be impact-after-birth-days, after-caesarean-days."
            },
            {
                Rules,
                "first-days-after-birth",
                ",2,",
                ",two,",
                "until_born is 'two': it must be a number of days, or policy: and a policy's code."
            },
            {
                Rules,
                "first-days-after-birth",
                ",2,",
                ",0,",
                "no client can ever meet it: from_born 0 is not before until_born 0."
            },
            {
                Rules,
                "supine-once-showing",
                ",,13w6d",
                ",20w0d,13w6d",
                "no client can ever meet it: from_ga 20w 0d is later than to_ga 13w 6d."
            },
            {
                Rules,
                "supine-light-headed,",
                "supine-light-headed,,",
                "supine-light-headed,postnatal,",
                "no client can ever meet it: its stages are after the birth, and the rest is before it."
            },
            {
                Rules,
                "prone-after-caesarean",
                "early-recovery;postnatal",
                "third-trimester",
                "no client can ever meet it: its stages are before the birth, and the rest is after it."
            },
            {
                Rules,
                "low-placenta-from-26-weeks",
                "low-placenta-from-26-weeks,",
                "low-placenta-from-26-weeks,first-trimester",
                "no client can ever meet it: its days lie outside its stages."
            },
            {
                Rules,
                "low-placenta-from-26-weeks",
                ",26w0d,,,",
                ",26w0d,,5,",
                "no client can ever meet it: it asks for a gestational age and for the time after birth at once."
            },
            {
                Rules,
                "supine-light-headed",
                ",,,,,,supine",
                ",,,,5,,supine",
                "no client can ever meet it: 'lightheaded-lying-flat' ends with the birth."
            },
            {
                Rules,
                "balance-pelvic-pain",
                ",balance,,",
                ",balance,balance,",
                "no client can ever meet it: the trait 'balance' is spared by except."
            },
            {
                Rules,
                "balance-pelvic-pain",
                ",,M56",
                ",Until {date}.,M56",
                "lift speaks of a {date}, and nothing in the rule says when it ends."
            },
            {
                Rules,
                "prone-in-pregnancy",
                "Hands and knees or side-lying instead of lying on the belly.",
                "",
                "the for_instructor is missing."
            },
            {
                Conditions,
                "C01,",
                "acog-list",
                "",
                "the acog_source is missing: everything here has a source."
            },
            {
                Conditions,
                "C01,",
                "canada-list",
                "another-list",
                "canada_source is 'another-list': there is no such source."
            },
            {
                Conditions,
                "C01,",
                "absolute",
                "always",
                "acog is 'always': it must be absolute, relative, none."
            },
            {
                Conditions,
                "C01,",
                ",pregnancy,",
                ",sometimes,",
                "held_when is 'sometimes': it must be pregnancy, any."
            },
            {
                Conditions,
                "C03,",
                ",any,",
                ",pregnancy,",
                "held_when is 'pregnancy' and after_birth is not 'none': the birth ends it, so that can never be met."
            },
            {
                Conditions,
                "C12,",
                ",2,2,",
                ",3,2,",
                "babies_from 3 is more than babies_to 2: no pregnancy can ever meet that."
            },
            {
                Conditions,
                "C36,",
                ",none,,acog",
                ",none,26w0d,acog",
                "acog is 'none' and acog_from is 26w 0d: that can never be met."
            },
            {
                Conditions,
                "C05,",
                "pre-eclampsia",
                "back-pain",
                "the code 'back-pain' is already a factor's."
            },
            {
                "factors.csv",
                "showing",
                ",pregnancy,",
                ",,",
                "held_when is '': it must be pregnancy, any."
            },
            {
                "sources.csv",
                "M13",
                ",seen,",
                ",heard,",
                "verification is 'heard': it must be seen, from-memory, common-practice, computed."
            },
            {
                "policies.csv",
                "guideline",
                "guideline,stricter",
                "guideline,strictest",
                "the default 'strictest' is not one of stricter|acog|canada."
            },
            {
                "policies.csv",
                "look-ahead-days",
                "1..120",
                "120..1",
                "allowed is '120..1': it must be words and ranges such as none|1..365."
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

        var errors = TheCatalogue.ErrorsOf(
            (file, text => TheCatalogue.ReplaceOnLine(text, line, from, to))
        );

        Assert.Contains($"{file} line {line}: {error}", errors);
    }
}
