namespace PackPlanner.Tests.Screens;

/// <summary>Resting volts typed down the list on assembly day.</summary>
public sealed class FreshVoltsOnScreenTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Fresh_volts_are_told_with_who_typed_them_and_no_cell_has_thirty_six()
    {
        bench.OpenLot();
        bench.Press("2", "/");
        bench.Type("T005");
        bench.Press("Enter", "c");
        while (!bench.Text(120, 40).Split('\n').Any(line => line.StartsWith(" >", StringComparison.Ordinal) && line.TrimEnd().EndsWith("] fresh V", StringComparison.Ordinal)))
            bench.Press("Down");
        bench.Press("Enter", "Esc");
        bench.Text(120, 36);
        for (int i = 0; i < 20 && !bench.Desk.Step.WhereFrom()!.Title.Contains("fresh", StringComparison.Ordinal); i++)
            bench.Press("Right");

        bench.Press("Enter");
        bench.Type("36.1");
        bench.Press("Enter");
        Assert.Contains("not the voltage of one cell", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("Ctrl+U");
        bench.Type("3.66");
        bench.Press("Enter", "Up");

        Assert.Equal("3.660 V, fresh, of T005", bench.Desk.Step.WhereFrom()!.Title);
        Assert.Contains("3.600 V, cells.csv line 6, slot 2, later 3.660 V, you, 2 Nov; the table has nothing", bench.Desk.Step.WhereFrom()!.Lines[0].Says, StringComparison.Ordinal);
        // The reading of today speaks, though it is higher than the undated one of the table.
        Assert.Equal(3.66, bench.Desk.Answers.Lot!.Cells.Single(cell => cell.Label == "T005").RestV);
    }
}
