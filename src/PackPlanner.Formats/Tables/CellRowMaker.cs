using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>Makes a row of a table of cells out of its columns.</summary>
internal sealed class CellRowMaker(
    SourceFile source, CellTableLayout layout, Dictionary<ColumnRole, FigureColumn> figures, IReadOnlyList<TextRow> rows, GroupNumbers groups, CellRemarks remarks)
{
    private static readonly double LowestRestV = Chemistries.All.Min(known => known.DoNotRechargeV);

    private readonly FigureColumn? _capacity = First(figures, ColumnRole.DischargeCapacity, ColumnRole.Capacity, ColumnRole.ChargeCapacity);
    private readonly FigureColumn? _dc = First(figures, ColumnRole.DcResistance, ColumnRole.Resistance);
    private readonly FigureColumn? _ac = First(figures, ColumnRole.AcResistance);
    private readonly FigureColumn? _rest = First(figures, ColumnRole.RestVoltage, ColumnRole.Voltage);
    private readonly double _middleAh = Robust.UpperMedian(First(figures, ColumnRole.DischargeCapacity, ColumnRole.Capacity, ColumnRole.ChargeCapacity)?.All ?? []);
    private readonly StampReader? _dates = StampReader.ForDates(layout, rows);

    /// <summary>What was assumed on the way.</summary>
    internal IReadOnlyList<string> Understood => [.. Sentences(figures), .. _dates?.Understood is { } order ? [order] : Array.Empty<string>()];

    internal CellRow Make(TextRow row, int i)
    {
        double? capacityAh = SlippedUnit(row, i) ? null : Sense(_capacity, row, i, allowZero: true);
        FigureColumn? resistance = _dc?[i] is null && _ac?[i] is not null ? _ac : _dc;
        double? milliohm = Sense(resistance, row, i);
        return new CellRow
        {
            Label = Label(row, i),
            File = source.Name,
            Line = row.Line,
            CapacityAh = capacityAh,
            CapacityStepAh = capacityAh is null ? null : _capacity!.Step,
            TestCurrentA = Sense(figures.GetValueOrDefault(ColumnRole.Current), row, i) is { } amperes ? Math.Abs(amperes) : null,
            TestCutoffV = Sense(figures.GetValueOrDefault(ColumnRole.CutoffVoltage), row, i),
            TestEndV = Sense(figures.GetValueOrDefault(ColumnRole.EndVoltage), row, i),
            RatedAh = Sense(figures.GetValueOrDefault(ColumnRole.RatedCapacity), row, i),
            ResistanceMilliohm = milliohm,
            ResistanceKind = milliohm is null ? ResistanceKind.Unknown : KindOf(resistance!, row),
            ResistanceAfterS = milliohm is null || resistance == _ac ? null : ResistanceHeading.AfterS(resistance!.Column.Heading.Raw),
            AcResistanceMilliohm = resistance == _ac ? null : Sense(_ac, row, i),
            RestV = Volts(_rest, row, i) ?? DeepAtStart(row, i),
            Date = Stamp(ColumnRole.Date, row) ?? Stamp(ColumnRole.Time, row),
            LaterRestV = Volts(figures.GetValueOrDefault(ColumnRole.LaterRestVoltage), row, i),
            LaterDate = Stamp(ColumnRole.LaterDate, row),
            SelfDischargeMillivoltPerDay = figures.GetValueOrDefault(ColumnRole.SelfDischarge)?[i],
            TemperatureDegC = Sense(figures.GetValueOrDefault(ColumnRole.Temperature), row, i),
            MassG = Sense(figures.GetValueOrDefault(ColumnRole.Mass), row, i),
            Slot = Text(ColumnRole.Slot, row),
            Tray = Text(ColumnRole.Tray, row),
            Model = Text(ColumnRole.Model, row),
            Batch = Text(ColumnRole.Batch, row),
            Chemistry = Text(ColumnRole.Chemistry, row),
            Condition = Text(ColumnRole.Condition, row),
            Remark = Remark(row),
            Group = groups[i],
            ChargeOffsetAh = figures.GetValueOrDefault(ColumnRole.ChargeOffset)?[i],
            StateOfChargeFraction = Share(figures.GetValueOrDefault(ColumnRole.StateOfCharge)?[i], row),
        };
    }

    private static FigureColumn? First(Dictionary<ColumnRole, FigureColumn> figures, params ColumnRole[] roles) =>
        roles.Select(figures.GetValueOrDefault).FirstOrDefault(column => column is not null);

    private static List<string> Sentences(Dictionary<ColumnRole, FigureColumn> figures)
    {
        List<string> sentences = [];
        if (First(figures, ColumnRole.DischargeCapacity, ColumnRole.Capacity) is null && figures.TryGetValue(ColumnRole.ChargeCapacity, out FigureColumn? charged))
            sentences.Add($"Column {charged.Column.Name} is the charge that went in; no discharge capacity is there, so it stands for the capacity.");
        else if (figures.TryGetValue(ColumnRole.DischargeCapacity, out FigureColumn? delivered) && figures.TryGetValue(ColumnRole.ChargeCapacity, out charged))
            sentences.Add($"The capacity is column {delivered.Column.Name}, not the charge that went in ({charged.Column.Name}).");
        if (!figures.ContainsKey(ColumnRole.RestVoltage) && figures.TryGetValue(ColumnRole.Voltage, out FigureColumn? volts))
            sentences.Add($"Column {volts.Column.Name} is taken as resting volts.");
        return sentences;
    }

    private string Label(TextRow row, int i)
    {
        string label = Text(ColumnRole.Label, row) ?? "";
        if (label.Length > 0)
            return label;
        if (layout[ColumnRole.Group] is { } group && row[group.Index].Length > 0)
            return row[group.Index];
        string slot = Text(ColumnRole.Slot, row) ?? "";
        string file = Path.GetFileNameWithoutExtension(source.Name);
        return slot.Length > 0 ? $"{file} slot {slot} row {i + 1}" : rows.Count == 1 ? file : $"{file} row {i + 1}";
    }

    private string? Text(ColumnRole role, TextRow row) => layout[role] is { } column && row[column.Index].Length > 0 ? row[column.Index] : null;

    private DateTime? Stamp(ColumnRole role, TextRow row)
    {
        if (layout[role] is not { } column || _dates is null || row[column.Index].Length == 0)
            return null;
        if (_dates.TryRead(row[column.Index], out DateTime stamp))
            return stamp;
        // What is called a time can as well be a duration or a clock.
        if (role != ColumnRole.Time && !RowWords.IsNoFigure(row[column.Index]))
            remarks.NoDate(row, column);
        return null;
    }

    private string? Remark(TextRow row)
    {
        string? own = Text(ColumnRole.Remark, row);
        string? words = remarks.Of(row);
        return own is null ? words : words is null ? own : $"{own}; {words}";
    }

    private ResistanceKind KindOf(FigureColumn column, TextRow row)
    {
        string said = Text(ColumnRole.ResistanceKind, row) ?? "";
        if (said.Length > 0)
            return ResistanceHeading.IsAc(said) ? ResistanceKind.Ac1Khz : ResistanceHeading.IsDc(said) ? ResistanceKind.Dc : ResistanceKind.Unknown;
        return column.Column.Role switch
        {
            ColumnRole.AcResistance => ResistanceKind.Ac1Khz,
            ColumnRole.DcResistance => ResistanceKind.Dc,
            _ => ResistanceKind.Unknown,
        };
    }

    // One entry in Ah where all others stand in mAh is no dead cell: about a thousandth of what the others have.
    private bool SlippedUnit(TextRow row, int i)
    {
        if (_capacity?[i] is not { } value || value <= 0 || value * 1000 / _middleAh is not (> 0.5 and < 1.5))
            return false;
        remarks.OutsideSense(row, _capacity.Column, row[_capacity.Column.Index]);
        return true;
    }

    // A figure that no cell can have is left out with its reason; its row stays.
    private double? Sense(FigureColumn? column, TextRow row, int i, bool allowZero = false)
    {
        if (column?[i] is not { } value)
            return null;
        (double low, double high) = Sensible.Range(column.Of);
        double size = column.Of is Dimension.Current ? Math.Abs(value) : value;
        if ((allowZero && size >= 0 && size < low) || (size >= low && size <= high))
            return value;
        remarks.OutsideSense(row, column.Column, row[column.Column.Index]);
        return null;
    }

    // Negative and very low volts are findings, not misreadings: a reversed probe or a dead cell.
    private double? Volts(FigureColumn? column, TextRow row, int i)
    {
        if (column?[i] is not { } volts)
            return null;
        if (Math.Abs(volts) <= Sensible.Range(Dimension.Voltage).High)
            return volts;
        remarks.OutsideSense(row, column.Column, row[column.Column.Index]);
        return null;
    }

    // Below what any chemistry may stand at: that a test then charged it, or could not, does not make it a good cell. Higher ones are of a
    // cell that was charged for the test, and tell nothing of how it rested.
    private double? DeepAtStart(TextRow row, int i) => Volts(figures.GetValueOrDefault(ColumnRole.StartVoltage), row, i) is { } start && start < LowestRestV ? start : null;

    private double? Share(double? fraction, TextRow row)
    {
        if (fraction is null or (>= -1 and <= 1.2))
            return fraction;
        remarks.OutsideSense(row, layout[ColumnRole.StateOfCharge]!, row[layout[ColumnRole.StateOfCharge]!.Index]);
        return null;
    }
}
