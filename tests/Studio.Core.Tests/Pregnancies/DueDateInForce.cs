using Studio.Core.Pregnancies;

namespace Studio.Core.Tests.Pregnancies;

/// <summary>
/// Which evidence counts, and what is said about it. Thresholds and precedence: ACOG/AIUM/SMFM, Committee Opinion
/// 700 (2017), seen; that a stated date goes before period and scan is a rule of this program.
/// </summary>
public class DueDateInForce
{
    [Theory]
    [InlineData(59, 5, "kept", "8w 3d: five days is the threshold, not more")]
    [InlineData(59, 6, "moved", "8w 3d: six days is more than five")]
    [InlineData(62, 6, "moved", "8w 6d, the last day of the 5-day band")]
    [InlineData(63, 6, "kept", "9w 0d, the first day of the 7-day band")]
    [InlineData(63, 8, "moved", "9w 0d: eight is more than seven")]
    [InlineData(98, 7, "kept", "14w 0d: the method changes, the threshold does not")]
    [InlineData(111, 8, "moved", "15w 6d, the last day of the 7-day band")]
    [InlineData(112, 8, "kept", "16w 0d, the first day of the 10-day band")]
    [InlineData(112, 10, "kept", "16w 0d: ten is the threshold")]
    [InlineData(153, 11, "moved", "21w 6d, the last day of the 10-day band")]
    [InlineData(154, 11, "kept", "22w 0d, the first day of the 14-day band")]
    [InlineData(195, 15, "moved", "27w 6d, the last day of the 14-day band")]
    [InlineData(196, 15, "kept", "28w 0d, the first day of the 21-day band")]
    [InlineData(196, 21, "kept", "28w 0d: twenty-one is the threshold")]
    [InlineData(196, 22, "moved", "28w 0d: twenty-two is more")]
    [InlineData(308, 21, "kept", "44w 0d, the last day a scan is accepted")]
    [InlineData(308, 22, "moved", "44w 0d: the last band has no end")]
    public void Is_moved_by_a_scan_only_beyond_the_threshold(
        int byPeriod,
        int younger,
        string outcome,
        string because
    )
    {
        var period = new LocalDate(2025, 1, 6);
        var evidence = new DatingEvidence
        {
            LastPeriod = new(period),
            Scans = [new(period.PlusDays(byPeriod), new(byPeriod - younger))],
        };
        var due = evidence.Reckoned();
        Assert.True(
            (outcome == "moved" ? DatingBasis.Scan : DatingBasis.LastPeriod) == due.Basis,
            because
        );
        Assert.True(period.PlusDays(280 + (outcome == "moved" ? younger : 0)) == due.On, because);
    }

    [Fact]
    public void Says_why_the_period_date_was_kept() =>
        Assert.Equal(
            "Kept the period date: the scan differed by 4 days, the threshold at 8w 2d is 5 days.",
            Given.Period("2025-01-06").AndScan("2025-03-05", "7w5d").Reckoned().Explanation
        );

    [Fact]
    public void Says_why_it_moved_to_the_scan() =>
        Assert.Equal(
            "Moved to the scan's date: the scan differed from the period date by 6 days, more than the threshold of 5 days at 8w 0d.",
            Given.Period("2025-01-06").AndScan("2025-03-03", "7w1d").Reckoned().Explanation
        );

    [Fact]
    public void Says_one_day_and_not_one_days() =>
        Assert.Contains(
            "differed by 1 day,",
            Given.Period("2025-01-06").AndScan("2025-03-03", "8w1d").Reckoned().Explanation,
            StringComparison.Ordinal
        );

    [Fact]
    public void Says_what_a_scan_alone_rests_on() =>
        Assert.Equal(
            "Taken from the scan of 3 March 2025, which measured 8w 1d.",
            Given.Scanned("2025-03-03", "8w1d").Reckoned().Explanation
        );

    [Fact]
    public void Warns_when_a_scan_alone_is_of_the_third_trimester()
    {
        Assert.DoesNotContain(
            "Caution",
            Given.Scanned("2025-07-28", "27w6d").Reckoned().Explanation,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Caution",
            Given.Scanned("2025-07-28", "28w0d").Reckoned().Explanation,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("2025-07-20", "25w5d", false, "27w 6d by the period")]
    [InlineData("2025-07-21", "24w6d", true, "28w 0d by the period")]
    public void Warns_when_a_scan_of_the_third_trimester_moves_the_date(
        string on,
        string measured,
        bool warns,
        string because
    )
    {
        var due = Given.Period("2025-01-06").AndScan(on, measured).Reckoned();
        Assert.True(due.Basis == DatingBasis.Scan, because);
        Assert.True(
            warns == due.Explanation.Contains("Caution", StringComparison.Ordinal),
            because
        );
    }

    [Fact]
    public void Says_that_later_scans_do_not_count() =>
        Assert.EndsWith(
            "Later scans do not move the date.",
            Given
                .Period("2025-01-06")
                .AndScan("2025-05-26", "17w0d")
                .AndScan("2025-03-03", "8w1d")
                .Reckoned()
                .Explanation,
            StringComparison.Ordinal
        );

    [Fact]
    public void Does_not_count_the_same_scan_twice()
    {
        var once = Given.Period("2025-01-06").AndScan("2025-03-03", "8w1d");
        Assert.Equal(once.Reckoned(), once.AndScan("2025-03-03", "8w1d").Reckoned());
    }

    [Fact]
    public void Follows_a_transfer_and_says_what_differs_from_it() =>
        Assert.Equal(
            new DueDate(
                Given.Day("2025-10-29"),
                DatingBasis.Transfer,
                "Counted from the embryo transfer: 261 days after the transfer of an embryo of 5 days. A date from a transfer is never moved."
                    + " Not used: the stated due date gives 1 November 2025, 3 days later."
                    + " Not used: the scan of 1 April 2025 gives 8 November 2025, 10 days later."
            ),
            Given
                .Transfer("2025-02-10", 5)
                .AndScan("2025-04-01", "8w3d")
                .AndStated("2025-11-01")
                .Reckoned()
        );

    [Fact]
    public void Is_silent_about_what_agrees_with_the_transfer() =>
        Assert.Equal(
            Given.Transfer("2025-02-10", 5).Reckoned(),
            Given
                .Transfer("2025-02-10", 5)
                .AndScan("2025-04-01", "9w6d")
                .AndStated("2025-10-29")
                .Reckoned()
        );

    [Theory]
    [InlineData("2025-10-13", "Reckoned from the period it is the same.")]
    [InlineData(
        "2025-10-10",
        "Reckoned from the period it would be 13 October 2025, 3 days later."
    )]
    [InlineData(
        "2025-10-20",
        "Reckoned from the period it would be 13 October 2025, 7 days earlier."
    )]
    public void Keeps_a_stated_date_and_compares_it(string stated, string compared) =>
        Assert.Equal(
            new DueDate(
                Given.Day(stated),
                DatingBasis.Stated,
                $"Kept the due date a clinician stated. {compared}"
            ),
            Given.Period("2025-01-06").AndStated(stated).Reckoned()
        );

    [Fact]
    public void Compares_a_stated_date_with_the_scan_where_the_scan_would_have_counted() =>
        Assert.Equal(
            "Kept the due date a clinician stated. Reckoned from the scan it would be 19 October 2025, 6 days later.",
            Given
                .Period("2025-01-06")
                .AndScan("2025-03-03", "7w1d")
                .AndStated("2025-10-13")
                .Reckoned()
                .Explanation
        );

    [Fact]
    public void Takes_a_stated_date_alone() =>
        Assert.Equal(
            new DueDate(
                Given.Day("2025-10-13"),
                DatingBasis.Stated,
                "Kept the due date a clinician stated."
            ),
            Given.Stated("2025-10-13").Reckoned()
        );

    [Theory]
    [InlineData(20, "2025-10-05", "8 days earlier")]
    [InlineData(29, "2025-10-14", "1 day later")]
    [InlineData(45, "2025-10-30", "17 days later")]
    public void Follows_a_given_cycle_and_labels_it(int cycle, string due, string says)
    {
        var reckoned = Given.Period("2025-01-06", cycle).Reckoned();
        Assert.Equal(Given.Day(due), reckoned.On);
        Assert.Contains(
            $"{says} for a cycle of {cycle} days",
            reckoned.Explanation,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Says_nothing_of_a_cycle_of_28_days() =>
        Assert.Equal(
            Given.Period("2025-01-06").Reckoned(),
            Given.Period("2025-01-06", 28).Reckoned()
        );

    [Fact]
    public void Compares_the_scan_with_the_period_date_as_the_cycle_sets_it() =>
        Assert.StartsWith(
            "Kept the period date: the scan differed by 0 days, the threshold at 8w 0d is 5 days. The period date is set 7 days later",
            Given.Period("2025-01-06", 35).AndScan("2025-03-10", "8w0d").Reckoned().Explanation,
            StringComparison.Ordinal
        );
}
