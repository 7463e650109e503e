using System.Runtime.CompilerServices;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>A long log put together into moments: one row a moment, one column a name.</summary>
internal sealed class LongTable
{
    // With fewer values than this share of moments times names the log holds changes only.
    private const double Complete = 0.9;
    private const int MomentsAtATime = 4096;

    internal required double[] TimeS { get; init; }

    internal required double[][] Named { get; init; }

    internal required double[][] Beside { get; init; }

    internal required int[] Lines { get; init; }

    internal required double UsualStepS { get; init; }

    internal required bool OnlyChanges { get; init; }

    /// <summary>Runs with the same stamp are one moment.</summary>
    /// <param name="rows">As read.</param>
    /// <param name="clock">Of the runs.</param>
    /// <param name="stopped">Cancelled when the user stops.</param>
    /// <returns>Null when there are more figures than are kept of one log.</returns>
    internal static LongTable? Of(LongRows rows, LogClock clock, CancellationToken stopped)
    {
        int[] first = FirstRuns(clock);
        int moments = first.Length - 1;
        if ((long)moments * (rows.Names.Count + rows.Beside.Length) > LogReading.MostFigures)
            return null;
        double[][] named = Columns(rows.Names.Count, moments);
        double[][] beside = Columns(rows.Beside.Length, moments);
        int[] repeats = new int[(moments + MomentsAtATime - 1) / MomentsAtATime];
        SideBySide.ForEach(repeats.Length, block => repeats[block] = Fill(rows, clock.Order, first, block * MomentsAtATime, named, beside), stopped);
        bool onlyChanges = rows.Count - repeats.Sum() < Complete * moments * rows.Names.Count;
        if (onlyChanges)
            SideBySide.ForEach(named.Length, i => CarryForward(named[i]), stopped);
        double[] timeS = Array.ConvertAll(first[..^1], at => clock.TimeS[at]);
        return new LongTable
        {
            TimeS = timeS,
            Named = named,
            Beside = beside,
            Lines = Array.ConvertAll(first[..^1], at => rows.Lines[clock.Order is { } order ? order[at] : at]),
            UsualStepS = LogClock.Usual(timeS),
            OnlyChanges = onlyChanges,
        };
    }

    // The first run of each moment, and the number of runs behind them.
    private static int[] FirstRuns(LogClock clock)
    {
        List<int> first = new(clock.TimeS.Length + 1);
        for (int at = 0; at < clock.TimeS.Length; at++)
            if (at == 0 || clock.TimeS[at] != clock.TimeS[at - 1])
                first.Add(at);
        first.Add(clock.TimeS.Length);
        return [.. first];
    }

    // Some moments of all names at a time, so that they stay near at hand. Returns how many values came again in their moment.
    private static int Fill(LongRows rows, int[]? order, int[] first, int from, double[][] named, double[][] beside)
    {
        int until = Math.Min(from + MomentsAtATime, first.Length - 1);
        foreach (double[] column in named)
            column.AsSpan(from, until - from).Fill(double.NaN);
        foreach (double[] column in beside)
            column.AsSpan(from, until - from).Fill(double.NaN);
        int[] last = new int[named.Length];
        Array.Fill(last, -1);
        int repeats = 0;
        for (int moment = from; moment < until; moment++)
            for (int at = first[moment]; at < first[moment + 1]; at++)
                repeats += Put(rows, order is null ? at : order[at], moment, last, named, beside);
        return repeats;
    }

    // Compiled in full at once: it is done before the compiler would have found it worth while.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static int Put(LongRows rows, int run, int moment, int[] last, double[][] named, double[][] beside)
    {
        int repeats = 0;
        int end = rows.Starts[run] + rows.Lengths[run];
        for (int row = rows.Starts[run]; row < end; row++)
        {
            int name = rows.NameOf[row];
            if (name == LongColumns.NoName)
                continue;
            repeats += last[name] == moment ? 1 : 0;
            last[name] = moment;
            named[name][moment] = rows.Values[row];
            for (int i = 0; i < beside.Length; i++)
                if (double.IsNaN(beside[i][moment]))
                    beside[i][moment] = rows.Beside[i][row];
        }

        return repeats;
    }

    private static double[][] Columns(int columns, int rows) => [.. Enumerable.Range(0, columns).Select(_ => LargeArray.Of<double>(rows))];

    private static void CarryForward(double[] column)
    {
        double last = double.NaN;
        for (int i = 0; i < column.Length; i++)
        {
            if (double.IsNaN(column[i]))
                column[i] = last;
            else
                last = column[i];
        }
    }
}
