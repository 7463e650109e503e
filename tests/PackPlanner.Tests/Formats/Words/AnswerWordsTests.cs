using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Tests.Formats.Words;

public class AnswerWordsTests
{
    private static CompareAnswer Answer(IReadOnlyList<SamplesSetAside> lost, IReadOnlyList<CautionJson> cautions) => new()
    {
        Groups = [],
        Causes = [],
        UsableWh = new ChangedEnergyJson(null, null, null),
        RangeKm = null,
        Rides = null,
        SamplesSetAside = lost,
        Cautions = cautions,
    };

    [Fact]
    public void Columns_that_lost_the_same_stand_in_one_line()
    {
        SamplesSetAside[] lost =
        [
            .. Enumerable.Range(1, 16).Select(cell => new SamplesSetAside($"Cell{cell:00}", "a filler", 5, 702)),
            new("Cell05", "a filler", 3, 322),
            new("Amps", "a filler", 3, 322),
            new("Cell05", "out of range", 3, 322),
        ];

        string text = AnswerWords.Of([], Answer(lost, []));

        Assert.Equal(
            "  5 values in each of 16 columns, Cell01 to Cell16, left out: a filler, first in line 702\n"
            + "  3 values each of Cell05, Amps left out: a filler, first in line 322\n"
            + "  3 values of Cell05 left out: out of range, first in line 322\n", text);
    }

    [Fact]
    public void Cautions_that_ask_for_the_same_say_it_once()
    {
        CautionJson Of(string where, string act) => new("caution-15", "WARNING", where, "2.95 V", "the reason", act, "ride on");

        string text = AnswerWords.Of([], Answer([], [Of("group 1", "look"), Of("group 2", "look"), Of("group 3", "stop")]));

        Assert.Equal(
            "\nWARNING caution-15, group 1: 2.95 V\nWARNING caution-15, group 2: 2.95 V\n  why     the reason\n  do      look\n  do not  ride on\n"
            + "\nWARNING caution-15, group 3: 2.95 V\n  why     the reason\n  do      stop\n  do not  ride on\n", text);
    }
}
