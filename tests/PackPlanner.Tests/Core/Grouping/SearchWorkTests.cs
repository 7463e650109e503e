using System.Globalization;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>How much work the search for the strict aims does, in the steps that it counts itself.</summary>
/// <remarks>
/// A search that silently takes ten times the steps gives the same proven answer, and the user waits ten times as long or, in a hard lot, gets a worse
/// answer when the steps run out. No test may look at a clock; steps are the same on every machine. The kept figures tell of every change
/// of the search, better or worse: with ACCEPT_GOLDEN=1 they are written anew, and whoever does so reads in the difference what it costs. What must
/// hold whatever is kept stands beside them as limits in the code.
/// </remarks>
public class SearchWorkTests
{
    // Some milliseconds: the hard lots end here unproven, and what they reached by then is kept too.
    private const long MostSteps = 1_500_000;

    public static TheoryData<int, int, bool> Shapes => new()
    {
        { 4, 3, true }, { 6, 3, true }, { 10, 3, true }, { 22, 3, true }, { 5, 4, true }, { 8, 4, true }, { 16, 4, true }, { 5, 5, true }, { 13, 5, true },
        { 7, 6, true }, { 11, 6, true }, { 9, 7, true }, { 8, 8, true }, { 6, 9, true }, { 6, 10, true }, { 5, 13, true }, { 7, 14, true }, { 170, 6, false }, { 30, 40, false },
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void The_steps_to_an_answer_are_those_that_were_kept(int series, int parallel, bool locked)
    {
        IEnumerable<WorkLot> lots =
            from kind in WorkLot.Kinds
            from spares in new[] { 0, 3 }
            from locks in locked ? new[] { 0, 4 } : [0]
            select new WorkLot(kind, series, parallel, spares, locks, Seed: 1);

        string[] found = [.. lots.Select(lot => Measured(lot, 0)), Measured(new("used", series, parallel, 2, 0, Seed: 2), closeEnough: 4)];

        KeptWork.Hold(FormattableString.Invariant($"strict-{series}s{parallel}p.txt"), found);
    }

    // Hard lots go on in turns, each longer than the one before; what is found in them by then, and after how many steps, is kept.
    [Fact]
    public void The_turns_of_a_long_search_are_those_that_were_kept() =>
        KeptWork.Hold("turns.txt", [.. new WorkLot[] { new("outliers", 16, 4, 3, 0, 1), new("used", 20, 3, 0, 0, 1), new("outliers", 9, 7, 0, 0, 1), new("used", 20, 3, 3, 0, 1) }.Select(lot => Measured(lot, 0, 16_000_000))]);

    // Counted when the limits were set: 21 million steps in all, half of the lots within 8,475, and where there are 10^9 groupings or more at most one step for 5,000 of them.
    [Fact]
    public void Small_lots_are_proven_in_far_fewer_steps_than_there_are_groupings()
    {
        List<long> counted = [];
        int open = 0;
        foreach ((int series, int parallel) in new[] { (5, 3), (6, 3), (7, 3), (4, 4), (5, 4), (6, 4), (4, 5), (5, 5), (4, 6), (6, 6) })
        {
            foreach (string kind in WorkLot.Kinds)
            {
                for (int seed = 1; seed <= 4; seed++)
                {
                    WorkLot lot = new(kind, series, parallel, seed % 3, 0, seed);
                    (StrictAnswer answer, long steps, _, _) = Solve(lot, 2 * MostSteps, 0);
                    open += answer.Proven ? 0 : 1;
                    counted.Add(steps);
                    if (lot.GroupingsLog10() >= 9)
                        Assert.True(Math.Log10(steps) < lot.GroupingsLog10() - 3.5, $"{lot}: {steps} steps");
                }
            }
        }

        Assert.InRange(open, 0, 2);
        Assert.InRange(counted.Sum(), 1, 26_000_000);
        Assert.InRange(counted.Order().ElementAt(counted.Count / 2), 1, 11_000);
    }

    // Lots that every builder of packs has: cells about normal, a few spares, fifty to two thousand cells. Counted when the limits were set: at most
    // 19.8 steps for each cell and group, half of the lots within 1.73.
    [Fact]
    public void Usual_lots_take_steps_as_their_cells_times_their_groups()
    {
        List<double> counted = [];
        foreach ((int series, int parallel) in new[] { (10, 5), (13, 6), (14, 8), (20, 10), (13, 20), (24, 12), (96, 20) })
        {
            for (int seed = 1; seed <= 3; seed++)
            {
                WorkLot lot = new("used", series, parallel, 6, 0, seed);
                (StrictAnswer answer, long steps, _, _) = Solve(lot, MostSteps, 0);
                Assert.True(answer.Proven && answer.Best.Spread <= 1, $"{lot} has a spread of {answer.Best.Spread}");
                counted.Add((double)steps / (answer.Best.GroupOf.Length * series));
            }
        }

        Assert.InRange(counted.Max(), 0.1, 25);
        Assert.InRange(counted.Order().ElementAt(counted.Count / 2), 0.1, 2.2);
    }

    private static string Measured(WorkLot lot, long closeEnough, long most = MostSteps)
    {
        (StrictAnswer answer, long steps, long first, int better) = Solve(lot, most, closeEnough);
        string proven = answer.Proven ? "proven" : "open";
        return string.Create(CultureInfo.InvariantCulture,
            $"{lot} within {closeEnough}: {steps} steps, first after {first}, {better} better; smallest {answer.Best.Smallest} of {answer.Bound}, spread {answer.Best.Spread} of {answer.SpreadBound}, {proven}");
    }

    private static (StrictAnswer Answer, long Steps, long First, int Better) Solve(WorkLot lot, long most, long closeEnough)
    {
        GroupingProblem problem = lot.Problem();
        SearchBudget budget = new(most);
        List<GroupingTrial> told = [];
        long first = 0;
        StrictAnswer answer = StrictSearch.Solve(problem, budget, seed: 1, closeEnough, better =>
        {
            Assert.True(better.IsBetterThan(told.LastOrDefault()), $"{lot}: what is told next is better");
            told.Add(better);
            first = told.Count == 1 ? most - budget.Left : first;
        });
        Assert.Same(told[^1], answer.Best);
        Assert.True(answer.Bound >= answer.Best.Smallest && answer.SpreadBound <= answer.Best.Spread, $"{lot}: bounds bound");
        Assert.True(first <= 70L * problem.Capacity.Length * lot.Series, $"{lot}: {first} steps to the first grouping");
        Assert.True(most - budget.Left <= most + (most / 2), $"{lot}: {most - budget.Left} steps of {most}");
        return (answer, most - budget.Left, first, told.Count);
    }
}
