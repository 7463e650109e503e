using PackPlanner.Core.Screening;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>Tables that were once read as something else than they say.</summary>
public class MisreadTablesTests
{
    [Theory]
    [InlineData("23.05.2024")]
    [InlineData("2024.05.23")]
    public void A_date_with_points_does_not_make_the_comma_the_decimal_mark(string date)
    {
        CellTableReading reading = TableText.Read($"cell,self discharge (mV/day),later date,capacity (Ah),temperature\nC1,1.125,{date},2.815,{date}\nC2,1.250,{date},2.790,{date}\n");

        Assert.Equal([2.815, 2.79], reading.Rows.Select(row => row.CapacityAh));
    }

    // 1.234.567 can only be points between thousands: then 2,5 is two and a half.
    [Theory]
    [InlineData("1.234.567", 0, 1)]
    [InlineData("1,234,567", 1, 0)]
    [InlineData("23.05.2024", 0, 0)]
    [InlineData("2024.05.23", 0, 0)]
    [InlineData("1234.567.890", 0, 0)]
    public void Several_marks_vote_only_as_marks_between_thousands(string figure, int points, int commas)
    {
        DecimalVote vote = new();
        vote.Look(0, figure);

        Assert.Equal((points, commas), (vote.Points, vote.Commas));
    }

    [Theory]
    [InlineData("1.0", "1.0", "2.0", "2.0", null)]
    [InlineData("1,0", "1,0", "2,0", "2,0", null)]
    [InlineData("A", "A", "B", "B", "A is 1, B is 2")]
    [InlineData("b", "B", "A", "a", "A is 1")]
    [InlineData("0", "0", "1", "1", "group 0 is group 1")]
    [InlineData("A1", "A1", "B1", "B1", "A1 is 1, B1 is 2")]
    [InlineData("group 1", "1", "P2", "2", null)]
    [InlineData("left", "left", "right", "right", "left is 1, right is 2")]
    public void Groups_keep_their_cells_however_they_are_numbered(string first, string second, string third, string fourth, string? said)
    {
        CellTableReading reading = TableText.Read($"cell;group;capacity (mAh)\nC1;{first};2850\nC2;{second};2790\nC3;{third};2815\nC4;{fourth};2800\n");

        Assert.Equal(first == "b" ? [2, 2, 1, 1] : [1, 1, 2, 2], reading.Rows.Select(row => row.Group));
        Assert.Equal(said is not null, reading.Understood.Any(sentence => sentence.Contains("group", StringComparison.Ordinal)));
        if (said is not null)
            Assert.Contains(reading.Understood, sentence => sentence.Contains(said, StringComparison.Ordinal));
    }

    // 2.9 among thousands is Ah typed among mAh, as 2900000 is no mAh: neither is a dead cell. 40 mAh is a dead cell.
    [Theory]
    [InlineData("2.9", null)]
    [InlineData("2900000", null)]
    [InlineData("40", 0.04)]
    [InlineData("0", 0.0)]
    public void A_capacity_a_thousand_times_too_small_or_large_is_put_aside(string odd, double? read)
    {
        CellTableReading reading = TableText.Read($"cell,capacity (mAh)\nC1,2950\nC2,{odd}\nC3,2940\nC4,2960\n");

        Assert.Equal([2.95, read, 2.94, 2.96], reading.Rows.Select(row => row.CapacityAh));
        Assert.Equal(read is null ? 1 : 0, reading.Account.Samples.Count(lost => lost.Kind == "a figure that no cell has"));
    }

    [Theory]
    [InlineData("1.5", "2", "not-understood")]
    [InlineData("-1", "2", "not-understood")]
    [InlineData("0", "1", "two-readings")]
    public void Groups_that_cannot_be_told_are_refused(string first, string other, string code) =>
        Assert.Equal(code, TableText.Refused($"cell;group;capacity (mAh)\nC1;{first};2850\nC2;{other};2790\nC3;{other};2815\n").Code);

    [Fact]
    public void A_word_among_the_numbers_of_groups_is_told()
    {
        CellTableReading reading = TableText.Read("cell;group;capacity (mAh)\nC1;1;2850\nC2;spare;2790\nC3;;2790\n");

        Assert.Equal([1, null, null], reading.Rows.Select(row => row.Group));
        Assert.Contains("spare", Assert.Single(reading.Account.Samples).Kind);
    }

    [Theory]
    [InlineData("mV/day", 12, 1, 12)]
    [InlineData("mV/month", 360, 30, 12)]
    [InlineData("mV/h", 0.5, 0.041666666666666667, 12)]
    [InlineData("uV/h", 500, 41.666666666666667, 12)]
    [InlineData("V/day", 0.012, 0.001, 12)]
    public void Self_discharge_is_read_in_its_own_unit(string unit, double leaky, double sound, double millivoltPerDay)
    {
        foreach (string heading in (string[])[$"self discharge ({unit})", $"drift {unit}", $"leak_{unit}"])
        {
            CellTableReading reading = TableText.Read(FormattableString.Invariant($"cell;capacity (mAh);{heading}\nC1;2850;{leaky}\nC2;2790;{sound}\n"));

            Assert.Equal(millivoltPerDay, reading.Rows[0].SelfDischargeMillivoltPerDay!.Value, 1e-9);
            Assert.Equal(1, reading.Rows[1].SelfDischargeMillivoltPerDay!.Value, 1e-9);
            Assert.All(reading.Rows, row => Assert.Null(row.RestV));
        }
    }

    [Theory]
    [InlineData("self discharge (%/month)")]
    [InlineData("self discharge (%)")]
    [InlineData("self_discharge_pct_month")]
    [InlineData("self discharge (mV/quarter)")]
    [InlineData("self discharge (mV)")]
    [InlineData("self discharge [mAh]")]
    public void Self_discharge_in_a_unit_that_is_not_known_is_refused_until_it_is_said(string heading)
    {
        string text = $"cell;capacity (mAh);{heading}\nC1;2850;3\nC2;2790;30\n";

        Assert.Contains(heading, TableText.Refused(text).Problem.Where, StringComparison.Ordinal);
        Assert.Equal(3, Say("selfDischarge:mV/day").Rows[0].SelfDischargeMillivoltPerDay);
        Assert.Null(Say("not used").Rows[0].SelfDischargeMillivoltPerDay);
        Assert.All(Say("not used").Rows, row => Assert.Null(row.RestV));

        CellTableReading Say(string meaning) =>
            TableText.Read(text, new ReadOptions { Columns = new ColumnChoices([ColumnChoice.Read($"{heading}={meaning}", out _)!], "--column") });
    }

    [Theory]
    [InlineData("self_discharge_mV_per_day")]
    [InlineData("driftMillivoltPerDay")]
    [InlineData("drift")]
    [InlineData("drift (measured)")]
    public void Self_discharge_in_millivolts_a_day_is_read_without_brackets(string heading) =>
        Assert.Equal(3, TableText.Read($"cell;capacity (mAh);{heading}\nC1;2850;3\nC2;2790;4\n").Rows[0].SelfDischargeMillivoltPerDay);

    // Caution 14 looks for the cell that falls most, and in a drift that one has the lowest figure.
    [Fact]
    public void A_drift_with_falls_below_zero_still_shows_the_cell_that_leaks()
    {
        string rows = string.Concat(Enumerable.Range(1, 9).Select(i => FormattableString.Invariant($"C{i};2850;3.650;{-1 - (0.01 * i)}\n")));
        CellTableReading reading = TableText.Read($"cell;capacity (mAh);ocv (V);drift (mV/day)\n{rows}C10;2850;3.650;-12\n");

        Assert.Equal(12, reading.Row("C10").SelfDischargeMillivoltPerDay);
        Assert.Contains(reading.Understood, sentence => sentence.Contains("turned round", StringComparison.Ordinal));
        Assert.Contains(LotScreening.Judge(reading.Rows, new ScreeningRequest()).Cautions, caution => caution.Code == "caution-14" && caution.Where.Contains("C10", StringComparison.Ordinal));
    }

    [Fact]
    public void Cells_that_recover_a_little_beside_one_that_leaks_are_not_turned_round()
    {
        CellTableReading reading = TableText.Read("cell;capacity (mAh);drift (mV/day)\nC1;2850;-0.2\nC2;2850;-0.1\nC3;2850;12\n");

        Assert.Equal([-0.2, -0.1, 12], reading.Rows.Select(row => row.SelfDischargeMillivoltPerDay));
        Assert.Contains(reading.Understood, sentence => sentence.Contains("taken as a positive figure", StringComparison.Ordinal));
    }

    [Fact]
    public void The_cells_under_an_earlier_heading_are_set_aside_with_their_lines()
    {
        CellTableReading reading = TableText.Read(
            "cell;capacity (mAh)\nA1;2850\nA2;2790\ncell;capacity (mAh);resistance (mOhm)\nB1;2810;31\nB2;2805;32\n");

        Assert.Equal(["B1", "B2"], reading.Rows.Select(row => row.Label));
        Assert.Equal([2, 3], reading.Account.RowsSetAside.Select(row => row.Line));
    }

    // Notes above a heading are no cells.
    [Fact]
    public void Lines_above_the_first_heading_are_no_rows() =>
        Assert.Equal(1, TableText.Read("My lot;2026\nrated;2850;mAh\ncell;capacity (mAh)\nA1;2850\n").Account.RowsRead);

    // Seven days in March where another date has its day above twelve; else the order that is taken is said.
    [Theory]
    [InlineData("3/4/2026", "3/11/2026", "3/25/2026", 7, null)]
    [InlineData("3/4/2026 9:05", "3/11/2026 9:05", "3/25/2026 9:05", 7, null)]
    [InlineData("3/4/26 9:05", "3/11/26 9:05", "3/25/26 9:05", 7, null)]
    [InlineData("3/4/26 9:05 AM", "3/11/26 9:05 AM", "3/12/26 9:05 AM", 7, "2026-03-04")]
    [InlineData("4/3/2026", "11/3/2026", "25/3/2026", 7, null)]
    [InlineData("04.03.26 9:05:10", "11.03.26 9:05:10", "12.03.26 9:05:10", 7, null)]
    [InlineData("3/4/2026", "3/11/2026", "3/12/2026", 214, "2026-04-03")]
    [InlineData("2026-03-04", "2026-03-11", "2026-03-12", 7, null)]
    [InlineData("Mar 4, 2026", "Mar 11, 2026", "Mar 12, 2026", 7, null)]
    public void The_order_of_day_and_month_is_told_by_the_dates_or_said(string first, string later, string last, double days, string? said)
    {
        CellTableReading reading = TableText.Read(
            $"cell;capacity (mAh);date;ocv (V);second date;second ocv (V)\nC1;2800;{first};4.100;{later};4.093\nC2;2800;{first};4.100;{last};4.093\n");

        Assert.Equal(days, (reading.Rows[0].LaterDate - reading.Rows[0].Date)!.Value.TotalDays);
        Assert.Equal(said is null ? 0 : 1, reading.Understood.Count(sentence => sentence.StartsWith("No date tells", StringComparison.Ordinal) && sentence.Contains(said!, StringComparison.Ordinal)));
        Assert.Empty(reading.Account.Samples);
    }

    [Fact]
    public void A_date_that_cannot_be_read_is_counted_and_two_orders_in_one_file_are_said()
    {
        CellTableReading reading = TableText.Read("cell;capacity (mAh);date\nC1;2800;25/3/2026\nC2;2800;3/25/2026\nC3;2800;3/4/2026\nC4;2800;soon\n");

        Assert.Equal([25, 25, 3, null], reading.Rows.Select(row => row.Date?.Day));
        Assert.Contains(reading.Understood, sentence => sentence.Contains("\"3/4/2026\" and the like", StringComparison.Ordinal));
        Assert.Contains("soon", Assert.Single(reading.Account.Samples).Kind);
    }

    [Fact]
    public void Without_a_heading_resting_millivolts_are_told_from_capacities_by_their_spread()
    {
        CellTableReading reading = TableText.Read("K01;3652;2815\nK02;3648;2640\nK03;3655;2790\nK04;3650;2515\n");

        Assert.Equal([2.815, 2.64, 2.79, 2.515], reading.Rows.Select(row => row.CapacityAh));
        Assert.Equal([3.652, 3.648, 3.655, 3.65], reading.Rows.Select(row => row.RestV));
    }

    [Theory]
    [InlineData("K01;3652;2815\nK02;3648;2790\n")]
    [InlineData("K01;3652;2815\nK02;3448;2790\nK03;3555;2710\n")]
    public void Without_a_heading_what_can_be_millivolts_or_capacities_is_refused(string text) =>
        Assert.Equal("two-readings", TableText.Refused(text).Code);

    [Fact]
    public void A_table_of_one_cell_called_C1_is_not_turned()
    {
        CellTableReading reading = TableText.Read("cell;capacity (mAh);resistance (mOhm);ocv (V)\nC1;2850;31;3.65\n");

        Assert.Equal(("C1", 2.85, 31.0, 3.65), (Assert.Single(reading.Rows).Label, reading.Rows[0].CapacityAh, reading.Rows[0].ResistanceMilliohm, reading.Rows[0].RestV));
    }

    [Theory]
    [InlineData("2850mAh", "2.79", "2.81", "Ah")]
    [InlineData("2.85Ah", "2790", "2810", "mAh")]
    [InlineData("2850mAh", "2790", "2810", "mAh")]
    public void One_unit_beside_a_figure_holds_for_the_others_only_where_they_stay_cells(string first, string second, string third, string unit)
    {
        CellTableReading reading = TableText.Read($"cell;capacity\nC1;{first}\nC2;{second}\nC3;{third}\n");

        Assert.Equal([2.85, 2.79, 2.81], reading.Rows.Select(row => row.CapacityAh));
        Assert.Contains(reading.Understood, sentence => sentence.Contains($"read in {unit},", StringComparison.Ordinal));
    }
}
