using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>Tables as people keep them, each small and invented, with its expected reading.</summary>
public class TableSpellingTests
{
    [Fact]
    public void Short_names_above_a_row_of_units_are_the_heading()
    {
        CellTableReading read = TableText.Read("Lot 12 vom Altgerät\n\nZell-Nr.;gem. Kap.;Ri;Leerl.-Sp.\n;mAh;mΩ;V\nA1;2850;31,2;3,612\nA2;2790;33,0;3,608\nMittel;2820;32,1;\n");

        Assert.Equal(["A1", "A2"], read.Rows.Select(row => row.Label));
        Assert.Equal((2.85, 3.612), (read.Row("A1").CapacityAh, read.Row("A1").RestV));
        Assert.Equal(1, read.Account.Counts.Single().Count);
    }

    [Fact]
    public void A_ruled_line_is_no_cell()
    {
        CellTableReading read = TableText.Read("| cell | Ah | mohm |\n|---|:--:|---|\n| A1 | 2.850 | 31.2 |\n| A2 | 2.790 | 33.0 |\n");

        Assert.Equal(["A1", "A2"], read.Rows.Select(row => row.Label));
        Assert.Equal("a ruled line, not a cell", read.Account.Counts.Single().Reason);
    }

    [Fact]
    public void An_identity_names_a_cell_rather_than_the_running_number_beside_it()
    {
        CellTableReading read = TableText.Read("No.,ID,capacity (Ah)\n1,D3-100,1.9155\n2,D3-200,1.8499\n");

        Assert.Equal(["D3-100", "D3-200"], read.Rows.Select(row => row.Label));
    }

    [Fact]
    public void What_remained_after_a_discharge_is_not_what_it_delivered()
    {
        CellTableReading read = TableText.Read("Cycle,ChargeCapacity_Ah,RemainingCapacity_after_Discharge_Ah\n1,2.9945,0.1276\n2,2.9890,0.1071\n");

        Assert.Equal(2.9945, read.Rows[0].CapacityAh);
    }

    [Fact]
    public void Resting_volts_in_short_words_are_resting_volts()
    {
        CellTableReading read = TableText.Read("Nº celda;Capacidad (Ah);R. interna (mΩ);V reposo\nA1;\"2,850\";\"31,2\";\"3,612 V\"\nA2;\"2,790\";\"33,0\";\"3,608 V\"\n");

        Assert.Equal((2.85, 3.612), (read.Row("A1").CapacityAh, read.Row("A1").RestV));
    }
}
