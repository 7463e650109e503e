using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Plots;

namespace PackPlanner.Tests.Screens;

public class DrawingTests
{
    [Theory]
    [InlineData("abc", 3)]
    [InlineData("电池", 4)]
    [InlineData("mΩ ±", 4)]
    [InlineData("e\u0301", 1)]
    public void Text_is_measured_in_terminal_columns(string text, int columns) => Assert.Equal(columns, TextWidth.Of(text));

    [Fact]
    public void Long_labels_are_cut_in_the_middle_so_that_both_ends_stay() =>
        Assert.Equal("HALL-…-0113", TextWidth.CutMiddle("HALL-NORTH-SHELF-7-0113", 11));

    [Theory]
    [InlineData("T001 T002 T003 T004", 12, "T001 T002...|")]
    [InlineData("abcdef", 2, "..|")]
    public void In_ASCII_what_was_cut_stays_as_wide_as_it_was_cut_to(string text, int width, string shown)
    {
        Page page = new(20, 1, new Look(Ascii: true));

        int end = page.Whole.Write(0, 0, TextWidth.Cut(text, width));
        page.Whole.Write(end, 0, "|");

        Assert.Equal(shown + "\n", page.ToText());
    }

    [Fact]
    public void A_strip_has_a_row_for_what_stands_out_the_farthest_first_and_one_row_for_all_others()
    {
        Page page = new(60, 6, new Look());
        double[] apart = [0.5, -0.4, 12, 0.1, double.NaN, -40, 0];

        MedianStrip.Paint(page.Whole, apart, "mV", always: [4]);

        string[] lines = page.ToText().Split('\n');
        // 39 columns for the strip: 19 dots to a side, 40 mV over them are 5 mV a dot after rounding up to 1, 2 or 5.
        Assert.Matches(@"^   5 mV a dot +less +m +more$", lines[0]);
        Assert.Matches(@"^ +6 +-40 mV +\.+#-------m\.+$", lines[1]);
        Assert.Matches(@"^ +3 +\+12 mV +\.+m-#\.+$", lines[2]);
        Assert.Matches(@"^ +4 +0 mV +\.+m\.+$", lines[3]);
        Assert.Contains("3 others within 0.5 mV; 1 without a reading", lines[4], StringComparison.Ordinal);
    }

    [Fact]
    public void A_strip_of_96_that_are_alike_is_one_row()
    {
        Page page = new(60, 5, new Look(DecimalComma: true));

        MedianStrip.Paint(page.Whole, [.. Enumerable.Range(0, 96).Select(i => 0.1 * (i % 11 - 5))], "mV", always: []);

        Assert.Contains("all 96 within 0,5 mV", page.ToText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Axes_have_the_decimal_mark_that_was_chosen()
    {
        Page low = new(60, 4, new Look(DecimalComma: true));
        Page high = new(60, 8, new Look(DecimalComma: true));

        ScatterPlot.Paint(low.Whole, [(1.1, 1.1, "x"), (1.9, 1.9, "x")], "Ah");
        ScatterPlot.Paint(high.Whole, [(1.1, 1.1, "x"), (1.9, 1.9, "x")], "Ah");

        // Two rows have room for one mark, 1.5: it is not written as 2. More rows have two marks or more, or they would tell no scale.
        Assert.Contains(" 1,5 ┤", low.ToText(), StringComparison.Ordinal);
        Assert.True(high.ToText().Count(sign => sign == '┤') > 1, high.ToText());
        Assert.DoesNotContain('.', low.ToText() + high.ToText());
    }

    [Fact]
    public void Wide_signs_never_stick_out_of_their_area()
    {
        Page page = new(5, 1, new Look());

        page.Whole.Write(0, 0, "电池电池");

        Assert.Equal("电池", page.ToText().TrimEnd('\n'));
    }

    [Fact]
    public void Words_wrap_at_blanks_and_end_in_an_ellipsis_when_there_are_too_many() =>
        Assert.Equal(["one two", "three …"], TextWidth.Wrap("one two three four", 7, 2).Select(line => line.TrimEnd()));

    [Theory]
    [InlineData(0, 80, 5, new[] { 0.0, 20, 40, 60, 80 })]
    [InlineData(2.4, 3.4, 6, new[] { 2.4, 2.6, 2.8, 3.0, 3.2, 3.4 })]
    [InlineData(3.21, 3.38, 1, new[] { 3.3 })]
    [InlineData(-3, 3, 4, new[] { -2.0, 0, 2 })]
    public void Axis_marks_stand_at_steps_of_one_two_or_five(double low, double high, int most, double[] expected)
    {
        IReadOnlyList<double> ticks = Ticks.Between(low, high, most);

        Assert.Equal(expected.Length, ticks.Count);
        foreach ((double tick, double wanted) in ticks.Zip(expected))
            Assert.Equal(wanted, tick, tolerance: 1e-9);
    }

    [Fact]
    public void Unknown_is_a_dash_and_never_a_nought()
    {
        Look look = new();

        Assert.Equal("-", look.Figure(null, 3));
        Assert.Equal("-", look.Figure(double.NaN, 3));
        Assert.Equal("0.000", look.Figure(-0.0001, 3));
    }

    [Fact]
    public void The_comma_and_the_pound_change_what_is_shown_and_nothing_else()
    {
        Look look = new(DecimalComma: true, UsUnits: true);

        Assert.Equal("4,12", look.Figure(4.123, 2));
        // 1 lb is 0.45359237 kg exactly, 1 in is 25.4 mm exactly, 1 mile is 1.609344 km exactly (by definition).
        Assert.Equal("2,0 lb", look.Mass(0.90718474));
        Assert.Equal("1,00 in", look.Length(25.4));
        Assert.Equal("10 miles", look.Distance(16.09344));
        Assert.Equal("46 °F", look.Temperature(8));
    }

    [Fact]
    public void A_curve_is_joined_where_it_is_steep_and_named_at_its_end()
    {
        Page page = new(60, 12, new Look());

        BrailleCurves.Paint(page.Whole, [new BrailleCurves.Curve("m", [0, 10, 10.1, 20], [4, 4, 3, 3])], "Ah");

        string text = page.ToText();
        Assert.Contains("m", text);
        Assert.Contains("Ah", text);
        string[] lines = text.Split('\n');
        Assert.All(lines[1..9], line => Assert.Contains(line, sign => sign is > '\u2800' and <= '\u28FF'));
    }

    [Fact]
    public void Ascii_curves_use_only_dots_and_colons()
    {
        Page page = new(60, 12, new Look(Ascii: true));

        BrailleCurves.Paint(page.Whole, [new BrailleCurves.Curve("m", [0, 20], [4, 3])], "Ah");

        Assert.True(System.Text.Ascii.IsValid(page.ToText()));
        Assert.Contains('.', page.ToText());
    }

    [Theory]
    [InlineData("T113: 8.79 A on joining, 0.310 V apart; 2.3 A is the limit.", "T113: 8,79 A on joining, 0,310 V apart; 2,3 A is the limit.")]
    [InlineData("within 0.1 V or 0.5 %, half its Ah (0.5C), ± 0.21 V, -1.5 K", "within 0,1 V or 0,5 %, half its Ah (0,5C), ± 0,21 V, -1,5 K")]
    [InlineData("5.2.2 of 2.11.2026, ride 2.5.csv, cells.1.csv, v1.2, UN 38.3", "5.2.2 of 2.11.2026, ride 2.5.csv, cells.1.csv, v1.2, UN 38.3")]
    public void Sentences_made_elsewhere_take_the_decimal_comma_in_their_figures_only(string words, string expected)
    {
        Assert.Equal(expected, new Look(DecimalComma: true).Prose(words));
        Assert.Equal(words, new Look().Prose(words));
    }

    [Fact]
    public void Counts_are_full_where_most_fall()
    {
        Assert.Equal("▂ █", CountBars.Of([0.1, 2.5, 2.6, 2.7, 2.8, 2.9, 2.6, 2.7], 0, 3, 3, out int most));
        Assert.Equal(7, most);
    }
}
