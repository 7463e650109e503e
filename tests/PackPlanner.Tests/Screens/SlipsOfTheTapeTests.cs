namespace PackPlanner.Tests.Screens;

/// <summary>Figures of a space that cannot be meant so are told as they are typed, in the words of the field that asked.</summary>
public class SlipsOfTheTapeTests
{
    [Fact]
    public void A_keep_out_wholly_outside_the_space_says_that_it_changes_nothing()
    {
        using Bench bench = new();
        bench.TypeSpace("120 x 70 x 80");
        KeepOut(bench, "400 400 0", "30 30 30");

        Assert.Contains("wholly outside the space", bench.Desk.Says);
        string text = bench.Text(120, 36);
        Assert.Contains("outside the space", text);
        Assert.DoesNotContain("# keep-out", text);

        KeepOut(bench, "0 0 0", "30 30 30");
        Assert.Null(bench.Desk.Says);
        Assert.Contains("# keep-out", bench.Text(120, 36));
    }

    [Fact]
    public void A_size_below_nothing_is_refused_in_the_words_of_the_field()
    {
        using Bench bench = new();
        bench.TypeSpace("120 x 70 x 80");
        KeepOut(bench, "0 0 0", "60 60 -40");

        Assert.Contains("-40 is no size", bench.Desk.Says);
        Assert.Contains("corner", bench.Desk.Says);
        Assert.DoesNotContain("x0,y0,z0", bench.Text());
    }

    private static void KeepOut(Bench bench, string corner, string size)
    {
        bench.Press("a", "Enter");
        bench.Press("Ctrl+U");
        bench.Press([.. Enumerable.Repeat("Backspace", 6)]);
        bench.Type(corner);
        bench.Press("Enter");
        bench.Type(size);
        bench.Press("Enter");
    }
}
