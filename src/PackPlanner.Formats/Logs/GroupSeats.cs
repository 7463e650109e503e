using System.Globalization;

namespace PackPlanner.Formats.Logs;

/// <summary>Which group of the string each column of cell volts is, by the log's own numbers, so that a channel that is dead or missing shifts none.</summary>
/// <param name="Of">For each used column its group, from 1.</param>
/// <param name="Series">Groups of the pack; those without a column are not read.</param>
internal sealed record GroupSeats(int[] Of, int Series)
{
    // More than this share without volts is a log of something else, or numbers that count something else.
    private const double MostUnread = 1.0 / 3;

    // How near the pack's own volts must lie to the sum of so many groups.
    private const double NearFraction = 0.03;

    /// <summary>Finds the seats.</summary>
    /// <param name="used">Columns with volts, in their order.</param>
    /// <param name="dead">Columns named as cells that never hold the volts of one.</param>
    /// <param name="series">Groups of the pack as the user said; null when he did not.</param>
    /// <param name="packOverSum">The pack's own volts over the sum of the used columns; null when the log has none.</param>
    internal static GroupSeats Find(LogColumn[] used, LogColumn[] dead, int? series, double? packOverSum)
    {
        GroupSeats inOrder = new([.. Enumerable.Range(1, used.Length)], used.Length);
        if (used.Length == series || used.Any(column => column.Number is null) || used.Select(column => column.Number).Distinct().Count() < used.Length)
            return inOrder;
        int first = used.Concat(dead).Any(column => column.Number == 0) ? 0 : 1;
        int[] seats = [.. used.Select(column => column.Number!.Value - first + 1)];
        int last = series ?? seats.Max();
        int unread = last - used.Length;
        if (unread <= 0 || unread > Math.Max(1, last * MostUnread))
            return inOrder;
        // A monitor may leave out channels that the pack does not need; what the pack measures over all of its cells tells.
        if (series is null && packOverSum is { } ratio && Math.Abs(ratio - 1) < NearFraction)
            return inOrder;
        // Channels at the end may be those that the monitor has to spare: only what lies between others is known to be a group.
        return seats.Max() == last ? new GroupSeats(seats, last) : inOrder;
    }

    /// <summary>Whether each column is a group in the order of the columns, and all are read.</summary>
    internal bool AllRead => Series == Of.Length;

    /// <summary>Groups that are not read.</summary>
    internal IEnumerable<int> Unread => Enumerable.Range(1, Series).Except(Of);

    /// <summary>What is said of groups that are not read.</summary>
    internal string Said => string.Create(CultureInfo.InvariantCulture,
        $"{Of.Length} of {Series} groups are read, by the log's own numbers: {string.Join(", ", Unread)} {(Unread.Count() == 1 ? "is" : "are")} not; where the pack has no such group, --series {Of.Length} says so.");

    /// <summary>Volts by group, those of groups that are not read all unknown.</summary>
    /// <param name="used">Columns with volts, in their order.</param>
    /// <param name="rows">Rows of the log.</param>
    internal double[][] Volts(LogColumn[] used, int rows)
    {
        double[][] volts = new double[Series][];
        for (int i = 0; i < used.Length; i++)
            volts[Of[i] - 1] = used[i].Values;
        if (AllRead)
            return volts;
        double[] none = new double[rows];
        Array.Fill(none, double.NaN);
        foreach (int group in Unread)
            volts[group - 1] = none;
        return volts;
    }
}
