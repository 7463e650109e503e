namespace PackPlanner.Formats.Logs;

/// <summary>A long log put together into moments: one row a moment, one column a name.</summary>
internal sealed class LongTable
{
    // With fewer values than this share of moments times names the log holds changes only.
    private const double Complete = 0.9;

    internal required double[] TimeS { get; init; }

    internal required double[][] Named { get; init; }

    internal required double[][] Beside { get; init; }

    internal required int[] Lines { get; init; }

    internal required double UsualStepS { get; init; }

    internal required bool OnlyChanges { get; init; }

    /// <summary>Rows with the same stamp are one moment, until a name comes a second time.</summary>
    internal static LongTable Of(LongRows rows, LogClock clock)
    {
        int count = rows.Values.Length;
        int[] momentOf = new int[count];
        List<double> timeS = [];
        List<int> lines = [];
        int[] lastMoment = new int[rows.Names.Count];
        Array.Fill(lastMoment, -1);
        int repeats = 0;
        for (int at = 0; at < count; at++)
        {
            int row = clock.Order is { } order ? order[at] : at;
            bool apart = timeS.Count == 0 || clock.TimeS[at] != timeS[^1];
            if (!apart && lastMoment[rows.NameOf[row]] == timeS.Count - 1)
                repeats++;
            if (apart)
            {
                timeS.Add(clock.TimeS[at]);
                lines.Add(rows.Lines[row]);
            }

            momentOf[row] = timeS.Count - 1;
            lastMoment[rows.NameOf[row]] = timeS.Count - 1;
        }

        double[][] named = Columns(rows.Names.Count, timeS.Count);
        double[][] beside = Columns(rows.Beside.Length, timeS.Count);
        for (int row = 0; row < count; row++)
        {
            named[rows.NameOf[row]][momentOf[row]] = rows.Values[row];
            for (int i = 0; i < beside.Length; i++)
                if (double.IsNaN(beside[i][momentOf[row]]))
                    beside[i][momentOf[row]] = rows.Beside[i][row];
        }

        bool onlyChanges = count - repeats < Complete * timeS.Count * rows.Names.Count;
        if (onlyChanges)
            foreach (double[] column in named)
                CarryForward(column);
        double[] momentsS = [.. timeS];
        return new LongTable
        {
            TimeS = momentsS,
            Named = named,
            Beside = beside,
            Lines = [.. lines],
            UsualStepS = LogClock.Usual(momentsS),
            OnlyChanges = onlyChanges,
        };
    }

    private static double[][] Columns(int columns, int rows)
    {
        double[][] all = new double[columns][];
        for (int i = 0; i < columns; i++)
        {
            all[i] = new double[rows];
            Array.Fill(all[i], double.NaN);
        }

        return all;
    }

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
