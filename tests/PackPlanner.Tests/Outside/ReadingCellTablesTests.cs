using PackPlanner.Core.Cells;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Outside;

public class ReadingCellTablesTests
{
    // Source: [PulseBat]. Counts and capacities are the authors'; means and sample deviations were worked out apart from this program.
    [Theory]
    [InlineData("LMO_10Ah_cells.csv", 95, 8.1043, 1.1586, 5.1908, 9.4788, 11.330)]
    [InlineData("LFP_35Ah_cells.csv", 56, 29.7163, 1.7152, 26.0274, 33.6816, 3.090)]
    [InlineData("NMC_2.1Ah_cells.csv", 67, 1.7154, 0.1573, 1.2860, 1.9383, 30.000)]
    public void Retired_cells_have_the_published_count_mean_and_deviation(
        string file, int cells, double meanAh, double deviationAh, double leastAh, double mostAh, double medianMilliohm)
    {
        Assert.True(CellTables.Read([Repository.Data("pulsebat", file)], new ReadOptions()).Is(out CellTableReading? reading, out Refusal? why), why?.ToString());

        double[] capacities = [.. reading.Rows.Select(row => row.CapacityAh!.Value)];
        double mean = capacities.Average();
        Assert.Equal(cells, reading.Rows.Count);
        Assert.Equal(cells, reading.Account.RowsRead);
        Assert.Equal(meanAh, mean, 4);
        Assert.Equal(deviationAh, Math.Sqrt(capacities.Sum(ah => (ah - mean) * (ah - mean)) / (cells - 1)), 4);
        Assert.Equal((leastAh, mostAh), (capacities.Min(), capacities.Max()));
        double[] milliohm = [.. reading.Rows.Select(row => row.ResistanceMilliohm).OfType<double>().Order()];
        Assert.Equal(medianMilliohm, (milliohm[(milliohm.Length - 1) / 2] + milliohm[milliohm.Length / 2]) / 2, 3);
        Assert.All(reading.Rows.Where(row => row.ResistanceMilliohm is not null), row => Assert.Equal((ResistanceKind.Dc, 5.0), (row.ResistanceKind, row.ResistanceAfterS)));
        Assert.All(reading.Rows, row => Assert.NotNull(row.RatedAh));
    }
}
