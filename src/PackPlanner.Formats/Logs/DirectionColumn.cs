using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>A column that tells charge from discharge where the current has no sign: states in words, single letters, or a column of yes and no under such a word.</summary>
internal static class DirectionColumn
{
    // What may be done or is switched through is not what is done: both are yes nearly always.
    private static readonly string[] NotStates = ["fet", "mos", "mosfet", "switch", "relay", "enable", "enabled", "allowed", "permit", "limit", "balance", "balancer", "fault", "alarm", "cycles", "count", "fehler", "time"];

    /// <summary>Finds it and notes in it how its entries are read; null where the current has a sign or no column tells.</summary>
    internal static LogColumn? Find(LogHead head, LogColumns columns)
    {
        if (columns[ColumnRole.Current] is not { } current || columns[ColumnRole.ChargeCurrent] is not null || current.Sample.Any(figure => figure < 0))
            return null;
        LogColumn[] others = [.. columns.All.Where(column => column != current && column.Unit is null)];
        LogColumn? words = Array.Find(others, column => column.Role is ColumnRole.Mode or ColumnRole.Unknown or ColumnRole.Flag or ColumnRole.Step
            && !column.Sample.Any(double.IsFinite)
            && Entries(head, column).Select(DirectionWords.Of).ToHashSet() is { Count: > 1 } found
            && (found.Contains(1) || found.Contains(-1)));
        words ??= Letters(head, others);
        if (words is not null)
            words.HoldsDirections = true;
        return words ?? YesOrNo(head, others);
    }

    private static LogColumn? Letters(LogHead head, LogColumn[] columns)
    {
        LogColumn? letters = Array.Find(columns, column => !column.Sample.Any(double.IsFinite) && column.Role is ColumnRole.Mode or ColumnRole.Unknown or ColumnRole.Flag
            && Entries(head, column).All(entry => entry.Trim().Length == 1)
            && Entries(head, column).Select(entry => entry.Trim().ToUpperInvariant()).ToHashSet() is { Count: <= 4 } found
            && ((found.Contains("C") && found.Contains("D")) || (found.Contains("L") && found.Contains("E"))));
        if (letters is not null)
            letters.DirectionOf = DirectionWords.OfLetter;
        return letters;
    }

    // Whether the entries come to both answers is known when all rows are read; the first rows may all be of one kind.
    private static LogColumn? YesOrNo(LogHead head, LogColumn[] columns)
    {
        foreach (LogColumn column in columns)
        {
            int direction = DirectionWords.Of(column.Heading.Raw);
            if (direction == 0 || NotStates.Any(column.Heading.Has) || Entries(head, column).DefaultIfEmpty("2").Any(entry => DirectionWords.YesOrNo(entry) == 2))
                continue;
            (column.YesIs, column.HoldsDirections, column.DirectionOf) = (direction, true, DirectionWords.YesOrNo);
            return column;
        }

        return null;
    }

    private static IEnumerable<string> Entries(LogHead head, LogColumn column) => head.Column(column.Index).Where(entry => entry.Length > 0);
}
