using System.IO.Compression;
using PackPlanner.Tests.Fuzz;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Misreading;

/// <summary>Real tables and logs with the meaning of their columns, told here by hand.</summary>
internal static class KnownTables
{
    /// <summary>Tables of cells: an invented one with every reading, and three of retired cells as measured.</summary>
    internal static KnownTable[] Cells { get; } =
    [
        Of("invented", Lines(FuzzInputs.Cells), ("label", "cell", "Cell", ""), ("capacity_Ah", "capacity", "Capacity", "Ah"),
            ("resistance_mOhm", "resistance", "Internal resistance", "mOhm"), ("rest_V", "rest", "Rest voltage", "V"), ("slot", "other", "Slot", "")),
        Retired("pulsebat/LFP_35Ah_cells.csv"),
        Retired("pulsebat/LMO_10Ah_cells.csv"),
        Retired("pulsebat/NMC_2.1Ah_cells.csv"),
    ];

    /// <summary>The whole log of a real or simulated pack in the order of its file.</summary>
    internal static KnownTable Log(string name, int most = int.MaxValue)
    {
        string[] lines = Lines(Text("sample-logs/" + name));
        char separator = lines[0].Contains(';', StringComparison.Ordinal) ? ';' : ',';
        string[][] rows = [.. lines.Select(line => line.Split(separator))];
        int first = rows[1][0].Any(char.IsAsciiDigit) ? 1 : 2;
        string[][] data = [.. rows.Skip(first).Where(row => row.Length == rows[0].Length && row[0] != rows[0][0]).Take(most)];
        KnownColumn[] columns =
        [
            .. rows[0].Select((heading, i) => LogColumn(heading, first == 2 ? rows[1][i] : "", i, [.. data.Select(row => row[i].Replace(',', '.'))])),
        ];
        return new KnownTable(name, columns) { Separator = separator, Mark = separator == ';' && name == "sample03.csv" ? ',' : '.' };
    }

    private static KnownColumn LogColumn(string heading, string unitBelow, int index, string[] fields)
    {
        string lower = heading.ToLowerInvariant();
        bool stamp = fields[0].Contains(':', StringComparison.Ordinal);
        string unit = unitBelow.Length > 0 ? unitBelow : lower.Contains("(mv)", StringComparison.Ordinal) ? "mV" : "";
        if (index == 0)
            return new KnownColumn(stamp ? "stamp" : "time", "Time", stamp ? "" : "s", fields);
        if (lower.Contains("current", StringComparison.Ordinal) || lower.Contains("strom", StringComparison.Ordinal))
            return new KnownColumn("current", "Current", "A", fields);
        bool cell = (lower.StartsWith("cell", StringComparison.Ordinal) || lower.StartsWith("zelle", StringComparison.Ordinal)
            || lower.StartsWith("group", StringComparison.Ordinal) || lower.StartsWith('u')) && lower.Any(char.IsAsciiDigit);
        return cell
            ? new KnownColumn("volts", $"Cell {index - 1}", unit == "mV" ? "mV" : "V", fields)
            : new KnownColumn(lower.StartsWith('t') ? "temperature" : "figure", lower.StartsWith('t') ? $"Temp {index}" : heading, lower.StartsWith('t') ? "degC" : "", fields);
    }

    private static KnownTable Retired(string name) => Of(name, Lines(Text(name)),
        ("cell_id", "cell", "Cell", ""), ("chemistry", "other", "Chemistry", ""), ("capacity_Ah", "capacity", "Capacity", "Ah"),
        ("ocv_10min_rest_V_at_30pct", "rest", "Rest voltage", "V"), ("r5s_discharge_1C_mohm_at_30pct", "resistance", "Internal resistance", "mOhm"));

    private static KnownTable Of(string name, string[] lines, params (string InFile, string Role, string Heading, string Unit)[] columns)
    {
        string[] headings = lines[0].Split(',');
        string[][] rows = [.. lines.Skip(1).Select(line => line.Split(','))];
        return new KnownTable(name,
        [
            .. columns.Select(column => new KnownColumn(column.Role, column.Heading, column.Unit,
                [.. rows.Select(row => row[Array.IndexOf(headings, column.InFile)])])),
        ]);
    }

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static string Text(string name)
    {
        using Stream file = File.OpenRead(Repository.Data(name.Split('/')));
        using Stream plain = name.EndsWith(".gz", StringComparison.Ordinal) ? new GZipStream(file, CompressionMode.Decompress) : file;
        using StreamReader reader = new(plain);
        return reader.ReadToEnd();
    }
}
