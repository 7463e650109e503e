using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>Rows of another width than the heading, and headings of more rows than one.</summary>
public class ShiftedRowsTests
{
    [Theory]
    [InlineData("cell,Ah,mOhm,V\n1,2.55,43,3.61\n2,2,60,43,3.60\n3,2.57,44,3.62,\n", "1 3")]
    [InlineData("cell,Ah,mOhm,V,remark\n1,2.55,43,3.61,ok\n2,2,60,43,3.60,ok\n3,2.57,44,3.62\n", "1 3")]
    [InlineData("cell;Ah;mOhm;V\n1;2,55;43;3,61\n2;2,60;43;;3,60\n3;2,57;44;3,62;;\n", "1 3")]
    public void A_row_with_more_fields_than_the_heading_is_set_aside_and_named(string text, string read)
    {
        CellTableReading reading = TableText.Read(text);

        Assert.Equal(read, string.Join(' ', reading.Rows.Select(row => row.Label)));
        Assert.Equal((3, true), (reading.Account.RowsSetAside.Single().Line, reading.Account.RowsSetAside.Single().Reason.StartsWith("more fields than the heading", StringComparison.Ordinal)));
        Assert.DoesNotContain(reading.Understood, sentence => sentence.Contains("ends before", StringComparison.Ordinal));
    }

    [Fact]
    public void Words_with_commas_behind_the_last_column_belong_to_it_and_a_row_cut_off_is_told()
    {
        CellTableReading reading = TableText.Read("cell,Ah,mOhm,V,remark\n1,2.55,43,3.61,old, leaking\n2,2.60,43,3.60\n3,2.57\n4,2.58,42,3.61,\n");

        Assert.Equal(["old, leaking", null, null, null], reading.Rows.Select(row => row.Remark));
        Assert.Contains("One row ends before the heading does, the first in line 4: mOhm, V are missing there.", reading.Understood);
        Assert.Empty(reading.Account.RowsSetAside);
    }

    [Fact]
    public void A_last_column_without_a_name_shifts_nothing_and_is_told()
    {
        CellTableReading reading = TableText.Read("cell,Ah,mOhm,V\n1,2.55,43,3.61,7\n2,2.60,43,3.60,8\n3,2.57,44,3.62\n");

        Assert.Equal([3.61, 3.6, 3.62], reading.Rows.Select(row => row.RestV));
        Assert.Contains("2 rows have more fields than the heading, the first in line 2: what stands beyond it is not used.", reading.Understood);
    }

    // A name of a merged cell stands over the empty ones to its right; what the upper row alone names counts too.
    [Fact]
    public void A_heading_of_merged_cells_is_read_with_the_row_above_it()
    {
        CellTableReading reading = TableText.Read(
            "Cell;Test 1;;Test 2;;IR;Voltage;;Remarks\n;Cap;Slot;Cap;Slot;mOhm;after charge;after 3 wk;\n;mAh;;mAh;;;V;V;\n"
            + "K-01;2550;1;2560;2;43;4,18;4,17;\nK-02;2600;2;2590;3;44;4,17;4,16;dented\nK-03;2570;3;;;45;4,18;4,17;\n");

        Assert.Equal(["K-01", "K-01", "K-02", "K-02", "K-03"], reading.Rows.Select(row => row.Label));
        Assert.Equal([2.55, 2.56, 2.6, 2.59, 2.57], reading.Rows.Select(row => row.CapacityAh));
        Assert.Equal("dented", reading.Rows.First(row => row.Label == "K-02").Remark);
        Assert.Equal(43, reading.Rows[0].ResistanceMilliohm);
        Assert.Contains(MergedHeading.Says, reading.Understood);
    }

    [Fact]
    public void Who_tested_what_above_a_whole_heading_names_no_column()
    {
        CellTableReading reading = TableText.Read("Operator;Cell bench;Remark\ncell;mAh;mOhm\nK-01;2550;43\nK-02;2600;44\n");

        Assert.Equal([2.55, 2.6], reading.Rows.Select(row => row.CapacityAh));
        Assert.DoesNotContain(MergedHeading.Says, reading.Understood);
    }
}
