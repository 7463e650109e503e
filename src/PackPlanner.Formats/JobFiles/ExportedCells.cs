using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>The cells of a job as a table that other programs read, and that this one reads again as the same rows.</summary>
internal static class ExportedCells
{
    // By the names of the job file, in the order of the columns. A new figure of a row comes last, under its own name, until it is put here.
    private static readonly KeyValuePair<string, string>[] Headings =
    [
        new("label", "cell"), new("group", "group"), new("capacityAh", "capacity_Ah"), new("ratedAh", "rated_Ah"),
        new("resistanceMilliohm", "resistance_mohm"), new("resistanceKind", "resistance_kind"), new("acResistanceMilliohm", "ac_resistance_mohm"),
        new("restV", "rest_V"), new("date", "date"), new("laterRestV", "later_rest_voltage_V"), new("laterDate", "later_date"),
        new("selfDischargeMillivoltPerDay", "self_discharge (mV/day)"), new("testEndV", "end_V"), new("testCutoffV", "cutoff_V"), new("testCurrentA", "current_A"),
        new("temperatureDegC", "temperature_degC"), new("massG", "mass_g"), new("stateOfChargeFraction", "state_of_charge"),
        new("chargeOffsetAh", "charge_offset_Ah"), new("slot", "slot"), new("tray", "tray"), new("model", "model"), new("batch", "batch"),
        new("chemistry", "chemistry"), new("condition", "condition"), new("remark", "remark"),
    ];

    // Where a row was read, and the step of its figures, follow from the table itself; the seconds stand in a heading.
    private static readonly string[] NotWritten = ["file", "line", "capacityStepAh"];

    internal static MainTable Of(IReadOnlyList<CellRow> rows)
    {
        Dictionary<string, string> headings = new(Headings);
        List<string> names = [.. Headings.Select(column => column.Key), .. CellRowText.Columns.Keys.Except(Headings.Select(column => column.Key)).Except(NotWritten)];
        if (AfterS(rows) is { } seconds)
        {
            headings["resistanceMilliohm"] = string.Create(CultureInfo.InvariantCulture, $"resistance_{seconds}s_mohm");
            names.Remove("resistanceAfterS");
        }

        string[] used = [.. names.Where(name => rows.Any(row => CellRowText.Columns[name](row) is not null))];
        return new MainTable(
            [.. used.Select(name => headings.GetValueOrDefault(name, name))],
            [.. rows.Select(row => used.Select(name => Plain(CellRowText.Columns[name](row))).ToArray())]);
    }

    // One figure for all resistances can stand in their heading, where readers look for it.
    private static double? AfterS(IReadOnlyList<CellRow> rows)
    {
        CellRow[] known = [.. rows.Where(row => row.ResistanceMilliohm is not null)];
        return known.Length > 0 && known[0].ResistanceAfterS is { } seconds && known.All(row => row.ResistanceAfterS == seconds && row.ResistanceKind == ResistanceKind.Dc) ? seconds : null;
    }

    private static object? Plain(object? value) => value is DateTime moment
        ? moment.ToString(moment.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : moment.Millisecond == 0 ? "yyyy-MM-dd HH:mm:ss" : "yyyy-MM-dd HH:mm:ss.fff", CultureInfo.InvariantCulture)
        : value;
}
