using System.Globalization;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Tables;

/// <summary>What the user said of one column: what it means, its unit, or both.</summary>
public sealed record ColumnChoice
{
    /// <summary>The heading as it stands in the file, or # and the number of the column from 1.</summary>
    public required string Name { get; init; }

    /// <summary>The meaning as look prints it; empty where only the unit was said.</summary>
    public string Meaning { get; init; } = "";

    /// <summary>The unit as files spell it; empty where only the meaning was said.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Null where only the unit was said.</summary>
    internal ColumnRole? Role { get; private init; }

    /// <summary>The series group whose volts the column holds, from 1; null when it was not said.</summary>
    internal int? Group { get; private init; }

    /// <summary>Null where only the meaning was said.</summary>
    internal FileUnit? InUnit { get; private init; }

    /// <summary>As it is typed: NAME=meaning:unit.</summary>
    public override string ToString() => $"{Name}={Meaning}{(Unit.Length == 0 ? "" : ":" + Unit)}";

    /// <summary>Reads NAME=meaning, NAME=meaning:unit or NAME=:unit.</summary>
    /// <param name="typed">As typed.</param>
    /// <param name="why">What is wrong with it; empty when nothing is.</param>
    /// <returns>The choice; null when it cannot be read.</returns>
    public static ColumnChoice? Read(string typed, out string why)
    {
        int equals = typed.LastIndexOf('=');
        if (equals <= 0)
        {
            why = $"\"{OneLine.Of(typed)}\" has no heading, equals sign and meaning";
            return null;
        }

        string said = typed[(equals + 1)..];
        int colon = said.IndexOf(':', StringComparison.Ordinal);
        return Of(typed[..equals].Trim(), (colon < 0 ? said : said[..colon]).Trim(), colon < 0 ? "" : said[(colon + 1)..].Trim(), out why);
    }

    /// <summary>Puts a choice together and checks that it makes sense.</summary>
    /// <param name="name">Heading, or # and number.</param>
    /// <param name="meaning">Meaning; empty to leave it.</param>
    /// <param name="unit">Unit; empty to leave it.</param>
    /// <param name="why">What is wrong; empty when nothing is.</param>
    /// <returns>Null when meaning or unit are not known or do not fit together.</returns>
    public static ColumnChoice? Of(string name, string meaning, string unit, out string why)
    {
        why = "";
        int? group = GroupOf(meaning);
        ColumnRole? role = group is not null ? ColumnRole.CellVoltage : meaning.Length == 0 ? null : ColumnMeanings.Find(meaning);
        FileUnit? found = FileUnit.Find(unit);
        if (meaning.Length > 0 && role is null)
            why = $"\"{OneLine.Of(meaning)}\" is no meaning of a column; the nearest is {NearestName.Of(meaning, ColumnMeanings.All)}";
        else if (unit.Length > 0 && found is null)
            why = $"\"{OneLine.Of(unit)}\" is no unit that is known";
        else if (meaning.Length == 0 && unit.Length == 0)
            why = "neither a meaning nor a unit was said";
        else if (role is { } known && found is not null && ColumnNames.DimensionOf(known) != found.Of)
            why = $"{OneLine.Of(meaning)} is not measured in {found.Name}";
        return why.Length > 0 ? null : new ColumnChoice { Name = name, Meaning = meaning, Unit = unit, Role = role, Group = group, InUnit = found };
    }

    // "group 3" is the volts of series group 3, as look names them ("group 3 voltage").
    private static int? GroupOf(string meaning)
    {
        string[] words = meaning.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words is ["group", var number, ..] && words.Length <= 3 && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int group) && group > 0 ? group : null;
    }
}
