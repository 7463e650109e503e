using System.Text.RegularExpressions;

namespace PackPlanner.Tests.Screens;

/// <summary>What changed between two logs, on the screen, and two counts of one pack.</summary>
public class LogChangesTests
{
    [Fact]
    public void Whether_it_is_the_pack_at_all_is_told_from_the_kilometres_of_both_rides()
    {
        using Bench bench = Bench.TractorsLog();
        bench.Press("t", "t", "t", "t", "t");
        bench.Text();
        bench.Press("Enter");
        Assert.Contains("give the kilometres of both rides to tell (e here)", bench.Text(), StringComparison.Ordinal);
        bench.Press("Esc");

        bench.Set("kmBefore", new PackPlanner.Core.Jobs.JobValue.Number(60));
        bench.Set("kmNow", new PackPlanner.Core.Jobs.JobValue.Number(40));
        bench.Text();
        bench.Press("Enter");

        string text = bench.Text(120, 36);
        Assert.Matches(@"ridden +then 60\.0 km on [\d.]+ kWh, [\d.]+ Wh/km; now 40\.0 km on", text);
        Assert.Matches(@"vehicle +[\d.]+ % less \([\d.]+ km\): energy for each kilometre", text);
        // The parts add up to the range lost, and the pack's is that of the usable energy whatever else is known.
        double[] lost = [.. Regex.Matches(text, @"^.*?(?:pack|vehicle) +(?:[\d.]+) % less \(([\d.]+) km\)", RegexOptions.Multiline).Select(part => Number(part))];
        double then = Number(Regex.Match(text, @"range +([\d.]+) km then")), now = Number(Regex.Match(text, @"range +[\d.]+ km then, ([\d.]+) km now"));
        Assert.Equal(2, lost.Length);
        Assert.Equal(then - now, lost.Sum(), 0.11);
        Assert.Equal(Regex.Match(text, @"kWh now: ([\d.]+ % less)").Groups[1].Value, Regex.Match(text, @"pack +([\d.]+ % less)").Groups[1].Value);

        static double Number(Match match) => double.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void A_vehicle_that_needs_less_is_said_to_give_and_not_to_lose_less_than_nothing()
    {
        using Bench bench = Bench.TractorsLog();
        bench.Set("kmBefore", new PackPlanner.Core.Jobs.JobValue.Number(41));
        bench.Set("kmNow", new PackPlanner.Core.Jobs.JobValue.Number(33));
        bench.Press("t", "t", "t", "t", "t");
        bench.Text();
        bench.Press("Enter");

        Assert.Matches(@"vehicle +[\d.]+ % more \([\d.]+ km\)", bench.Text(120, 36));
        Assert.Matches(@"^4\.82 kWh then, 3\.65 kWh now: 24\.2 % less\. Ridden 41\.0 km then, 33\.0 km now; range [\d.]+ km then, [\d.]+ km now: pack [\d.]+ km less, vehicle [\d.]+ km more\.$", bench.Desk.Step.Picture.Answer);
        Assert.DoesNotContain("…", string.Join('\n', bench.Text().Split('\n').Take(5)), StringComparison.Ordinal);
        Assert.DoesNotMatch(@"-[\d.]+ % (less|more)", bench.Text(120, 36));
    }

    [Fact]
    public void Two_figures_of_one_pack_stand_beside_one_another_with_one_reason()
    {
        using Bench bench = Bench.TractorsLog();
        bench.Press("r");
        bench.Text();
        bench.Press("=");
        string log = bench.Text(120, 36);
        bench.Press("Esc", "6");
        Assert.Matches(@"as 7 Log counts it +56 A, its own curve and sag +3650 Wh", bench.Text(120, 36));
        while (!bench.Text().Contains("> usable", StringComparison.Ordinal))
            bench.Press("Down");
        bench.Press("=");
        string energy = bench.Text(120, 36);

        foreach (string words in new[] { "7 Log counts along the curve", "6 Energy along the usual curve of the chemistry" })
        {
            Assert.Contains(words, Regex.Replace(log, @"\s+", " "), StringComparison.Ordinal);
            Assert.Contains(words, Regex.Replace(energy, @"\s+", " "), StringComparison.Ordinal);
        }
    }
}
