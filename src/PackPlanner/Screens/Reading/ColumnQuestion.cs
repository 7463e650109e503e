using System.Globalization;
using PackPlanner.Formats.Tables;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.Reading;

/// <summary>Asks what a column of a file is: its meaning, and its unit.</summary>
internal static class ColumnQuestion
{
    /// <summary>Lists what it can be; the answer is a new reading.</summary>
    /// <param name="desk">Where it is asked.</param>
    /// <param name="choices">What was said so far.</param>
    /// <param name="columns">All columns of the file as they are read now.</param>
    /// <param name="at">Which one is asked about.</param>
    /// <param name="kind">cells, tester-log or pack-log.</param>
    /// <param name="read">Reads with the answer.</param>
    internal static void Ask(Desk desk, FileChoices choices, IReadOnlyList<ColumnReading> columns, int at, string kind, Action<FileChoices> read)
    {
        ColumnReading column = columns[at];
        string name = columns.Count(other => other.Name == column.Name) > 1 ? "#" + (at + 1).ToString(CultureInfo.InvariantCulture) : column.Name;
        ColumnChoice? said = choices.Columns.FirstOrDefault(choice => choice.Name == name);
        string meaning = column.ReadAs.EndsWith(" voltage", StringComparison.Ordinal) ? column.ReadAs[..^" voltage".Length] : column.ReadAs;

        void Say(string means, string unit)
        {
            if (ColumnChoice.Of(name, means, unit, out string why) is { } choice)
                read(choices.With(choice));
            else
                desk.Says = why;
        }

        ListItem Meaning(string means) => new($"it is {ColumnWords.Of(means)}", means == meaning ? "now" : "", () => Say(means, ""));
        IEnumerable<string> groups = kind == "pack-log"
            ? Enumerable.Range(1, columns.Count(other => other.ReadAs.StartsWith("group ", StringComparison.Ordinal)) + 1).Select(group => $"group {group}")
            : [];
        IReadOnlyList<string> units = ColumnMeanings.UnitsOf(said?.Meaning is { Length: > 0 } own ? own : meaning.StartsWith("group ", StringComparison.Ordinal) ? "cellVoltage" : meaning);
        ListItem[] items =
        [
            .. units.Select(unit => new ListItem($"its unit is {unit}", unit == column.Unit ? "now" : "", () => Say(said?.Meaning ?? "", unit))),
            .. ColumnMeanings.Of(kind).Select(Meaning),
            .. groups.Select(group => new ListItem($"it is the volts of {group}", group == meaning ? "now" : "", () => Say(group, ""))),
            .. said is null ? [] : new[] { new ListItem("as the program would read it", "", () => read(choices.Without(name))) },
        ];
        desk.Show(new ListOverlay(desk, $"What is {Drawing.TextWidth.CutMiddle(column.Name, 24)}?", () => items, narrows: true));
    }
}
