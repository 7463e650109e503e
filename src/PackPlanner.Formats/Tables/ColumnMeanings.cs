namespace PackPlanner.Formats.Tables;

/// <summary>The meanings that a user can give a column, each by the name that look prints.</summary>
public static class ColumnMeanings
{
    /// <summary>For a column that is to be passed over.</summary>
    public const string NotUsed = "not used";

    private static readonly ColumnRole[] OfCells =
    [
        ColumnRole.Label, ColumnRole.Capacity, ColumnRole.DischargeCapacity, ColumnRole.ChargeCapacity, ColumnRole.RatedCapacity,
        ColumnRole.Resistance, ColumnRole.DcResistance, ColumnRole.AcResistance, ColumnRole.RestVoltage, ColumnRole.LaterRestVoltage, ColumnRole.EndVoltage,
        ColumnRole.CutoffVoltage, ColumnRole.SelfDischarge, ColumnRole.Current, ColumnRole.Temperature, ColumnRole.Mass, ColumnRole.StateOfCharge, ColumnRole.ChargeOffset,
        ColumnRole.Group, ColumnRole.Slot, ColumnRole.Tray, ColumnRole.Model, ColumnRole.Batch, ColumnRole.Chemistry, ColumnRole.Condition, ColumnRole.Remark,
        ColumnRole.Date, ColumnRole.LaterDate,
    ];

    private static readonly ColumnRole[] OfLogs =
    [
        ColumnRole.Time, ColumnRole.Date, ColumnRole.Clock, ColumnRole.Current, ColumnRole.ChargeCurrent, ColumnRole.CellVoltage, ColumnRole.PackVoltage, ColumnRole.Voltage, ColumnRole.Temperature,
        ColumnRole.StateOfCharge, ColumnRole.Capacity, ColumnRole.Energy, ColumnRole.Step, ColumnRole.Signal, ColumnRole.Value,
    ];

    /// <summary>Meanings that a column of this kind of file can have, most wanted first.</summary>
    /// <param name="kind">cells, tester-log or pack-log.</param>
    public static IReadOnlyList<string> Of(string kind) => [.. (kind == "cells" ? OfCells : OfLogs).Select(RoleNames.Of), NotUsed];

    /// <summary>Units that a column of this meaning can be written in.</summary>
    /// <param name="meaning">As look prints it.</param>
    public static IReadOnlyList<string> UnitsOf(string meaning) => Find(meaning) is { } role ? FileUnit.NamesOf(ColumnNames.DimensionOf(role)) : [];

    /// <summary>All meanings, for messages.</summary>
    internal static IReadOnlyList<string> All => [.. OfCells.Concat(OfLogs).Distinct().Select(RoleNames.Of), "group 3", NotUsed];

    /// <summary>Finds a meaning by its name; case, blanks and dashes do not count.</summary>
    internal static ColumnRole? Find(string meaning)
    {
        string plain = HeadingWords.Plain(meaning);
        if (plain is "notused" or "ignore" or "nothing")
            return ColumnRole.Unknown;
        foreach (ColumnRole role in OfCells.Concat(OfLogs))
            if (HeadingWords.Plain(RoleNames.Of(role)) == plain || HeadingWords.Plain(role.ToString()) == plain)
                return role;
        return null;
    }
}
