using PackPlanner.Formats.Json;

namespace PackPlanner.Formats;

/// <summary>What became of every row that was read: used, or set aside with a reason. Nothing is lost in silence.</summary>
public sealed record RowAccount
{
    /// <summary>Rows set aside are named one by one up to this many for each reason; all are counted.</summary>
    public const int NamedForEachReason = 1000;

    /// <summary>No file was read.</summary>
    public static RowAccount Nothing { get; } = new();

    /// <summary>Rows of data that were read; headings, title lines and empty lines are no rows; a line of separators alone is a blank row.</summary>
    public int RowsRead { get; init; }

    /// <summary>Rows that were used.</summary>
    public int RowsUsed { get; init; }

    /// <summary>Rows set aside, at most <see cref="NamedForEachReason"/> for each reason.</summary>
    public IReadOnlyList<SetAsideRow> RowsSetAside { get; init; } = [];

    /// <summary>All rows set aside, counted by reason; RowsRead = RowsUsed + the sum of these.</summary>
    public IReadOnlyList<SetAsideCount> Counts { get; init; } = [];

    /// <summary>Single values lost in rows that were used.</summary>
    public IReadOnlyList<SamplesSetAside> Samples { get; init; } = [];

    /// <summary>The account of several files as one.</summary>
    /// <param name="accounts">One for each file, in the order of the files.</param>
    /// <returns>Sums; the same reason in two files is counted together.</returns>
    public static RowAccount Together(IEnumerable<RowAccount> accounts)
    {
        RowAccount[] all = [.. accounts];
        return new RowAccount
        {
            RowsRead = all.Sum(account => account.RowsRead),
            RowsUsed = all.Sum(account => account.RowsUsed),
            RowsSetAside =
            [
                .. all.SelectMany(account => account.RowsSetAside)
                    .GroupBy(row => row.Reason)
                    .SelectMany(rows => rows.Take(NamedForEachReason)),
            ],
            Counts =
            [
                .. all.SelectMany(account => account.Counts)
                    .GroupBy(count => count.Reason)
                    .Select(counts => new SetAsideCount(counts.Key, counts.Sum(count => count.Count), counts.First().FirstLine)),
            ],
            Samples =
            [
                .. all.SelectMany(account => account.Samples)
                    .GroupBy(samples => (samples.Column, samples.Kind))
                    .Select(samples => samples.First() with { Count = samples.Sum(each => each.Count) }),
            ],
        };
    }

    /// <summary>Puts this account into an answer.</summary>
    /// <typeparam name="T">The verb's answer.</typeparam>
    /// <param name="answer">The answer so far.</param>
    /// <returns>The same answer with rows read, used and set aside.</returns>
    public T Fill<T>(T answer)
        where T : Answer => (T)((Answer)answer with
        {
            RowsRead = RowsRead,
            RowsUsed = RowsUsed,
            RowsSetAside = RowsSetAside,
            RowsSetAsideCounts = Counts,
            SamplesSetAside = Samples,
        });
}
