namespace PackPlanner.Core.Fitting;

/// <summary>
/// Grows groups one after another through neighbours: each begins beside the last and takes, of the free cells that it touches, the one
/// that comes first in a given order. Connected by construction; an order that strands cells simply completes fewer groups.
/// </summary>
internal static class GroupGrower
{
    /// <summary>Group numbers 1..series for each cell, 0 for spares; and how many groups were completed.</summary>
    internal static (int[] GroupOf, int Completed) Grow(NeighbourGraph graph, double[] rank, int series, int parallel, int jumpers)
    {
        int n = graph.Count;
        int[] groupOf = new int[n], seen = new int[n];
        int stamp = 0, jumped = 0;
        int[] byRank = [.. Enumerable.Range(0, n).OrderBy(i => rank[i]).ThenBy(i => i)];
        PriorityQueue<int, (double, int)> front = new();
        Stack<int> todo = [];
        List<int> last = [], current = [];
        for (int group = 1; group <= series; group++)
        {
            int start = group == 1 ? -1 : Beside(last);
            if (start < 0)
            {
                if (group > 1 && ++jumped > jumpers)
                    return (groupOf, group - 1);
                start = Anywhere();
                if (start < 0)
                    return (groupOf, group - 1);
            }

            current.Clear();
            front.Clear();
            stamp++;
            seen[start] = stamp;
            front.Enqueue(start, (rank[start], start));
            while (current.Count < parallel)
            {
                int i = front.Dequeue();
                groupOf[i] = group;
                current.Add(i);
                foreach (int j in graph.Near[i])
                {
                    if (groupOf[j] != 0 || seen[j] == stamp)
                        continue;
                    seen[j] = stamp;
                    front.Enqueue(j, (rank[j], j));
                }
            }

            (last, current) = (current, last);
        }

        return (groupOf, series);

        int Beside(List<int> group)
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

        int Anywhere()
        {
            foreach (int i in byRank)
            {
                if (groupOf[i] == 0 && HasRoom(i))
                    return i;
            }

            return -1;
        }

        // A free cell in a pocket with fewer than P free cells cannot begin a group.
        bool HasRoom(int start)
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
                    if (groupOf[j] != 0 || seen[j] == stamp)
                        continue;
                    seen[j] = stamp;
                    todo.Push(j);
                }
            }

            return size >= parallel;
        }
    }
}
