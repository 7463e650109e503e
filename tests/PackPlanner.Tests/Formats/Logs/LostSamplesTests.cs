using System.Globalization;
using System.Text;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>Samples that are missing in rows that are used are counted, by column and kind.</summary>
public class LostSamplesTests
{
    [Fact]
    public void Blank_and_NaN_samples_of_a_wide_log_are_counted()
    {
        StringBuilder text = new("time (s),current (A),cell 1 (V),cell 2 (V),cell 3 (V)\n");
        for (int i = 0; i < 100; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i},5.0,{(i is 7 or 8 ? "" : "3.900")},{(i == 9 ? "NaN" : "3.890")},\n");

        PackLogReading read = LogText.Pack(text.ToString());

        Assert.Equal((100, 100), (read.Account.RowsRead, read.Account.RowsUsed));
        // The third column is never filled: nothing was lost there.
        Assert.Equal(
            [new SamplesSetAside("cell 1 (V)", "blank", 2, 9), new SamplesSetAside("cell 2 (V)", "\"NaN\" instead of a figure", 1, 11)],
            read.Account.Samples.OrderBy(lost => lost.FirstLine));
        Assert.True(double.IsNaN(read.Log.GroupV[0][7]));
    }

    [Fact]
    public void Blanks_are_counted_alike_however_the_file_is_cut()
    {
        StringBuilder text = new("time (s),current (A),cell 1 (V),cell 2 (V)\n");
        for (int i = 0; i < 2000; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i},5.0,{(i % 40 == 3 ? "" : "3.900")},3.890\n");

        PackLogReading whole = LogText.Pack(text.ToString());
        PackLogReading cut = LogText.Pack(text.ToString(), new ReadOptions { PartBytes = 4096 });

        Assert.Equal(new SamplesSetAside("cell 1 (V)", "blank", 50, 5), Assert.Single(whole.Account.Samples));
        Assert.Equal(whole.Account.Samples, cut.Account.Samples);
    }

    [Fact]
    public void Blank_values_of_a_long_log_are_counted()
    {
        StringBuilder text = new("time (s),signal,value\n");
        for (int i = 0; i < 200; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i},cell 1,{(i == 20 ? "" : "3.9")}\n{i},cell 2,3.89\n{i},current,{(i == 30 ? "NaN" : "5")}\n");

        PackLogReading read = LogText.Pack(text.ToString());

        Assert.Equal([("blank", 1), ("\"NaN\" instead of a figure", 1)], read.Account.Samples.OrderBy(lost => lost.FirstLine).Select(lost => (lost.Kind, lost.Count)));
    }
}
