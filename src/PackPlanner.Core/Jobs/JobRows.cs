using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Jobs;

/// <summary>The rows of a job as every capability is to see them: read, added, and edited by hand.</summary>
internal static class JobRows
{
    internal static IReadOnlyList<CellRow> Of(Job job)
    {
        List<CellRow> rows = [.. job.Tables.SelectMany(table => table.Rows), .. job.AddedRows];
        if (job.Edits.IsEmpty)
            return rows;
        ILookup<string, (CellKey Key, CellEdit Edit)> edits = job.Edits.ToLookup(pair => pair.Key.Label, pair => (pair.Key, pair.Value));
        Dictionary<string, int> tests = new(StringComparer.Ordinal);
        for (int i = 0; i < rows.Count; i++)
        {
            int test = tests[rows[i].Label] = tests.GetValueOrDefault(rows[i].Label) + 1;
            foreach ((CellKey key, CellEdit edit) in edits[rows[i].Label])
            {
                if (key.Test == test)
                    rows[i] = With(rows[i], key.Field, edit.Value);
            }
        }

        return rows;
    }

    private static CellRow With(CellRow row, CellField field, JobValue? value)
    {
        double? number = value is JobValue.Number figure ? figure.Value : null;
        string? word = value is JobValue.Word words ? words.Value : null;
        DateTime? moment = value is JobValue.Moment day ? day.Value : null;
        return field switch
        {
            CellField.CapacityAh => row with { CapacityAh = number },
            CellField.ResistanceMilliohm => row with { ResistanceMilliohm = number },
            CellField.RestV => row with { RestV = number },
            CellField.Date => row with { Date = moment },
            CellField.LaterRestV => row with { LaterRestV = number },
            CellField.LaterDate => row with { LaterDate = moment },
            CellField.RatedAh => row with { RatedAh = number },
            CellField.Slot => row with { Slot = word },
            CellField.Tray => row with { Tray = word },
            CellField.Model => row with { Model = word },
            CellField.Batch => row with { Batch = word },
            CellField.Condition => row with { Condition = word },
            CellField.MassG => row with { MassG = number },
            CellField.TemperatureDegC => row with { TemperatureDegC = number },
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    /// <summary>What was read for a value, before any edit.</summary>
    internal static JobValue? Raw(Job job, CellKey key)
    {
        CellRow row = job.Tables.SelectMany(table => table.Rows).Concat(job.AddedRows)
            .Where(row => row.Label == key.Label).Skip(key.Test - 1).First();
        static JobValue? Figure(double? value) => value is { } known ? new JobValue.Number(known) : null;
        static JobValue? Words(string? value) => value is { } known ? new JobValue.Word(known) : null;
        static JobValue? Day(DateTime? value) => value is { } known ? new JobValue.Moment(known) : null;
        return key.Field switch
        {
            CellField.CapacityAh => Figure(row.CapacityAh),
            CellField.ResistanceMilliohm => Figure(row.ResistanceMilliohm),
            CellField.RestV => Figure(row.RestV),
            CellField.Date => Day(row.Date),
            CellField.LaterRestV => Figure(row.LaterRestV),
            CellField.LaterDate => Day(row.LaterDate),
            CellField.RatedAh => Figure(row.RatedAh),
            CellField.Slot => Words(row.Slot),
            CellField.Tray => Words(row.Tray),
            CellField.Model => Words(row.Model),
            CellField.Batch => Words(row.Batch),
            CellField.Condition => Words(row.Condition),
            CellField.MassG => Figure(row.MassG),
            CellField.TemperatureDegC => Figure(row.TemperatureDegC),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
