using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Reads a value of a cell as people type it. The column's name carries the unit, so a bare number is enough.</summary>
public static class TypedCellValue
{
    /// <summary>Names of all columns that can be changed by hand.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. Enum.GetValues<CellField>().Select(EditParts.Name)];

    /// <summary>The column of a name.</summary>
    /// <param name="name">In any case.</param>
    /// <returns>The column; null when there is none.</returns>
    public static CellField? Column(string name) => EditParts.FieldOf(name);

    /// <summary>Reads one value.</summary>
    /// <param name="field">The column.</param>
    /// <param name="typed">What was typed; empty or - makes it unknown.</param>
    /// <param name="value">The value in the column's unit; null for unknown, or when it was refused.</param>
    /// <returns>Why it was refused; null when it was read.</returns>
    public static string? Read(CellField field, string typed, out JobValue? value)
    {
        value = null;
        string text = typed.Trim();
        if (text is "" or "-")
            return null;
        switch (field)
        {
            case CellField.Slot or CellField.Tray or CellField.Model or CellField.Batch or CellField.Condition:
                value = new JobValue.Word(text);
                return null;
            case CellField.Date or CellField.LaterDate:
                if (!DateTime.TryParseExact(text, ["yyyy-MM-dd", "yyyy-MM-dd'T'HH:mm", CellRowText.MomentFormat], null, System.Globalization.DateTimeStyles.None, out DateTime moment))
                    return $"\"{text}\" is not a day; write it as 2026-11-24";
                value = new JobValue.Moment(moment);
                return null;
            case CellField.MassG:
                return Mass(text, out value);
            default:
                return Figure(field, text, out value) ?? NoCell(field, text, ref value);
        }
    }

    /// <summary>Reads volts that are not those of one cell, such as of a tap.</summary>
    /// <param name="typed">What was typed; empty or - makes them unknown.</param>
    /// <param name="value">Volts; null for unknown, or when they were refused.</param>
    /// <returns>Why they were refused; null when they were read.</returns>
    public static string? Volts(string typed, out JobValue? value)
    {
        value = null;
        return typed.Trim() is "" or "-" ? null : Figure(CellField.RestV, typed.Trim(), out value);
    }

    // A resting voltage may be negative: that is a finding, not a slip of the pen.
    private static string? Figure(CellField field, string text, out JobValue? value)
    {
        string? why = TypedGiven.Read(new GivenEntry(EditParts.Name(field), "", KindOf(field), ""), text.TrimStart('-'), percentBeside: false, out value);
        if (value is JobValue.Number number && text.StartsWith('-'))
            value = field is CellField.RestV or CellField.LaterRestV or CellField.TemperatureDegC ? new JobValue.Number(-number.Value) : null;
        return why ?? (value is null ? "it cannot be below zero" : null);
    }

    /// <summary>Whether a figure can be a reading of one cell; what no table may say is a slip of the pen here too: a point or a unit forgotten.</summary>
    /// <param name="field">A column of figures.</param>
    /// <param name="value">In the column's unit.</param>
    public static bool IsOfOneCell(CellField field, double value)
    {
        Dimension of = DimensionOf(field);
        (double low, double high) = Sensible.Range(of);
        double size = of == Dimension.Voltage ? Math.Abs(value) : value;
        // A dead cell has neither charge nor volts.
        return size <= high && (size >= low || (of is Dimension.Voltage or Dimension.Charge && size >= 0));
    }

    private static string? NoCell(CellField field, string text, ref JobValue? value)
    {
        if (value is not JobValue.Number number || IsOfOneCell(field, number.Value))
            return null;
        value = null;
        return DimensionOf(field) switch
        {
            Dimension.Charge => $"\"{text}\" is not the charge of one cell; write it like 4.1Ah or 4100mAh",
            Dimension.Resistance => $"\"{text}\" is not the resistance of one cell; write it like 32mohm",
            Dimension.Temperature => $"\"{text}\" is not the temperature of a cell; write it like 21degC",
            _ => $"\"{text}\" is not the voltage of one cell; write it like 3.61V",
        };
    }

    private static Dimension DimensionOf(CellField field) => KindOf(field) switch
    {
        GivenKind.AmpereHours => Dimension.Charge,
        GivenKind.Milliohm => Dimension.Resistance,
        GivenKind.DegC => Dimension.Temperature,
        _ => Dimension.Voltage,
    };

    private static string? Mass(string text, out JobValue? value)
    {
        value = null;
        if (!TypedQuantity.Split(text, out double number, out string unit) || unit is not ("" or "g" or "kg") || number < 0)
            return $"\"{text}\" is not a mass; write it as 69.8g";
        value = new JobValue.Number(unit == "kg" ? number * 1000 : number);
        return null;
    }

    private static GivenKind KindOf(CellField field) => field switch
    {
        CellField.CapacityAh or CellField.RatedAh => GivenKind.AmpereHours,
        CellField.ResistanceMilliohm => GivenKind.Milliohm,
        CellField.TemperatureDegC => GivenKind.DegC,
        _ => GivenKind.Volts,
    };
}
