namespace PackPlanner.Core.Fitting;

/// <summary>
/// Grows groups one after another through neighbours: each begins beside the last and takes, of the free cells that it touches, the one
/// that comes first in a given order. Connected by construction; an order that strands cells simply completes fewer groups.
/// </summary>
internal sealed class GroupGrower
{
    private readonly NeighbourGraph graph;
    private readonly double[] rank;
    private readonly int parallel;
    private readonly int[] byRank;
    private readonly int[] groupOf;
    private readonly PriorityQueue<int, (double, int)> front = new();
    private readonly Stack<int> todo = [];

    // A cell is seen in this turn when it bears its stamp: no array is cleared.
    private readonly int[] seen;
    private int stamp;

    private GroupGrower(NeighbourGraph graph, double[] rank, int parallel)
    {
        (this.graph, this.rank, this.parallel) = (graph, rank, parallel);
        (groupOf, seen) = (new int[graph.Count], new int[graph.Count]);
        byRank = [.. Enumerable.Range(0, graph.Count).OrderBy(i => rank[i]).ThenBy(i => i)];
    }

    /// <summary>Grows the groups.</summary>
    /// <param name="graph">Which cells can be linked.</param>
    /// <param name="rank">Which cell a group takes first: the lowest, shape [cells].</param>
    /// <param name="series">Groups wanted.</param>
    /// <param name="parallel">Cells in each.</param>
    /// <param name="jumpers">Groups that may begin away from the last one.</param>
    /// <returns>Group numbers 1..series for each cell, 0 for spares; and how many groups were completed.</returns>
    internal static (int[] GroupOf, int Completed) Grow(NeighbourGraph graph, double[] rank, int series, int parallel, int jumpers)
    {
        GroupGrower grower = new(graph, rank, parallel);
        return (grower.groupOf, grower.Completed(series, jumpers));
    }

    private int Completed(int series, int jumpers)
    {
        List<int> last = [];
        int jumped = 0;
        for (int group = 1; group <= series; group++)
        {
            int start = group == 1 ? -1 : Beside(last);
            if (start < 0)
            {
                if (group > 1 && ++jumped > jumpers)
                    return group - 1;
                start = Anywhere();
                if (start < 0)
                    return group - 1;
            }

            Fill(group, start, last);
        }

        return series;
    }

    // The start has room, so the front does not run dry before the group is full.
    private void Fill(int group, int start, List<int> members)
    {
        members.Clear();
        front.Clear();
        stamp++;
        seen[start] = stamp;
        front.Enqueue(start, (rank[start], start));
        while (members.Count < parallel)
        {
            int i = front.Dequeue();
            groupOf[i] = group;
            members.Add(i);
            foreach (int j in graph.Near[i])
            {
                if (Meets(j))
                    front.Enqueue(j, (rank[j], j));
            }
        }
    }

    private int Beside(List<int> group)
    {
        front.Clear();
        foreach (int i in group)
        {
            foreach (int j in graph.Near[i])
            {
                if (groupOf[j] == 0)
                    front.Enqueue(j, (rank[j], j));
            }
        }

        while (front.TryDequeue(out int j, out _))
        {
            if (HasRoom(j))
                return j;
        }

        return -1;
    }

    private int Anywhere()
    {
        foreach (int i in byRank)
        {
            if (groupOf[i] == 0 && HasRoom(i))
                return i;
        }

        return -1;
    }

    // A free cell in a pocket with fewer free cells than a group takes cannot begin one.
    private bool HasRoom(int start)
    {
        stamp++;
        todo.Clear();
        todo.Push(start);
        seen[start] = stamp;
        int size = 0;
        while (size < parallel && todo.TryPop(out int i))
        {
            size++;
            foreach (int j in graph.Near[i])
            {
                if (Meets(j))
                    todo.Push(j);
            }
        }

        return size >= parallel;
    }

    // True the first time in this turn that a free cell is met.
    private bool Meets(int cell)
    {
        if (groupOf[cell] != 0 || seen[cell] == stamp)
            return false;
        seen[cell] = stamp;
        return true;
    }
}
