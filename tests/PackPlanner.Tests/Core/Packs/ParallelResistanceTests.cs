using PackPlanner.Core.Packs;

namespace PackPlanner.Tests.Core.Packs;

public class ParallelResistanceTests
{
    // By hand: 10 and 20 and 20 milliohm are 0.1 + 0.05 + 0.05 = 0.2 of conductance, so 5 milliohm.
    [Fact]
    public void Three_cells_side_by_side_have_one_over_the_sum_of_their_conductances() => Assert.Equal(5, Of(10, 20, 20)!.Value, 1e-12);

    [Fact]
    public void One_that_is_not_known_leaves_the_group_unknown()
    {
        Assert.Null(Of(10, null));
        Assert.Null(Of(10, 0));
        Assert.Null(Of());
    }

    private static double? Of(params double?[] milliohm) => ParallelResistance.Of(milliohm, one => one);
}
