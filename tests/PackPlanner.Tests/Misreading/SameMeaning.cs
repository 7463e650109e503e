using System.Text;

namespace PackPlanner.Tests.Misreading;

/// <summary>Changes of the writing that leave the meaning as it was: whatever reads the table must give the same answer.</summary>
internal static class SameMeaning
{
    private static readonly Dictionary<string, string[]> Headings = new()
    {
        ["cell"] = ["Cell", "Zelle", "Cellule", "Celda", "电芯编号", "Cell ID", "Seriennummer der Zelle"],
        ["capacity"] = ["Capacity", "Kapazität", "Capacité", "Capacidad", "容量", "Measured capacity", "gemessene Kapazität"],
        ["resistance"] = ["Internal resistance", "Innenwiderstand", "Résistance interne", "Resistencia interna", "内阻", "IR", "Ri"],
        ["rest"] = ["Rest voltage", "Ruhespannung", "Tension à vide", "Tensión en reposo", "开路电压", "OCV", "Leerlaufspannung"],
        ["time"] = ["Time", "Zeit", "Temps", "Tiempo", "时间", "Elapsed", "Laufzeit"],
        ["current"] = ["Current", "Strom", "Courant", "Corriente", "电流", "Pack current", "Batteriestrom"],
        ["volts"] = ["Cell", "Zelle", "Cellule", "Celda", "单体电压", "Group voltage", "Zellspannung"],
    };

    /// <summary>Each change by itself, by name; null where a table has nothing that it could change.</summary>
    internal static IReadOnlyDictionary<string, Func<KnownTable, Random, KnownTable?>> All { get; } = new Dictionary<string, Func<KnownTable, Random, KnownTable?>>
    {
        ["the unit of capacity with its label"] = (table, _) => Unit(table, "capacity", "Ah", "mAh", 1000m),
        ["the unit of resistance with its label"] = (table, _) => Unit(table, "resistance", "mOhm", "Ohm", 0.001m),
        ["the unit of resting volts with its label"] = (table, _) => Unit(table, "rest", "V", "mV", 1000m),
        ["the unit of current with its label"] = (table, _) => Unit(table, "current", "A", "mA", 1000m),
        ["the unit of cell volts with its label"] = (table, _) => Unit(table, "volts", "V", "mV", 1000m),
        ["the unit of time with its label"] = (table, _) => Unit(table, "time", "s", "ms", 1000m),
        ["the unit of temperature with its label"] = (table, _) => table["temperature"] is null ? null : Kelvin(table),
        ["a decimal comma and semicolons"] = (table, _) => table with { Mark = ',', Separator = ';' },
        ["another separator"] = (table, random) => table with { Separator = table.Mark == ',' ? ";\t|"[random.Next(3)] : ";\t|,"[random.Next(4)] },
        ["another encoding"] = (table, random) => table with { Encoding = new[] { new UTF8Encoding(true), Encoding.Unicode, Encoding.BigEndianUnicode }[random.Next(3)] },
        ["other line ends"] = (table, _) => table with { LineEnd = "\r\n" },
        ["quotes around every field"] = (table, _) => table with { Quoted = true },
        ["lines above the heading"] = (table, _) => table with { Above = ["Measured in the shed", ""] },
        ["columns moved with their headings"] = (table, random) => table with { Columns = Shuffled(table.Columns, random) },
        ["rows in another order"] = (table, random) => table.Ordered(Shuffled([.. Enumerable.Range(0, table.Rows)], random)),
        ["headings in another language"] = Translated,
        ["the sign of the current turned"] = (table, _) => table["current"] is null ? null : table.Scaled("current", -1, null),
        ["a column more that nobody knows"] = (table, _) => table with { Columns = [.. table.Columns, new KnownColumn("other", "Xyzzy", "", [.. Enumerable.Repeat("zz", table.Rows)])] },
        ["repeated headings between the rows"] = (table, _) => table["cell"] is null ? null : table with { RepeatsHeading = true },
    };

    /// <summary>Some of the changes, one after another.</summary>
    internal static KnownTable Some(KnownTable table, Random random)
    {
        KeyValuePair<string, Func<KnownTable, Random, KnownTable?>>[] changes = Shuffled([.. All], random);
        foreach ((string name, Func<KnownTable, Random, KnownTable?> change) in changes.Take(random.Next(1, 6)))
            table = change(table, random)?.Say(name) ?? table;
        return table.Mark == ',' && table.Separator == ',' ? table with { Separator = ';' } : table;
    }

    private static KnownTable? Unit(KnownTable table, string role, string from, string to, decimal factor) =>
        table[role]?.Unit == from ? table.Scaled(role, factor, to)
        : table[role]?.Unit == to ? table.Scaled(role, 1 / factor, from) : null;

    private static KnownTable Kelvin(KnownTable table) => table.With("temperature", column => column with
    {
        Unit = "K",
        Fields = [.. column.Fields.Select(field => decimal.TryParse(field, System.Globalization.CultureInfo.InvariantCulture, out decimal degC)
            ? (degC + 273.15m).ToString(System.Globalization.CultureInfo.InvariantCulture) : field)],
    });

    private static KnownTable Translated(KnownTable table, Random random)
    {
        int language = random.Next(1, 7);
        return table with
        {
            Columns = [.. table.Columns.Select(column => Headings.TryGetValue(column.Role, out string[]? names)
                ? column with { Heading = column.Role == "volts" ? $"{names[language]} {column.Heading.Split(' ')[^1]}" : names[language] }
                : column)],
        };
    }

    private static T[] Shuffled<T>(T[] all, Random random)
    {
        T[] copy = [.. all];
        random.Shuffle(copy);
        return copy;
    }
}
