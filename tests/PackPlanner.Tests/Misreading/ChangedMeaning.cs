using System.Globalization;

namespace PackPlanner.Tests.Misreading;

/// <summary>Damage that changes what a file means without a word: it must be read as it was, be refused, or be said.</summary>
/// <param name="Name">What happened to the file.</param>
/// <param name="Change">The damage; null where a table has nothing to damage.</param>
/// <param name="Told">What a new sentence, caution or refusal must hold, as a pattern.</param>
internal sealed record ChangedMeaning(string Name, Func<KnownTable, KnownTable?> Change, string Told)
{
    /// <summary>For tables of cells.</summary>
    internal static IReadOnlyList<ChangedMeaning> OfCells { get; } =
    [
        new("capacities in mAh under a heading that says Ah", table => Factor(table, "capacity", 1000), "(?i)capacity.*(mAh|unit|no cell|read so)"),
        new("capacities in Ah under a heading that says mAh", table => Label(table, "capacity", "mAh"), "(?i)capacity.*(Ah|unit|no cell|read so)"),
        new("resistances in ohm under a heading that says milliohm", table => Factor(table, "resistance", 0.001m), "(?i)resistance.*(ohm|unit|no cell)"),
        new("resistances in milliohm under a heading that says ohm", table => Label(table, "resistance", "Ohm"), "(?i)resistance.*(ohm|unit|no cell)"),
        new("resistances in microohm under a heading that says milliohm", table => Factor(table, "resistance", 1000), "(?i)resistance.*(ohm|unit|no cell)"),
        new("resting volts in mV under a heading that says V", table => Factor(table, "rest", 1000), "(?i)rest.*(mV|unit|no cell)"),
        new("resting volts in V under a heading that says mV", table => Label(table, "rest", "mV"), "(?i)rest.*( V|unit|no cell)"),
        new("one capacity in mAh among Ah", table => OneTimes(table, "capacity", 1000), "samples of Capacity|two-readings"),
        new("one capacity a thousandth", table => OneTimes(table, "capacity", 0.001m), "samples of Capacity|two-readings"),
        new("one capacity with its mark slipped up", table => OneTimes(table, "capacity", 10), ": (unlike-its-lot|not-checked)"),
        new("one resistance a thousand times", table => OneTimes(table, "resistance", 1000), "(?i)resistance"),
        new("one resting voltage in mV among V", table => OneTimes(table, "rest", 1000), "(?i)rest"),
        new("capacities with their sign turned", table => Factor(table, "capacity", -1), "(?i)capacity"),
        new("one capacity lost", table => One(table, "capacity", _ => ""), "(?i)capacity|hold"),
        new("one capacity a word", table => One(table, "capacity", _ => "dead"), "(?i)capacity"),
        new("decimal commas between comma separators", table => table with { Mark = ',' }, "."),
        new("headings moved one to the right", table => Moved(table), "."),
        new("capacity and resistance under each other's heading", table => Swapped(table, "capacity", "resistance"), "(?i)resistance|capacity"),
        new("resting volts and resistance under each other's heading", table => Overlap(table, "rest", "resistance") ? null : Swapped(table, "rest", "resistance"), "(?i)samples of|Column"),
        new("a cell listed twice with other figures", table => Twice(table), ": repeats-disagree"),
    ];

    /// <summary>For logs of packs.</summary>
    internal static IReadOnlyList<ChangedMeaning> OfLogs { get; } =
    [
        new("times in milliseconds under a heading that says s", table => Factor(table, "time", 1000), "(?i)time|millisecond|\\bms\\b"),
        new("times in minutes under a heading that says s", table => Factor(table, "time", 1 / 60m), "(?i)time|minute"),
        new("currents in mA under a heading that says A", table => Factor(table, "current", 1000), "(?i)current.*(mA|unit)"),
        new("currents in A under a heading that says mA", table => Label(table, "current", "mA"), "(?i)current.*( A|unit)"),
        new("cell volts in mV under a heading that says V", table => Factor(table, "volts", table["volts"]!.Unit == "V" ? 1000 : 0.001m), "(?i)volts|heading"),
        new("one cell in mV among V", table => OneColumn(table), "(?i)cell"),
        new("one sample in fifty of the cells lost", table => Lost(table, ""), "(?i)samples"),
        new("one sample in fifty of the cells a filler", table => Lost(table, "65.535"), "(?i)samples"),
        new("one sample in fifty of the cells nought", table => Lost(table, "0"), "(?i)samples"),
        new("a hundred rows lost in the middle", table => Gap(table), "(?i)gap"),
        new("the sign of the current lost", table => Unsigned(table), "(?i)sign|never negative|Positive current is discharge"),
    ];

    private static KnownTable? Factor(KnownTable table, string role, decimal factor) => table[role] is null ? null : table.Scaled(role, factor, null);

    private static KnownTable? Label(KnownTable table, string role, string unit) =>
        table[role] is null or { Unit: "mV" } ? null : table.With(role, column => column with { Unit = unit });

    private static KnownTable? One(KnownTable table, string role, Func<string, string> change) => table[role] is null ? null : table.With(role, column => column with
    {
        Fields = [.. column.Fields.Select((field, row) => row == 2 ? change(field) : field)],
    });

    private static KnownTable? OneTimes(KnownTable table, string role, decimal factor) =>
        One(table, role, field => (decimal.Parse(field, CultureInfo.InvariantCulture) * factor).ToString("0.######", CultureInfo.InvariantCulture));

    private static KnownTable Moved(KnownTable table) => table with
    {
        Columns = [.. table.Columns.Select((column, i) => column with { Fields = table.Columns[(i + 1) % table.Columns.Length].Fields })],
    };

    private static KnownTable? Swapped(KnownTable table, string one, string other) => table[one] is not { } first || table[other] is not { } second ? null
        : table.With(one, column => column with { Fields = second.Fields }).With(other, column => column with { Fields = first.Fields });

    // Two columns of figures of one size: nothing in the file could tell them apart.
    private static bool Overlap(KnownTable table, string one, string other)
    {
        double Middle(string role) => table[role]!.Fields.Select(field => double.Parse(field, CultureInfo.InvariantCulture)).Order().ElementAt(table.Rows / 2);
        return Math.Abs(Math.Log(Middle(one) / Middle(other))) < Math.Log(2);
    }

    private static KnownTable Twice(KnownTable table)
    {
        KnownTable longer = table.Ordered([.. Enumerable.Range(0, table.Rows), 0]);
        int last = longer.Rows - 1;
        return longer.With("capacity", column => column with
        {
            Fields = [.. column.Fields.Select((field, row) => row == last ? (decimal.Parse(field, CultureInfo.InvariantCulture) * 0.9m).ToString(CultureInfo.InvariantCulture) : field)],
        });
    }

    private static KnownTable OneColumn(KnownTable table)
    {
        KnownColumn second = table.Columns.Where(column => column.Role == "volts").ElementAt(1);
        decimal factor = second.Unit == "V" ? 1000 : 0.001m;
        return table with
        {
            Columns = [.. table.Columns.Select(column => ReferenceEquals(column, second)
                ? column with { Fields = [.. column.Fields.Select(field => (decimal.Parse(field, CultureInfo.InvariantCulture) * factor).ToString(CultureInfo.InvariantCulture))] } : column)],
        };
    }

    private static KnownTable Lost(KnownTable table, string filler)
    {
        Random random = new(7);
        return table.With("volts", column => column with { Fields = [.. column.Fields.Select(field => random.Next(50) == 0 ? filler : field)] });
    }

    private static KnownTable Gap(KnownTable table)
    {
        int middle = table.Rows / 2;
        return table.Ordered([.. Enumerable.Range(0, middle - 50), .. Enumerable.Range(middle + 50, table.Rows - middle - 50)]);
    }

    private static KnownTable? Unsigned(KnownTable table) => table.With("current", column => column with { Fields = [.. column.Fields.Select(field => field.TrimStart('-'))] });
}
