using PackPlanner.Core.Cautions;

namespace PackPlanner.Tests.Core.Cautions;

public class AlikeCautionsTests
{
    private static Caution Works(int group, string carries, string rating = "1.77") =>
        new("caution-24", SignalWord.Warning, $"group {group}", $"its hardest-worked cell carries {carries} A; its aged rating is {rating} A");

    [Fact]
    public void Groups_that_raise_the_same_are_one_line_from_the_least_to_the_most()
    {
        Caution[] all = [Works(1, "2.69"), Works(2, "2.8", "1.8"), new("caution-28", SignalWord.Warning, "charger settings", "the first charge"), Works(10, "2.55")];

        IReadOnlyList<AlikeCautions> lines = AlikeCautions.Of(all);

        Assert.Equal(2, lines.Count);
        Assert.Equal("3 groups", lines[0].Where);
        Assert.Equal("its hardest-worked cell carries 2.55 to 2.8 A; its aged rating is 1.77 to 1.8 A", lines[0].Saw);
        Assert.Equal([1, 2, 10], lines[0].All.Select(caution => int.Parse(caution.Where[6..], System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Same(all[2], Assert.Single(lines[1].All));
    }

    [Fact]
    public void Other_words_another_signal_or_a_cell_stand_alone()
    {
        Caution[] all =
        [
            Works(1, "2.69"), Works(2, "2.70"), Works(3, "2.7") with { Signal = SignalWord.Danger },
            new("caution-24", SignalWord.Warning, "group 4", "T113 carries 2.7 A"), new("caution-24", SignalWord.Warning, "group 5", "T114 carries 2.7 A"),
            new("caution-24", SignalWord.Warning, "group 6", "T115 carries 2.7 A"), new("caution-05", SignalWord.Warning, "T001", "dented"),
            new("caution-05", SignalWord.Warning, "T002", "dented"), new("caution-05", SignalWord.Warning, "T003", "dented"),
        ];

        Assert.Equal(all, AlikeCautions.Of(all).Select(line => Assert.Single(line.All)));
    }
}
