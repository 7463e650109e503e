using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Tests.Screens;

public class TablesTests
{
    private static readonly double?[] Ah = [4.1, 3.9, null, 4.1, 3.5];
    private static readonly string[] Verdicts = ["use", "hold", "hold", "use", "reject"];

    [Fact]
    public void Sorting_is_stable_and_rows_without_a_figure_come_last_either_way()
    {
        ListTable table = Table();

        table.Sort(1, descending: false);
        Assert.Equal(["C5", "C2", "C1", "C4", "C3"], Order(table));

        table.Sort(1, descending: true);
        Assert.Equal(["C1", "C4", "C2", "C5", "C3"], Order(table));
    }

    [Fact]
    public void The_cursor_stays_on_its_row_when_the_order_changes()
    {
        ListTable table = Table();
        table.Move("Down");

        table.Sort(1, descending: true);

        Assert.Equal("C2", table.Name);
    }

    [Theory]
    [InlineData("Ah<4.1", "C2 C5")]
    [InlineData("Ah<=4.1 verdict=use", "C1 C4")]
    [InlineData("verdict!=hold", "C1 C4 C5")]
    [InlineData("ah>3.9", "C1 C4")]
    [InlineData("Ah=4,1", "C1 C4")]
    [InlineData("c4", "C4")]
    [InlineData("", "C1 C2 C3 C4 C5")]
    public void A_condition_shows_the_rows_that_meet_all_its_parts(string condition, string expected)
    {
        ListTable table = Table();

        Assert.Null(table.Filter(condition));

        Assert.Equal(expected.Split(' '), Order(table));
    }

    [Theory]
    [InlineData("volts<3", "nearest")]
    [InlineData("Ah<", "lacks")]
    [InlineData("Ah<big", "column of figures")]
    [InlineData("verdict<use", "column of words")]
    public void A_condition_that_cannot_be_read_says_why_and_leaves_the_rows(string condition, string why)
    {
        ListTable table = Table();

        Assert.Contains(why, table.Filter(condition));

        Assert.Equal(5, table.Shown);
    }

    [Fact]
    public void Marks_belong_to_rows_not_to_places()
    {
        ListTable table = Table();
        table.Mark();
        table.Sort(1, descending: false);

        Assert.Equal(["C1"], table.Marks.InOrder);

        table.Filter("verdict=hold");
        table.MarkShown();
        Assert.Equal(["C1", "C2", "C3"], table.Marks.InOrder);
        table.MarkShown();
        Assert.Equal(["C1"], table.Marks.InOrder);
    }

    [Fact]
    public void Find_goes_round_and_says_when_there_is_none()
    {
        ListTable table = Table();

        Assert.True(table.Find("hold", fromHere: true));
        Assert.Equal("C2", table.Name);
        Assert.True(table.Find("hold"));
        Assert.Equal("C3", table.Name);
        Assert.True(table.Find("hold"));
        Assert.Equal("C2", table.Name);
        Assert.False(table.Find("nothing like it"));
        Assert.Equal("C2", table.Name);
    }

    [Fact]
    public void Drawing_asks_only_for_rows_in_view_however_many_there_are()
    {
        int asked = 0;
        ListTable table = new([new Column("label", row =>
        {
            asked++;
            return $"C{row}";
        })]);
        table.SetRows(10_000, row => $"C{row}");
        table.Move("End");
        asked = 0;

        Page page = new(80, 24, new Look());
        table.Paint(page.Whole);

        Assert.InRange(asked, 23, 60);
        Assert.Contains("C9999", page.ToText());
    }

    [Fact]
    public void Where_there_is_no_room_the_least_needed_column_goes_whole()
    {
        ListTable table = new(
        [
            new Column("label", row => "T001", Rank: 0),
            new Column("Ah", row => "4.123", row => 4.123, Rank: 1),
            new Column("a remark of some length", row => "words and words and words", Rank: 9),
        ]);
        table.SetRows(1, row => "T001");
        Page page = new(30, 4, new Look());

        table.Paint(page.Whole);

        Assert.Contains("4.123", page.ToText());
        Assert.DoesNotContain("remark", page.ToText());
    }

    [Fact]
    public void A_column_that_was_asked_for_takes_the_room_of_those_that_stand_there_by_themselves()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");
        string before = Heading(bench);
        Assert.DoesNotContain("model", before);
        Assert.Contains("resting V", before);

        bench.Press(["c", .. Enumerable.Repeat("Down", 13), "Enter"]);
        bench.Text();
        string list = bench.Text();
        bench.Press("Esc");

        Assert.Contains("model", Heading(bench));
        Assert.Contains("[x] model", list);
        Assert.Contains("Ah", Heading(bench));
        // Right goes past what has no room: what is drawn as chosen is always in view.
        for (int i = 0; i < 16; i++)
        {
            bench.Press("Right", "s");
            string chosen = bench.Desk.Says!.Split("sorted by ")[1].Split(',')[0];
            Assert.Contains(chosen, Heading(bench));
        }
    }

    private static string Heading(Bench bench) => bench.Text().Split('\n').First(line => line.Contains("verdict", StringComparison.Ordinal) && line.Contains("label", StringComparison.Ordinal));

    [Theory]
    [InlineData("T9", "T10", -1)]
    [InlineData("t010", "T10", 1)]
    [InlineData("A2B3", "A2B12", -1)]
    [InlineData("X", "X", 0)]
    public void Labels_are_ordered_as_people_count_them(string first, string second, int expected) =>
        Assert.Equal(expected, Math.Sign(NaturalOrder.Instance.Compare(first, second)));

    private static ListTable Table()
    {
        ListTable table = new(
        [
            new Column("label", row => $"C{row + 1}"),
            new Column("Ah", row => new Look().Figure(Ah[row], 2), row => Ah[row]),
            new Column("verdict", row => Verdicts[row]),
        ]);
        table.SetRows(5, row => $"C{row + 1}");
        return table;
    }

    private static string[] Order(ListTable table)
    {
        List<string> names = [];
        table.Move("Home");
        for (int i = 0; i < table.Shown; i++)
        {
            names.Add(table.Name!);
            table.Move("Down");
        }

        return [.. names];
    }

    [Theory]
    [InlineData("tray=Box 1", "C1 C3")]
    [InlineData("tray=\"Box 1\"", "C1 C3")]
    [InlineData("tray=box 1 Ah>4", "C1")]
    [InlineData("Ah>4 tray=Box 1", "C1")]
    [InlineData("tray=Box", "C1 C2 C3 C4 C5")]
    [InlineData("tray!=Box 1", "C2 C4 C5")]
    [InlineData("tray=Box C4", "C4")]
    public void A_value_with_a_blank_is_one_value(string condition, string expected)
    {
        string[] trays = ["Box 1", "Box 2", "Box 1", "Box 2", "Box 2"];
        ListTable table = new([new Column("label", row => $"C{row + 1}"), new Column("tray", row => trays[row]), new Column("Ah", row => $"{Ah[row]}", row => Ah[row])]);
        table.SetRows(5, row => $"C{row + 1}");

        Assert.Null(table.Filter(condition));

        Assert.Equal(expected.Split(' '), Order(table));
    }
}
