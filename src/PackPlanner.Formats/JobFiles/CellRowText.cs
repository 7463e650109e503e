using System.Globalization;
using System.Text.Json;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Cell rows in a job file: an object a row, what the table did not say left out.</summary>
internal static class CellRowText
{
    internal const string MomentFormat = "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF";

    private static readonly (string Name, Func<CellRow, double?> Get, Func<CellRow, double?, CellRow> Set)[] Figures =
    [
        ("capacityAh", row => row.CapacityAh, (row, value) => row with { CapacityAh = value }),
        ("capacityStepAh", row => row.CapacityStepAh, (row, value) => row with { CapacityStepAh = value }),
        ("testCurrentA", row => row.TestCurrentA, (row, value) => row with { TestCurrentA = value }),
        ("testCutoffV", row => row.TestCutoffV, (row, value) => row with { TestCutoffV = value }),
        ("testEndV", row => row.TestEndV, (row, value) => row with { TestEndV = value }),
        ("ratedAh", row => row.RatedAh, (row, value) => row with { RatedAh = value }),
        ("resistanceMilliohm", row => row.ResistanceMilliohm, (row, value) => row with { ResistanceMilliohm = value }),
        ("resistanceAfterS", row => row.ResistanceAfterS, (row, value) => row with { ResistanceAfterS = value }),
        ("acResistanceMilliohm", row => row.AcResistanceMilliohm, (row, value) => row with { AcResistanceMilliohm = value }),
        ("restV", row => row.RestV, (row, value) => row with { RestV = value }),
        ("selfDischargeMillivoltPerDay", row => row.SelfDischargeMillivoltPerDay, (row, value) => row with { SelfDischargeMillivoltPerDay = value }),
        ("laterRestV", row => row.LaterRestV, (row, value) => row with { LaterRestV = value }),
        ("temperatureDegC", row => row.TemperatureDegC, (row, value) => row with { TemperatureDegC = value }),
        ("massG", row => row.MassG, (row, value) => row with { MassG = value }),
        ("chargeOffsetAh", row => row.ChargeOffsetAh, (row, value) => row with { ChargeOffsetAh = value }),
        ("stateOfChargeFraction", row => row.StateOfChargeFraction, (row, value) => row with { StateOfChargeFraction = value }),
    ];

    private static readonly (string Name, Func<CellRow, string?> Get, Func<CellRow, string?, CellRow> Set)[] Words =
    [
        ("file", row => row.File, (row, value) => row with { File = value }),
        ("slot", row => row.Slot, (row, value) => row with { Slot = value }),
        ("tray", row => row.Tray, (row, value) => row with { Tray = value }),
        ("model", row => row.Model, (row, value) => row with { Model = value }),
        ("batch", row => row.Batch, (row, value) => row with { Batch = value }),
        ("chemistry", row => row.Chemistry, (row, value) => row with { Chemistry = value }),
        ("condition", row => row.Condition, (row, value) => row with { Condition = value }),
        ("remark", row => row.Remark, (row, value) => row with { Remark = value }),
    ];

    private static readonly (string Name, Func<CellRow, DateTime?> Get, Func<CellRow, DateTime?, CellRow> Set)[] Moments =
    [
        ("date", row => row.Date, (row, value) => row with { Date = value }),
        ("laterDate", row => row.LaterDate, (row, value) => row with { LaterDate = value }),
    ];

    private static readonly (string Name, Func<CellRow, int?> Get, Func<CellRow, int?, CellRow> Set)[] Wholes =
    [
        ("line", row => row.Line, (row, value) => row with { Line = value }),
        ("group", row => row.Group, (row, value) => row with { Group = value }),
    ];

    /// <summary>Everything that a row holds, by the names of the job file.</summary>
    internal static IReadOnlyDictionary<string, Func<CellRow, object?>> Columns { get; } = new Dictionary<string, Func<CellRow, object?>>(
    [
        new("label", row => row.Label),
        new("resistanceKind", row => KindName(row.ResistanceKind)),
        .. Figures.Select(column => KeyValuePair.Create<string, Func<CellRow, object?>>(column.Name, row => column.Get(row))),
        .. Words.Select(column => KeyValuePair.Create<string, Func<CellRow, object?>>(column.Name, row => column.Get(row))),
        .. Moments.Select(column => KeyValuePair.Create<string, Func<CellRow, object?>>(column.Name, row => column.Get(row))),
        .. Wholes.Select(column => KeyValuePair.Create<string, Func<CellRow, object?>>(column.Name, row => column.Get(row))),
    ]);

    private static string? KindName(ResistanceKind kind) => kind switch { ResistanceKind.Dc => "dc", ResistanceKind.Ac1Khz => "ac-1khz", _ => null };

    internal static void Write(Utf8JsonWriter writer, CellRow row)
    {
        writer.WriteStartObject();
        writer.WriteString("label", row.Label);
        foreach ((string name, Func<CellRow, int?> get, _) in Wholes)
        {
            if (get(row) is { } known)
                writer.WriteNumber(name, known);
        }

        foreach ((string name, Func<CellRow, double?> get, _) in Figures)
        {
            if (JsonFigures.Known(get(row)) is { } known)
                writer.WriteNumber(name, known);
        }

        if (KindName(row.ResistanceKind) is { } kind)
            writer.WriteString("resistanceKind", kind);
        foreach ((string name, Func<CellRow, string?> get, _) in Words)
        {
            if (get(row) is { } known)
                writer.WriteString(name, known);
        }

        foreach ((string name, Func<CellRow, DateTime?> get, _) in Moments)
        {
            if (get(row) is { } known)
                writer.WriteString(name, known.ToString(MomentFormat, CultureInfo.InvariantCulture));
        }

        writer.WriteEndObject();
    }

    internal static CellRow Read(JsonInput input)
    {
        CellRow row = new() { Label = input.Text("label") ?? "" };
        if (row.Label.Length == 0)
            input.Refuse("label", "is missing", "Give each row the label of its cell.");
        foreach ((string name, _, Func<CellRow, int?, CellRow> set) in Wholes)
            row = input.Whole(name) is { } known ? set(row, known) : row;
        foreach ((string name, _, Func<CellRow, double?, CellRow> set) in Figures)
            row = input.Number(name) is { } known ? set(row, known) : row;
        foreach ((string name, _, Func<CellRow, string?, CellRow> set) in Words)
            row = input.Text(name) is { } known ? set(row, known) : row;
        foreach ((string name, _, Func<CellRow, DateTime?, CellRow> set) in Moments)
            row = JobValueText.ReadMoment(input, name) is { } known ? set(row, known) : row;
        return row with
        {
            ResistanceKind = input.Text("resistanceKind") switch
            {
                "dc" => ResistanceKind.Dc,
                "ac-1khz" => ResistanceKind.Ac1Khz,
                _ => ResistanceKind.Unknown,
            },
        };
    }
}
