using PackPlanner.Formats;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Tables;

public class CellTablesTests
{
    [Theory]
    [InlineData("cell,capacity_mAh,resistance_mOhm,rest_V\nA1,2850,31.5,3.612\nA2,2790,33,3.598\n")]
    [InlineData("Cell ID;Capacity (Ah);IR (mOhm);OCV (V)\nA1;2.850;31.5;3.612\nA2;2.790;33.0;3.598\n")]
    [InlineData("Zelle;Kapazität [mAh];Innenwiderstand [mΩ];Leerlaufspannung [V]\nA1;2850;31,5;3,612\nA2;2790;33,0;3,598\n")]
    [InlineData("Zelle;Entladekapazität (Ah);Innenwiderstand (Ohm);Ruhespannung (mV)\r\nA1;2,850;0,0315;3612\r\nA2;2,790;0,033;3598\r\n")]
    [InlineData("cellule\tcapacité (mAh)\trésistance interne (mΩ)\ttension à vide (V)\nA1\t2850\t31,5\t3,612\nA2\t2790\t33\t3,598\n")]
    [InlineData("celda;capacidad (mAh);resistencia interna (mΩ);voltaje en reposo (V)\nA1;2850;31,5;3,612\nA2;2790;33;3,598\n")]
    [InlineData("cella;capacità (mAh);resistenza interna (mΩ);tensione a vuoto (V)\nA1;2850;31,5;3,612\nA2;2790;33;3,598\n")]
    [InlineData("cel;capaciteit (mAh);inwendige weerstand (mΩ);rustspanning (V)\nA1;2850;31,5;3,612\nA2;2790;33;3,598\n")]
    [InlineData("ogniwo;pojemność (mAh);rezystancja wewnętrzna (mΩ);napięcie spoczynkowe (V)\nA1;2850;31,5;3,612\nA2;2790;33;3,598\n")]
    [InlineData("电芯编号,容量(mAh),内阻(mΩ),开路电压(V)\nA1,2850,31.5,3.612\nA2,2790,33,3.598\n")]
    [InlineData("My cells, spring lot\n\ncell|capacity|resistance|rest voltage\nA1|2850 mAh|31.5 mOhm|3.612 V\nA2|2790mAh|33mOhm|3.598V\n")]
    [InlineData("cell,capacity,resistance,rest voltage\n,mAh,mOhm,V\nA1,2850,31.5,3.612\nA2,2790,33,3.598\n")]
    [InlineData("cell,capacity,IR,OCV\nA1,\"2,850\",31.5,3.612\nA2,\"2,790\",33,3.598\n")]
    [InlineData("cell;mAh;mOhm;V\nA1;2.850;31,5;3,612\nA2;2.790;33,0;3,598\nTotal;5.640;;\n")]
    [InlineData("A1;2850;31,5 mOhm;3,612\nA2;2790;33,0 mOhm;3,598\n")]
    public void The_same_two_cells_are_read_from_any_spelling(string text)
    {
        CellTableReading reading = TableText.Read(text);

        Assert.Equal(["A1", "A2"], reading.Rows.Select(row => row.Label));
        Assert.Equal([2.850, 2.790], reading.Rows.Select(row => row.CapacityAh));
        Assert.Equal(31.5, reading.Rows[0].ResistanceMilliohm!.Value, 1e-12);
        Assert.Equal(33.0, reading.Rows[1].ResistanceMilliohm!.Value, 1e-12);
        Assert.Equal([3.612, 3.598], reading.Rows.Select(row => row.RestV));
    }

    [Fact]
    public void Totals_blanks_and_second_headings_are_set_aside_with_their_lines_and_repeats_are_kept()
    {
        CellTableReading reading = TableText.Read(
            "cell;capacity mAh\nC1;2850\nC1;2835\n;\ncell;capacity mAh\nC2;dead\nC3;n/a\nSum;5685\n");

        Assert.Equal(["C1", "C1", "C2", "C3"], reading.Rows.Select(row => row.Label));
        Assert.Equal([4, 5, 8], reading.Account.RowsSetAside.Select(row => row.Line));
        Assert.Equal("dead", reading.Row("C2").Remark);
        Assert.Null(reading.Row("C2").CapacityAh);
        Assert.Null(reading.Row("C3").Remark);
        Assert.Equal(2, reading.Account.Samples.Sum(samples => samples.Count));
    }

    [Fact]
    public void C7_and_C07_are_kept_apart_and_asked_about()
    {
        CellTableReading reading = TableText.Read("cell,capacity_Ah\nC7,2.8\nC07,2.7\nC8,2.6\nC70,2.5\n");

        Assert.Equal(4, reading.Rows.Count);
        Assert.Equal(["C07", "C7"], Assert.Single(reading.LabelClashes));
        Assert.Contains(reading.Understood, sentence => sentence.Contains("C07 and C7", StringComparison.Ordinal));
    }

    [Fact]
    public void A_table_of_groups_is_read_as_rows_with_their_group_number()
    {
        CellTableReading reading = TableText.Read("group,capacityAh,resistanceMilliohm,stateOfCharge\n1,39.2,3.1,0.98\n2,38.8,3.3,0.97\n");

        Assert.Equal([1, 2], reading.Rows.Select(row => row.Group));
        Assert.Equal([39.2, 38.8], reading.Rows.Select(row => row.CapacityAh));
        Assert.Equal([3.1, 3.3], reading.Rows.Select(row => row.ResistanceMilliohm));
        Assert.Equal([0.98, 0.97], reading.Rows.Select(row => row.StateOfChargeFraction));
    }

    [Theory]
    [InlineData("cell;capacity\nA1;2790\nA2;2815\nA3;2,850\n")]
    [InlineData("Nr;Kapazitaet mAh;V\nA1;2790;3,62\nA2;2815;3,61\nA3;2.815;3,60\nA4;2,850;3,61\n")]
    public void A_figure_a_thousand_times_off_its_column_by_its_mark_alone_is_not_guessed(string text)
    {
        Refusal why = TableText.Refused(text);

        Assert.Equal((ExitCodes.Input, "two-readings"), (why.ExitCode, why.Code));
        Assert.Contains("2,850", why.Problem.Why, StringComparison.Ordinal);
        Assert.Contains("line", why.Problem.Where, StringComparison.Ordinal);
        Assert.Contains("--decimal", why.Problem.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cell;capacity mAh\nA1;2790\nA2;2815\nA3;2,850\n", 2.85)]
    [InlineData("cell;capacity Ah\nA1;2,790\nA2;2,815\nA3;2,850\n", 2.85)]
    [InlineData("cell;capacity mAh\nA1;2790\nA2;2815\nA3;310,5\n", 0.3105)]
    public void A_mark_that_only_one_reading_allows_is_read(string text, double lastAh) =>
        Assert.Equal(lastAh, TableText.Read(text).Rows[^1].CapacityAh!.Value, 1e-12);

    [Fact]
    public void A_capacity_that_can_be_read_in_two_ways_is_refused_with_both()
    {
        Refusal why = TableText.Refused("cell;capacity (mAh)\nA1;120,500\nA2;118,250\n");

        Assert.Equal((ExitCodes.Input, "two-readings"), (why.ExitCode, why.Code));
        Assert.Contains("120.5", why.Problem.Why, StringComparison.Ordinal);
        Assert.Contains("120500", why.Problem.Why, StringComparison.Ordinal);
        Assert.Contains("--decimal", why.Problem.Remedy, StringComparison.Ordinal);
        Assert.Equal(0.1205, TableText.Read("cell;capacity (mAh)\nA1;120,500\n", new ReadOptions { Decimal = "comma" }).Rows[0].CapacityAh);
        Assert.Equal(120.5, TableText.Read("cell;capacity (mAh)\nA1;120,500\n", new ReadOptions { Decimal = "point" }).Rows[0].CapacityAh);
    }

    [Theory]
    [InlineData("", "empty-file")]
    [InlineData("\r\n \r\n", "empty-file")]
    [InlineData("cell,capacity_mAh\n", "no-rows")]
    [InlineData("cell,resistance_mOhm\nA,31\n", "no-capacity-column")]
    [InlineData("%PDF-1.7 something", "not-a-table")]
    [InlineData("SQLite format 3\0 something", "not-a-table")]
    [InlineData("{\"cells\":[]}", "not-a-table")]
    public void What_is_no_table_of_capacities_is_refused_by_its_kind(string text, string code)
    {
        Refusal why = TableText.Refused(text, new ReadOptions { NeedsCapacity = true });

        Assert.Equal((ExitCodes.Input, code), (why.ExitCode, why.Code));
    }

    [Fact]
    public void A_missing_file_and_a_folder_are_refused()
    {
        Assert.False(CellTables.Read(["no such file.csv"], new ReadOptions()).Is(out _, out Refusal? why));
        Assert.Equal("file-not-found", why!.Code);
        Assert.False(CellTables.Read([Path.GetTempPath()], new ReadOptions()).Is(out _, out why));
        Assert.Equal("is-a-folder", why!.Code);
    }

    [Theory]
    [InlineData("observ.", true)]
    [InlineData("Bem.", true)]
    [InlineData("zzz", false)]
    public void Damage_in_a_column_is_kept_or_where_its_heading_says_nothing_at_least_told(string heading, bool read)
    {
        CellTableReading reading = TableText.Read($"cell;capacity mAh;{heading}\nA1;2850;ok\nA2;2790;hinchada\n");

        Assert.Equal(read ? "hinchada" : null, reading.Rows[1].Remark);
        Assert.Equal(!read, reading.Understood.Any(sentence => sentence.Contains("line 3 reads like damage", StringComparison.Ordinal)));
    }

    // A heading in words that are not known must not hide figures without a sentence; words and known columns are no news.
    [Fact]
    public void Columns_of_figures_under_unknown_headings_are_named_and_columns_of_words_are_not()
    {
        CellTableReading reading = TableText.Read("cell;Ah;Urspændinghvile;maker\nC1;2,85;3,612;Aa\nC2;2,79;3,598;Bb\n");

        string sentence = Assert.Single(reading.Understood, said => said.StartsWith("Not used", StringComparison.Ordinal));
        Assert.Contains("Urspændinghvile", sentence);
        Assert.DoesNotContain("maker", sentence);
        Assert.DoesNotContain(TableText.Read("cell;Ah\nC1;2,85\nC2;2,79\n").Understood, said => said.StartsWith("Not used", StringComparison.Ordinal));
    }

    // As testers write their summaries: the discharge begins at a full cell, and a dead one shows where it stood.
    [Fact]
    public void A_cell_that_stood_far_below_its_limit_as_its_test_began_rested_there()
    {
        CellTableReading reading = TableText.Read("Slot,Date,Chg mAh,Dis mAh,Start V,End V\n1,2026-09-28,2910,2850,4.19,2.80\n2,2026-09-28,2780,2790,4.19,2.80\n3,2026-09-28,-,-,0.03,-\n");

        Assert.Equal([null, null, 0.03], reading.Rows.Select(row => row.RestV));
    }
}
