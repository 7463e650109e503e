using PackPlanner.Screens;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

public class FrameTests
{
    public static TheoryData<int, int> Sizes => new()
    {
        { 60, 18 }, { 79, 19 }, { 80, 22 }, { 80, 23 }, { 80, 24 }, { 100, 30 }, { 120, 36 }, { 200, 60 },
    };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_step_shows_question_answer_next_and_keys_at_every_size(int width, int height)
    {
        using Bench bench = new();
        bench.OpenLot();
        foreach (IStep step in bench.Desk.Steps)
        {
            bench.Desk.GoTo(bench.Desk.Steps.ToList().IndexOf(step));

            string text = bench.Text(width, height);

            string[] lines = text.TrimEnd('\n').Split('\n');
            Assert.Equal(height, bench.Desk.Draw(width, height).Height);
            Assert.StartsWith(" Q ", lines[2]);
            Assert.StartsWith(" A ", lines[3]);
            Assert.Contains(lines, line => line.StartsWith(" Next", StringComparison.Ordinal));
            Assert.Contains(" ? keys", text);
            Assert.Contains("q leave", text);
            Assert.Contains($"[{bench.Desk.At + 1} {step.Name}]", lines[1]);
        }
    }

    [Fact]
    public void Below_the_least_size_one_line_says_so_and_the_answer_is_still_there()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");

        string text = bench.Text(40, 8);

        Assert.StartsWith("60 x 18 needed", text);
        Assert.Contains("use", text);
        Assert.Contains("hold", text);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(5, 2)]
    [InlineData(59, 17)]
    public void A_tiny_terminal_is_no_fault(int width, int height)
    {
        using Bench bench = new();
        bench.OpenLot();
        for (int step = 0; step < 8; step++)
        {
            bench.Desk.GoTo(step);

            Assert.NotEmpty(bench.Text(width, height));
        }
    }

    [Fact]
    public void Ascii_leaves_nothing_beyond_it_on_any_step_or_overlay()
    {
        using Bench bench = new(new Look(Ascii: true));
        bench.OpenLot();
        for (int step = 0; step < 8; step++)
        {
            foreach (string overlay in new[] { "Esc", "?", ":", "!", "=" })
            {
                bench.Desk.GoTo(step);
                bench.Press(overlay);

                Assert.True(System.Text.Ascii.IsValid(bench.Text()), bench.Text());
                Assert.True(System.Text.Ascii.IsValid(bench.Text(120, 36)), bench.Text(120, 36));
            }
        }
    }

    [Fact]
    public void The_progress_row_goes_first_then_the_second_answer_line_then_evidence()
    {
        PackPlanner.Screens.Frame.FrameRows full = PackPlanner.Screens.Frame.FrameRows.Of(24);
        PackPlanner.Screens.Frame.FrameRows less = PackPlanner.Screens.Frame.FrameRows.Of(23);
        PackPlanner.Screens.Frame.FrameRows least = PackPlanner.Screens.Frame.FrameRows.Of(22);
        PackPlanner.Screens.Frame.FrameRows small = PackPlanner.Screens.Frame.FrameRows.Of(18);

        Assert.Equal((12, 2, true), (full.BodyHeight, full.AnswerRows, full.Progress is not null));
        Assert.Equal((12, 2, false), (less.BodyHeight, less.AnswerRows, less.Progress is not null));
        Assert.Equal((12, 1, false), (least.BodyHeight, least.AnswerRows, least.Progress is not null));
        Assert.Equal((8, 1), (small.BodyHeight, small.AnswerRows));
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(80, 22)]
    public void What_is_too_long_for_its_row_goes_on_in_the_next_so_that_the_way_out_is_read(int width, int height)
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Desk.Says = "NOT SAVED: another program has changed this job since it was read here. Open it again to go on from there, or keep yours by a copy.";

        string text = bench.Text(width, height);

        Assert.Contains("NOT SAVED: another program", text);
        Assert.Contains("keep yours by a copy.", text);
        bench.Press("Down");
        Assert.Contains(" ? keys", bench.Text(width, height));
    }

    // One scene gives a pack, the other a log; what would be boasted without it stands in the one row.
    [Theory]
    [InlineData("trike", 2, "Within 0.000 Ah, 0.66 with tester's noise; 18 spare.")]
    [InlineData("trike", 4, "117 cells, 13 groups.")]
    [InlineData("trike", 5, " A; ends at 39.0 V.")]
    [InlineData("tractor", 5, " A; group 11 ends it.")]
    [InlineData("tractor", 6, "Ah; 4 more.")]
    public void An_answer_of_one_row_says_what_must_not_be_lost(string scene, int step, string expected)
    {
        using Bench bench = new();
        bench.Desk.Store.Demo(scene);
        bench.Desk.GoTo(step);
        bench.Text(60, 18);

        string answer = bench.Text(60, 18).Split('\n')[3].TrimEnd();

        Assert.EndsWith(expected, answer);
        Assert.DoesNotContain("…", answer);
    }

    [Fact]
    public void A_resize_keeps_row_and_cursor()
    {
        using Bench bench = new();
        bench.OpenLot(cells: 60);
        bench.Press("2");
        bench.Text();
        for (int i = 0; i < 30; i++)
            bench.Press("Down");
        bench.Text();
        string row = bench.Desk.Step.Place;

        foreach ((int width, int height) in new[] { (60, 18), (200, 60), (10, 3), (120, 36), (80, 24) })
            bench.Text(width, height);

        Assert.Equal(row, bench.Desk.Step.Place);
        Assert.Contains($">   {row}", bench.Text());
    }
}
