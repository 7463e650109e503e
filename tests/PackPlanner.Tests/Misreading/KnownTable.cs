using System.Globalization;
using System.Text;

namespace PackPlanner.Tests.Misreading;

/// <summary>A table whose meaning is known, and the many ways to write it.</summary>
internal sealed record KnownTable(string Name, KnownColumn[] Columns)
{
    /// <summary>Written between fields.</summary>
    internal char Separator { get; init; } = ',';

    /// <summary>The decimal mark.</summary>
    internal char Mark { get; init; } = '.';

    internal Encoding Encoding { get; init; } = new UTF8Encoding(false);

    internal string LineEnd { get; init; } = "\n";

    /// <summary>Lines above the heading.</summary>
    internal string[] Above { get; init; } = [];

    internal bool Quoted { get; init; }

    /// <summary>The heading stands once more after the third row.</summary>
    internal bool RepeatsHeading { get; init; }

    /// <summary>What was done to it, in words, for the message of a failure.</summary>
    internal string Done { get; init; } = "";

    internal int Rows => Columns[0].Fields.Length;

    internal KnownColumn? this[string role] => Array.Find(Columns, column => column.Role == role);

    /// <summary>A copy with one column changed.</summary>
    internal KnownTable With(string role, Func<KnownColumn, KnownColumn> change) =>
        this with { Columns = [.. Columns.Select(column => column.Role == role ? change(column) : column)] };

    /// <summary>A copy with every figure of a role times a factor, its unit named anew or left as it is.</summary>
    internal KnownTable Scaled(string role, decimal factor, string? unit) => With(role, column => column with
    {
        Unit = unit ?? column.Unit,
        Fields = [.. column.Fields.Select(field => Times(field, factor))],
    });

    /// <summary>A copy with the rows in another order.</summary>
    internal KnownTable Ordered(int[] rows) =>
        this with { Columns = [.. Columns.Select(column => column with { Fields = [.. rows.Select(row => column.Fields[row])] })] };

    internal KnownTable Say(string done) => this with { Done = Done.Length == 0 ? done : $"{Done}, {done}" };

    internal byte[] Bytes()
    {
        StringBuilder text = new();
        foreach (string line in Above)
            text.Append(line).Append(LineEnd);
        Heading(text);
        for (int row = 0; row < Rows; row++)
        {
            if (row == 3 && RepeatsHeading)
                Heading(text);
            Line(text, column => column.IsFigures ? column.Fields[row].Replace('.', Mark) : column.Fields[row]);
        }

        return [.. Encoding.GetPreamble(), .. Encoding.GetBytes(text.ToString())];
    }

    private void Heading(StringBuilder text) =>
        Line(text, column => column.Unit.Length > 0 && column.UnitIsSaid ? $"{column.Heading} ({column.Unit})" : column.Heading);

    private void Line(StringBuilder text, Func<KnownColumn, string> field)
    {
        for (int i = 0; i < Columns.Length; i++)
        {
            string written = field(Columns[i]);
            text.Append(i == 0 ? "" : Separator)
                .Append(Quoted || written.Contains(Separator) ? $"\"{written}\"" : written);
        }

        text.Append(LineEnd);
    }

    private static string Times(string field, decimal factor) =>
        decimal.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal value)
            ? (value * factor).ToString("0.############", CultureInfo.InvariantCulture)
            : field;
}
