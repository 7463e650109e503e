using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats.Logs;

public class LinkedLogTests
{
    // The length of a link is that of the path in it, which once cut the log short.
    [Fact]
    public void A_log_behind_a_link_is_read_to_its_end()
    {
        string folder = Directory.CreateTempSubdirectory("packplanner-link").FullName;
        string log = Repository.Data("sample-logs", "sample02.csv");
        string link = Path.Combine(folder, "a.csv");
        File.CreateSymbolicLink(link, log);

        PackLogReading plain = Assert.IsType<Outcome<PackLogReading>.Given>(PackLogs.Read(log, new ReadOptions())).Value;
        PackLogReading linked = Assert.IsType<Outcome<PackLogReading>.Given>(PackLogs.Read(link, new ReadOptions())).Value;

        Assert.Equal(plain.Log.TimeS, linked.Log.TimeS);
        Directory.Delete(folder, recursive: true);
    }
}
