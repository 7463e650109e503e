using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Tests.Core.UsableEnergy;

/// <summary>One cell without milliohm neither hides the short circuit of the whole pack nor lets a check pass in silence.</summary>
public class MissingResistancesTests
{
    // Two groups of two cells, all of `milliohm` but for one that has none.
    private static EnergyRequest Pack(double milliohm, params double?[] second) => new()
    {
        Groups = MissingResistances.Filled(
            [new SeriesGroup(1, 10, milliohm / 2, Parallel: 2), new SeriesGroup(2, 10, null, Parallel: 2)],
            [[("K1", milliohm), ("K2", milliohm)], [("K3", second[0]), ("K4", second[1])]]),
        Chemistry = Chemistries.Find("NMC")!,
        FullV = 4.2,
        EmptyV = 3.0,
        Load = new LoadPlan.ConstantCurrent(5),
    };

    private static StringFigures Told(EnergyRequest request) => StringFigures.Of(request, new StringProtection(), TestContext.Current.CancellationToken);

    // By hand: 2 x 4.2 V over 15 + 15 milliohm is 280 A; over 15 + 30 (the missing cell not there) 186.7 A; over 15 + 0 (it is nothing) 560 A.
    [Fact]
    public void The_median_of_the_others_stands_in_and_bounds_stand_beside_it()
    {
        StringShortCircuit shorted = Told(Pack(30, 30, null)).Shorted;

        Assert.Null(shorted.LowA);
        Assert.Null(shorted.ProspectiveA);
        Assert.Equal(280, shorted.LikelyLow!.LikelyA, 1e-9);
        Assert.Equal(8.4 / 0.045, shorted.LikelyLow.AtLeastA!.Value, 1e-9);
        Assert.Equal(560, shorted.LikelyLow.AtMostA!.Value, 1e-9);
        Assert.Equal(560, shorted.LikelyProspective!.LikelyA, 1e-9);
    }

    [Fact]
    public void The_check_stays_open_and_names_group_and_cell()
    {
        StringFigures told = Told(Pack(30, 30, null));

        NotChecked open = Assert.Single(told.Open, open => open.Code == "caution-21");
        Assert.Equal("group 2: K4 has no milliohm, taken at 30.0, the median of the others: a short circuit begins at about 560 A, at least 373, at most 1120", open.Why);
        Assert.DoesNotContain(told.Raised, caution => caution.Code == "caution-21");
    }

    [Fact]
    public void A_likely_current_above_the_limit_warns_all_the_same()
    {
        StringFigures told = Told(Pack(6, 6, null));

        Caution high = Assert.Single(told.Raised, caution => caution.Code == "caution-21");
        Assert.Contains("group 2: K4 has no milliohm", high.Saw, StringComparison.Ordinal);
        Assert.Contains(told.Open, open => open.Code == "caution-21");
    }

    // 25 A2 x 30 milliohm: the heat counts the cell that is missing as the others.
    [Fact]
    public void Heat_counts_the_missing_cell_as_the_others() => Assert.Equal(0.75, Told(Pack(30, 30, null)).Budget.Heat.Riding!.CellsW!.Value, 1e-9);

    [Fact]
    public void Where_most_are_missing_nothing_stands_in_for_them()
    {
        EnergyRequest request = Pack(30, null, null) with { };
        request = request with { Groups = MissingResistances.Filled([new SeriesGroup(1, 10, null), new SeriesGroup(2, 10, null)], [[("K1", 30), ("K2", null)], [("K3", null), ("K4", null)]]) };

        StringFigures told = Told(request);

        Assert.Null(told.Shorted.LikelyProspective);
        Assert.Null(told.Budget.Heat.Riding!.CellsW);
        Assert.Contains("groups 1, 2: K2, K3, K4 have no milliohm: the short-circuit current is not known", told.Open.Select(open => open.Why));
    }
}
