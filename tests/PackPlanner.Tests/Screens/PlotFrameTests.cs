using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Plots;

namespace PackPlanner.Tests.Screens;

/// <summary>Figures at the axis of a plot: whole, or not there.</summary>
public class PlotFrameTests
{
    [Theory]
    [InlineData(new[] { 0.0, 0.0 }, -1, 1)]
    [InlineData(new[] { 3.3, 3.3 }, 3.135, 3.465)]
    [InlineData(new[] { 0.0, 100.0 }, -3, 103)]
    public void A_line_at_nought_has_a_scale_of_its_own(double[] values, double low, double high)
    {
        (double Low, double High) range = PlotFrame.Range(values);

        Assert.Equal(low, range.Low, tolerance: 1e-9);
        Assert.Equal(high, range.High, tolerance: 1e-9);
    }

    [Theory]
    [InlineData(-0.06, 0.06, "-.04")]
    [InlineData(0, 0.06, "0.06")]
    [InlineData(-15.1, -11.9, "-12")]
    public void No_figure_at_the_axis_is_cut(double low, double high, string one)
    {
        Page page = new(60, 16, new Look());
        new PlotFrame(page.Whole, 0, 1, low, high).PaintAxes("h");

        string shown = page.ToText();
        Assert.DoesNotContain("…", shown, StringComparison.Ordinal);
        Assert.Contains(one, shown, StringComparison.Ordinal);
    }
}
