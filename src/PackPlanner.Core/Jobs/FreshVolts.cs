using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Jobs;

/// <summary>A resting voltage typed on assembly day: the reading and its day are one change, also when it is taken back.</summary>
public static class FreshVolts
{
    /// <summary>Writes the reading down.</summary>
    /// <param name="row">The test's row as it stands.</param>
    /// <param name="test">Which test of the cell, from 1.</param>
    /// <param name="reading">Volts and origin; a value of null makes the reading unknown.</param>
    /// <param name="today">The day of the reading.</param>
    /// <returns>The change.</returns>
    // A later reading that the table holds is kept as a reading of its own: what the cell lost until then is no less true for the new one.
    public static JobChange Write(CellRow row, int test, CellEdit reading, DateOnly today)
    {
        (CellKey volts, CellKey day) = Keys(row.Label, test);
        CellEdit dated = new(reading.Value is null ? null : new JobValue.Moment(today.ToDateTime(TimeOnly.MinValue)), reading.From);
        return new JobChange($"fresh V of {row.Label}", job => job with
        {
            AddedRows = row is { LaterRestV: not null, LaterDate: not null } && !job.Edits.ContainsKey(volts)
                ? job.AddedRows.Add(new CellRow { Label = row.Label, RestV = row.LaterRestV, Date = row.LaterDate })
                : job.AddedRows,
            Edits = job.Edits.SetItem(volts, reading).SetItem(day, dated),
        });
    }

    /// <summary>Brings back what was read.</summary>
    /// <param name="label">The cell.</param>
    /// <param name="test">Which test of it, from 1.</param>
    /// <returns>The change.</returns>
    public static JobChange Restore(string label, int test)
    {
        (CellKey volts, CellKey day) = Keys(label, test);
        return new JobChange($"restore fresh V of {label}", job => job with { Edits = job.Edits.Remove(volts).Remove(day) });
    }

    private static (CellKey Volts, CellKey Day) Keys(string label, int test) =>
        (new CellKey(label, test, CellField.LaterRestV), new CellKey(label, test, CellField.LaterDate));
}
