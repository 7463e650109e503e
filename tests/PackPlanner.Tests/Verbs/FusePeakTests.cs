using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>A fuse by the continuous current says what the peak is to it.</summary>
public class FusePeakTests
{
    // 1.25 x 22 A are 27.5 A, so 30 A is the next rating; 60 A are twice that.
    [Theory]
    [InlineData("60A", "20s", "the peak of 60 A for 20 s is 2.0 times this rating: hold it against the fuse's time-current curve")]
    [InlineData("31A", null, "the peak of 31 A is 1.0 times this rating")]
    [InlineData("30A", "20s", null)]
    [InlineData(null, null, null)]
    public void A_peak_above_the_rating_is_named(string? peak, string? time, string? says)
    {
        using Folder folder = new();
        string groups = folder.File("groups.csv");
        File.WriteAllText(groups, "group,capacityAh,resistanceMilliohm\n1,45,2\n2,44,2\n3,45,2\n");

        string words = Planner.Run(["energy", groups, "--chemistry", "NMC", "--load", "22A", .. peak is null ? [] : (string[])["--peak", peak], .. time is null ? [] : (string[])["--peak-time", time]]).Output;

        Assert.Contains("1.25 x 22 A continuous is 27.5 A", words, StringComparison.Ordinal);
        Assert.Equal(says is not null, words.Contains("times this rating", StringComparison.Ordinal));
        Assert.Contains(says ?? "its DC volts at least those of the full pack\n", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_size_says_so_too()
    {
        string Size(string watt) => Planner.Run("size", "--chemistry", "NMC", "--rated-ah", "5Ah", "--series", "14", "--parallel", "4", "--use", "28Wh/km", "--speed", "40km/h", "--peak", watt).Output;

        // 1120 W at 38.5 V are 29.1 A and a fuse of 36.4 A; 2000 W are 51.9 A, 1300 W 33.8 A.
        Assert.Contains("36.4 A or more, its time-current curve above the peak;", Size("2000W"), StringComparison.Ordinal);
        Assert.Contains("36.4 A or more;", Size("1300W"), StringComparison.Ordinal);
    }
}
