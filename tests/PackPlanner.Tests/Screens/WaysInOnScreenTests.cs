using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Screens;

/// <summary>A way in that is too small is told where it is seen, not only far down a list.</summary>
public class WaysInOnScreenTests
{
    [Fact]
    public void Where_not_even_one_cell_gets_in_the_answer_the_next_step_and_a_caution_say_so()
    {
        using Bench bench = new();
        bench.TypeSpace("120 x 70 x 80");
        Open(bench, "0 0 15 15");

        string text = bench.Text();
        Assert.Contains("A  No cell gets in: ", text);
        Assert.Matches("Next  Enter on the opening: a larger way in", text);
        Caution caution = Assert.Single(bench.Desk.AllCautions, caution => caution.Code == "caution-34");
        Assert.Equal(SignalWord.Caution, caution.Signal);
        Assert.StartsWith("15 x 15 mm", caution.Saw);
        Assert.Contains("a single cell does not pass", caution.Saw);
    }

    // 22 mm let a cell of 21 through, not a block of fifteen.
    [Fact]
    public void Where_cells_get_in_and_the_finished_pack_does_not_that_is_told_too()
    {
        using Bench bench = new();
        bench.TypeSpace("120 x 70 x 80");
        Open(bench, "0 0 22 22");
        bench.Set("series", new JobValue.Number(5));

        string text = bench.Text();
        Assert.Contains("Only single cells get in.", bench.Desk.Step.Picture.Answer);
        Assert.True(text.Contains("one by one, the furthest first", StringComparison.Ordinal), text);
        Caution caution = Assert.Single(bench.Desk.AllCautions, caution => caution.Code == "caution-34");
        Assert.Equal(SignalWord.Notice, caution.Signal);

        // A second way in that takes the whole pack settles it.
        Open(bench, "0 0 120 70");
        bench.Text();
        Assert.DoesNotContain(bench.Desk.AllCautions, caution => caution.Code == "caution-34");
    }

    [Fact]
    public void A_sheet_of_a_space_without_series_or_that_is_still_searched_is_not_refused_as_a_pack_that_does_not_fit()
    {
        using Bench bench = new();
        bench.TypeSpace("120 x 70 x 80");
        bench.Press("8");

        Assert.Matches("place +not yet: series and parallel are not said", bench.Text());
        bench.Set("series", new JobValue.Number(5));
        Assert.Matches(@"\[ \] place", bench.Text());
        bench.Set("series", new JobValue.Number(400));
        Assert.Matches("place +not yet: the pack does not fit its cavity", bench.Text());
    }

    private static void Open(Bench bench, string rectangle)
    {
        bench.Press("4", "a", "Down", "Down", "Down", "Down", "Down", "Enter", "Enter");
        bench.Type(rectangle);
        bench.Press("Enter");
        bench.Text();
    }
}
