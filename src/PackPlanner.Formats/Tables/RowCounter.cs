using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Tables;

/// <summary>Keeps count while a file is read; gives the account at the end.</summary>
internal sealed class RowCounter(string file)
{
    // Words that no two rows share say no more than their number; a column of them would make a list as long as the file.
    private const int KindsOfOneColumn = 12;
    private const string OtherWords = "of other kinds";

    private readonly Dictionary<string, int> _kindsOf = [];
    private readonly Dictionary<string, (int Count, int FirstLine)> _reasons = [];
    private readonly List<SetAsideRow> _rows = [];
    private readonly Dictionary<(string Column, string Kind), (int Count, int FirstLine)> _samples = [];

    internal int Used { get; set; }

    internal int SetAsideRows { get; private set; }

    internal int SamplesLost { get; private set; }

    internal void SetAside(int line, string reason)
    {
        SetAsideRows++;
        (int count, int first) = _reasons.GetValueOrDefault(reason, (0, line));
        _reasons[reason] = (count + 1, Math.Min(first, line));
        if (count < RowAccount.NamedForEachReason)
            _rows.Add(new SetAsideRow(file, line, reason));
    }

    internal void Sample(string column, string kind, int line, int times = 1)
    {
        SamplesLost += times;
        if (!_samples.ContainsKey((column, kind)))
        {
            int kinds = _kindsOf[column] = _kindsOf.GetValueOrDefault(column) + 1;
            kind = kinds > KindsOfOneColumn ? OtherWords : kind;
        }

        (int count, int first) = _samples.GetValueOrDefault((column, kind), (0, line));
        _samples[(column, kind)] = (count + times, Math.Min(first, line));
    }

    /// <summary>Adds what was counted in a later part of the same file.</summary>
    internal void Take(RowCounter later)
    {
        Dictionary<string, int> named = _rows.GroupBy(row => row.Reason).ToDictionary(rows => rows.Key, rows => rows.Count());
        foreach (SetAsideRow row in later._rows)
            if ((named[row.Reason] = named.GetValueOrDefault(row.Reason) + 1) <= RowAccount.NamedForEachReason)
                _rows.Add(row);
        foreach ((string reason, (int count, int first)) in later._reasons)
        {
            (int before, int firstBefore) = _reasons.GetValueOrDefault(reason, (0, first));
            _reasons[reason] = (before + count, Math.Min(firstBefore, first));
        }

        SetAsideRows += later.SetAsideRows;
        foreach (((string column, string kind), (int count, int first)) in later._samples)
            Sample(column, kind, first, count);
    }

    internal RowAccount Account() => new()
    {
        RowsRead = Used + SetAsideRows,
        RowsUsed = Used,
        RowsSetAside = [.. _rows.OrderBy(row => row.Line)],
        Counts = [.. _reasons.Select(reason => new SetAsideCount(reason.Key, reason.Value.Count, reason.Value.FirstLine)).OrderBy(count => count.FirstLine)],
        Samples = [.. _samples.Select(lost => new SamplesSetAside(lost.Key.Column, lost.Key.Kind, lost.Value.Count, lost.Value.FirstLine))],
    };
}
