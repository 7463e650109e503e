using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>A misspelt name of any kind is answered with the nearest one.</summary>
public class NearestNameTests
{
    private static readonly string Lot = Path.Combine(Repository.Root, "sample-data", "trike", "cells.csv");

    [Theory]
    [InlineData("match", "mach", "LOT")]
    [InlineData("--rated-ah", "cells", "LOT", "--ratedah", "5Ah")]
    [InlineData("NMC", "cells", "LOT", "--chemistry", "NMX")]
    [InlineData("LFP", "cells", "LOT", "--chemistry", "LPF")]
    [InlineData("T091", "cells", "LOT", "--why", "T91")]
    [InlineData("capacityAh", "cells", "LOT", "--why", "capcityAh")]
    [InlineData("T010", "match", "LOT", "--series", "13", "--parallel", "9", "--leave-out", "T10")]
    [InlineData("caution-07", "explain", "caution-7")]
    [InlineData("trike", "demo", "trik")]
    [InlineData("zsh", "completion", "zhs")]
    [InlineData("fit", "help", "fitt")]
    public void The_nearest_name_is_offered(string meant, params string[] line)
    {
        (int exitCode, _, string notes) = Planner.Run([.. line.Select(word => word == "LOT" ? Lot : word)]);

        Assert.NotEqual(0, exitCode);
        Assert.Contains($"Did you mean {meant}?", notes, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("NCM", "NMC")]
    [InlineData("ncm811", "NMC")]
    [InlineData("LiFePO4", "LFP")]
    public void A_chemistry_goes_by_each_name_of_the_trade(string typed, string known) =>
        Assert.Equal(known, PackPlanner.Core.Cells.Chemistries.Find(typed)?.Name);
}
