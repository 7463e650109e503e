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

    /// <summary>A job whose rows are others, with each value changed by hand at the row that it was changed in.</summary>
    /// <param name="before">The job before the rows changed.</param>
    /// <param name="after">The same with other rows, and the edits of before.</param>
    /// <returns>The job after; an edit whose row is gone, or never was, is gone too.</returns>
    /// <remarks>Edits count the tests of a label in the job's order, and rows that come in before others shift that count.</remarks>
    internal static Job WithEditsAtTheirRows(Job before, Job after)
    {
        if (before.Edits.IsEmpty)
            return after;
        HashSet<string> labels = [.. before.Edits.Keys.Select(key => key.Label)];
        Dictionary<(string Label, int Test), (string Source, int Row)> was = Places(before, labels).ToDictionary(place => (place.Label, place.Test), place => (place.Source, place.Row));
        Dictionary<(string Source, int Row), int> now = Places(after, labels).ToDictionary(place => (place.Source, place.Row), place => place.Test);
        KeyValuePair<CellKey, CellEdit>[] kept =
        [
            .. before.Edits.Where(edit => was.TryGetValue((edit.Key.Label, edit.Key.Test), out (string, int) place) && now.ContainsKey(place))
                .Select(edit => KeyValuePair.Create(edit.Key with { Test = now[was[(edit.Key.Label, edit.Key.Test)]] }, edit.Value)),
        ];
        return kept.Select(edit => edit.Key).SequenceEqual(before.Edits.Keys) ? after : after with { Edits = before.Edits.Clear().AddRange(kept) };
    }

    // Rows added by hand stand behind those of all tables, and belong to no source.
    private static IEnumerable<(string Label, int Test, string Source, int Row)> Places(Job job, HashSet<string> labels)
    {
        Dictionary<string, int> tests = new(StringComparer.Ordinal);
        foreach ((string source, IReadOnlyList<CellRow> rows) in job.Tables.Select(table => (table.Source.Id, table.Rows)).Append(("", job.AddedRows)))
        {
            for (int row = 0; row < rows.Count; row++)
            {
                if (labels.Contains(rows[row].Label))
                    yield return (rows[row].Label, tests[rows[row].Label] = tests.GetValueOrDefault(rows[row].Label) + 1, source, row);
            }
        }
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
