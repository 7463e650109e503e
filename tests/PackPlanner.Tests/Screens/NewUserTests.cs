using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sharing;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.GroupsScreen;

namespace PackPlanner.Tests.Screens;

/// <summary>What somebody new to the program stumbled over.</summary>
public sealed class NewUserTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_reading_changed_by_hand_tells_who_changed_it_and_what_the_file_says()
    {
        bench.OpenLot();
        bench.Press("2");
        bench.Text(120, 36);
        bench.Press([.. Enumerable.Repeat("Left", 20)]);
        bench.Press("s", "Home", "Down", "Down", "Right", "Right");
        Assert.Equal("4.500 Ah of T003", bench.Desk.Step.WhereFrom()!.Title);

        bench.Press("Enter", "Ctrl+U");
        bench.Type("4.2");
        bench.Press("Enter");

        Assert.Equal("4.2000 Ah, you, 2 Nov; read 4.5 in cells.csv line 4, slot 4", bench.Desk.Step.WhereFrom()!.Lines[0].Says);
        bench.Press([.. Enumerable.Repeat("Left", 20)]);
        bench.Press("Enter");
        Assert.Contains("by hand: Ah", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("Esc", "u");
        Assert.Contains("change Ah of T003", bench.Desk.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_that_is_locked_cannot_be_exchanged_away()
    {
        bench.OpenLot();
        bench.Press("3");
        bench.Text();
        string locked = ((PackPlanner.Core.Grouping.GroupingOutcome.Matched)bench.Desk.Answers.Groups!).Pack.Groups[0].Cells[0].Label;
        bench.Desk.Do(JobChanges.Lock(locked, 1));
        bench.Text();

        bench.Press("m");
        Assert.Contains($"{locked,-12}", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("Up", "Up", "Enter");
        Assert.Contains("locked; l frees it", bench.Desk.Says, StringComparison.Ordinal);

        bench.Press("Esc", "Down", "m", "Enter");
        bench.Type(locked);
        Assert.Contains("locked; l frees it", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("Enter");
        Assert.Contains("locked; l frees it", bench.Desk.Says, StringComparison.Ordinal);
        Assert.Null(bench.Desk.Job!.Grouping);
    }

    // By hand: 30 mΩ each, the middle is B. A meets B alone: 0.01 V / 60 mΩ = 0.17 A. C meets both (15 mΩ, 3.605 V): 0.145 V / 45 mΩ = 3.2 A, over its limit.
    [Fact]
    public void Cells_that_may_be_joined_are_told_the_current_of_that_order_without_the_one_that_may_not()
    {
        JoinCell[] cells = [new("A", 3.600, 30, 4, false), new("B", 3.610, 30, 4, false), new("C", 3.750, 30, 4, false)];
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(1, cells, 0, null, null, null));

        string text = string.Join('\n', Shown(JoinOverlay.Of(plan, new Look())));

        Assert.Contains("the first of the order", text, StringComparison.Ordinal);
        Assert.Contains("0.2 A on joining those above", text, StringComparison.Ordinal);
        Assert.Contains("3.2 A on joining, limit 2.0 A: bring it to", text, StringComparison.Ordinal);
        Assert.Contains("2 of them yes; not yet: C", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("resting V<3.602", 5)]
    [InlineData("restingV<3.602", 5)]
    [InlineData("resting V < 3.602", 5)]
    [InlineData("Resting v<3.602 Ah > 4.45", 1)]
    [InlineData("% of rated<70", 1)]
    public void A_column_is_named_in_a_condition_as_it_is_headed(string condition, int expected)
    {
        // Of 12 cells T001 has 3.999 Ah, T002 3.091 (62 % of 5 Ah); 3.600 and 3.601 V have T005, T010, and T001, T006, T011, of which T006 alone has over 4.45 Ah.
        bench.OpenLot();
        bench.Press("2", "f");
        bench.Type(condition);
        bench.Press("Enter");

        Assert.StartsWith($"{expected} of 12 shown", bench.Desk.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_goes_to_the_next_line_of_a_short_list_that_begins_with_it()
    {
        bench.OpenLot();
        bench.Desk.GoTo(0);
        bench.Press("Home", "Enter", "L", "N", "Enter");

        Assert.Equal("NMC", bench.Desk.Job!.Givens.Chemistry!.Name);
        bench.Press("Enter", "l", "Enter");
        Assert.StartsWith("L", bench.Desk.Job!.Givens.Chemistry!.Name, StringComparison.Ordinal);
        bench.Press("Enter", "#");
        Assert.Contains("no use here", bench.Desk.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_caution_that_has_no_room_in_full_what_not_to_do_is_there_whole()
    {
        bench.Desk.Store.Demo("trike");
        bench.Text();
        bench.Press("!");

        string shown = System.Text.RegularExpressions.Regex.Replace(bench.Text(60, 18), @"\s+", " ");

        PackPlanner.Core.Cautions.Caution gravest = bench.Desk.AllCautions[0];
        Assert.Contains(gravest.Do, shown, StringComparison.Ordinal);
        Assert.Contains(gravest.Entry.DoNot, shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_screen_without_a_table_writes_none()
    {
        bench.OpenLot();
        bench.Press("7", "w", "Enter");

        Assert.Contains("no table yet", bench.Desk.Says, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(bench.JobsFolder, "test-lot-log.csv")));
    }

    [Fact]
    public void A_search_begins_with_an_empty_field()
    {
        bench.OpenLot();
        bench.Press("2", "/");
        bench.Type("T005");
        bench.Press("Enter", "/");
        bench.Type("T007");
        bench.Press("Enter");

        Assert.Null(bench.Desk.Says);
        Assert.Contains("T007", bench.Desk.Step.WhereFrom()!.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_there_is_no_caution_no_key_is_offered_for_one()
    {
        bench.Press("!");

        string[] lines = bench.Text().Split('\n');

        Assert.Contains(lines, line => line.Contains("no cautions", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.Contains("Space", StringComparison.Ordinal) || line.Contains("arrows choose", StringComparison.Ordinal));
        bench.OpenLot(series: 16);
        bench.Press("!");
        Assert.Contains("Space read", bench.Text(), StringComparison.Ordinal);
    }

    // By hand: 12 cells of 4.40 to 4.50 Ah but for T001 (3.999), far from the median of its lot.
    [Fact]
    public void A_cell_unlike_its_lot_is_told_how_far_it_is_and_how_far_it_might_be()
    {
        bench.OpenLot();
        bench.Press("2", "/");
        bench.Type("T001");
        bench.Press("Enter");
        bench.Text(120, 36);

        string all = string.Join('\n', bench.Desk.Step.WhereFrom()!.Lines.Select(line => $"{line.Word} {line.Says}"));

        double[] ah = [.. bench.Desk.Job!.Rows.Select(row => row.CapacityAh!.Value).Order()];
        double median = (ah[5] + ah[6]) / 2;
        Assert.Contains(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{median - 3.999:0.000} Ah from the median {median:0.000}"), all, StringComparison.Ordinal);
        Assert.Contains("3.5 standard deviations", all, StringComparison.Ordinal);
    }

    [Fact]
    public void Tests_that_disagree_are_told_by_how_much()
    {
        bench.OpenLot();
        bench.Desk.Do(JobChanges.AddRow(bench.Desk.Job!.Rows[2] with { CapacityAh = bench.Desk.Job!.Rows[2].CapacityAh * 0.8, File = null, Line = null, Slot = null }));
        bench.Press("2", "/");
        bench.Type("T003");
        bench.Press("Enter");
        bench.Text(120, 36);

        // 1 and 0.8 differ by 0.2 of their mean 0.9, 22.2 %, or by 20 % of the larger.
        Assert.Contains(bench.Desk.Step.WhereFrom()!.Lines, line => line.Says.Contains("its tests differ by 22.2 %", StringComparison.Ordinal));
    }

    [Fact]
    public void With_a_decimal_comma_no_line_of_energy_keeps_a_point()
    {
        bench.Desk.Store.Demo("trike");
        bench.Desk.Look = bench.Desk.Look with { DecimalComma = true };
        bench.Press("6");

        string text = bench.Text(120, 36);

        Assert.Contains("fuse to start from", text, StringComparison.Ordinal);
        // The cell's own name in the first line is not a figure.
        Assert.DoesNotMatch(@"\d\.\d", text[text.IndexOf('\n', StringComparison.Ordinal)..]);
    }

    private static string[] Shown(PackPlanner.Screens.Overlays.TextOverlay overlay)
    {
        Page page = new(100, 20, new Look());
        overlay.Paint(page.Whole);
        return page.ToText().Split('\n');
    }

    [Fact]
    public void A_choice_of_another_chemistry_brings_its_own_or_is_not_taken()
    {
        bench.Desk.Store.Demo("scooter");
        bench.Press("4");
        bench.Text();
        Assert.Equal("NMC", bench.Desk.Job!.Givens.Chemistry!.Name);
        Assert.Null(bench.Desk.Job.Givens.RatedAh);

        // The first is of the job's own chemistry: it brings what the job was not told, 5 Ah and 3.0 V empty, where NMC alone would say 2.75 V.
        bench.Press("Enter", "Enter");
        Assert.Equal((5.0, 3.0), (bench.Desk.Job!.Givens.RatedAh, bench.Desk.Job.Givens.EmptyV));
        bench.Press("u");
        Assert.Null(bench.Desk.Job!.Givens.RatedAh);

        bench.Press("Enter", "End");
        Assert.Contains("LFP", bench.Text(120, 36).Split('\n').Single(line => line.StartsWith(" >", StringComparison.Ordinal)), StringComparison.Ordinal);
        bench.Press("Enter");

        Assert.Equal(("LFP", 3.65), (bench.Desk.Job!.Givens.Chemistry!.Name, bench.Desk.Job.Givens.FullV));
        Assert.Contains("It breaks ", bench.Desk.Says, StringComparison.Ordinal);
        bench.Press("u");
        Assert.Equal("NMC", bench.Desk.Job!.Givens.Chemistry!.Name);

        bench.Desk.Do(JobChanges.AddRow(new PackPlanner.Core.Cells.CellRow { Label = "X", CapacityAh = 4.5 }));
        bench.Press("Enter", "End", "Enter");
        Assert.Contains("Not taken: it is of LFP", bench.Desk.Says, StringComparison.Ordinal);
        Assert.Equal("NMC", bench.Desk.Job!.Givens.Chemistry!.Name);
    }
}
