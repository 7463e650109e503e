using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Screens.Reading;

/// <summary>The first values that were used of the columns of a table of cells, in our own units, by their headings.</summary>
internal static class FirstValuesOfCells
{
    internal static Dictionary<string, string> Of(IReadOnlyList<ColumnReading> columns, CellRow[] rows)
    {
        Dictionary<string, string> first = [];
        foreach (ColumnReading column in columns)
            if (Words(column.ReadAs) is { } of)
                first.TryAdd(column.Name, string.Join(" ", rows.Take(3).Select(row => of(row) ?? "-")));
            else if (Figures(column.ReadAs) is { } figures)
                first.TryAdd(column.Name, string.Join(" ", rows.Take(3).Select(row => figures.Of(row) is { } known ? known.ToString("0.####", CultureInfo.InvariantCulture) + figures.Unit : "-")));
        return first;
    }

    private static Func<CellRow, string?>? Words(string readAs) => readAs switch
    {
        "cell" => row => row.Label,
        "slot" => row => row.Slot,
        "tray" => row => row.Tray,
        "model" => row => row.Model,
        "batch" => row => row.Batch,
        "chemistry" => row => row.Chemistry,
        "condition" => row => row.Condition,
        "remark" => row => row.Remark,
        "group" => row => row.Group?.ToString(CultureInfo.InvariantCulture),
        "date" or "time" => row => Day(row.Date),
        "laterDate" => row => Day(row.LaterDate),
        _ => null,
    };

    private static (Func<CellRow, double?> Of, string Unit)? Figures(string readAs) => readAs switch
    {
        "capacity" or "dischargeCapacity" or "chargeCapacity" => (row => row.CapacityAh, "Ah"),
        "ratedCapacity" => (row => row.RatedAh, "Ah"),
        "resistance" or "dcResistance" => (row => row.ResistanceMilliohm, "mΩ"),
        "acResistance" => (row => row.AcResistanceMilliohm ?? row.ResistanceMilliohm, "mΩ"),
        "restVoltage" or "voltage" => (row => row.RestV, "V"),
        "laterRestVoltage" => (row => row.LaterRestV, "V"),
        "endVoltage" => (row => row.TestEndV, "V"),
        "cutoffVoltage" => (row => row.TestCutoffV, "V"),
        "selfDischarge" => (row => row.SelfDischargeMillivoltPerDay, "mV/day"),
        "current" => (row => row.TestCurrentA, "A"),
        "temperature" => (row => row.TemperatureDegC, "°C"),
        "mass" => (row => row.MassG, "g"),
        _ => null,
    };

    private static string? Day(DateTime? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
