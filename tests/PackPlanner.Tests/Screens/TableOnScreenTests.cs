namespace PackPlanner.Tests.Screens;

/// <summary>Tables as they stand on a screen: which columns have room, where words are cut, what their conditions are like.</summary>
public sealed class TableOnScreenTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void What_has_no_room_is_told_at_each_tick_of_the_list_of_columns()
    {
        bench.OpenLot();
        bench.Press("2");
        bench.Text();
        bench.Press("c");
        string[] before = Roomless();

        // Columns of figures asked for one after the other push the words aside; with them gone there is room again.
        string[] asked = ["tests", "fresh V", "slot", "tray"];
        foreach (string column in asked)
            Tick(column);
        Assert.NotEmpty(Roomless().Except(before));
        Assert.DoesNotContain("fresh V", Roomless());
        bench.Press("Esc");
        string heading = bench.Text().Split('\n').First(line => line.Contains("label", StringComparison.Ordinal) && line.Contains("tests", StringComparison.Ordinal));
        Assert.Contains("fresh V", heading, StringComparison.Ordinal);

        bench.Press("c");
        foreach (string column in asked)
            Tick(column);
        Assert.Equal(before, Roomless());
    }

    // In a window that shows the whole list over a table of 80 columns.
    private string[] Roomless() => [.. bench.Text(80, 40).Split('\n').Where(line => line.EndsWith("no room ", StringComparison.Ordinal) || line.EndsWith("no room", StringComparison.Ordinal)).Select(line => line[7..].Replace("no room", "", StringComparison.Ordinal).Trim())];

    [Fact]
    public void A_list_of_cells_is_cut_after_a_whole_label()
    {
        bench.OpenLot(cells: 60, series: 3, parallel: 18);
        bench.Press("3");

        string[] rows = [.. bench.Text().Split('\n').Where(line => line.Contains(" T0", StringComparison.Ordinal) && line.TrimEnd().EndsWith('…'))];

        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Matches(@" T\d{3} …$", row.TrimEnd()));
    }

    [Fact]
    public void An_example_of_a_condition_is_of_the_table_that_it_is_for()
    {
        bench.OpenLot();
        bench.Press("2", "f");
        Assert.Contains("verdict=hold", bench.Text(), StringComparison.Ordinal);
        bench.Press("Esc", "3", "f");

        string text = bench.Text();

        Assert.DoesNotContain("verdict", text, StringComparison.Ordinal);
        Assert.Contains("Such as group>2", text, StringComparison.Ordinal);
    }

    private void Tick(string column)
    {
        bench.Press("Home");
        for (int i = 0; i < 20 && !bench.Text().Split('\n').Any(line => line.StartsWith(" >", StringComparison.Ordinal) && line.TrimEnd().EndsWith($"] {column}", StringComparison.Ordinal)); i++)
            bench.Press("Down");
        bench.Press("Enter");
    }

    [Fact]
    public void Long_labels_in_a_list_keep_their_ends_and_are_found_whole()
    {
        bench.OpenLot(series: 2, parallel: 2);
        foreach (string label in bench.Desk.Job!.Rows.Select(row => row.Label).Order(StringComparer.Ordinal).ToArray())
            bench.Desk.Do(PackPlanner.Core.Jobs.JobChanges.AddRow(new PackPlanner.Core.Cells.CellRow { Label = $"HALL-WEST-{label}", CapacityAh = 4.6 + (label[^1] / 1e4), CapacityStepAh = 0.001, ResistanceMilliohm = 30 }));
        bench.Press("3");

        string text = bench.Text(120, 36);

        Assert.Matches("HALL-W…-T0[0-9]{2}", text);
        bench.Press("/");
        bench.Type("HALL-WEST-T0");
        bench.Press("Enter");
        Assert.Null(bench.Desk.Says);
    }

    [Fact]
    public void An_Ah_without_a_limit_is_said_to_lack_the_rated_one()
    {
        bench.OpenLot(cells: 2, series: null, parallel: null);
        bench.Set("ratedAh", null);
        bench.Press("2");

        Assert.Contains("not checked: Ah (rated Ah unknown)", bench.Text(120, 36), StringComparison.Ordinal);
    }
}
