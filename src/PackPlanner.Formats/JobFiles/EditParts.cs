using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Values changed by hand, in the file: by label, then by test, then by column.</summary>
internal static class EditParts
{
    internal static JsonNode? Write(Job job)
    {
        if (job.Edits.IsEmpty)
            return null;
        JsonObject node = [];
        foreach ((CellKey key, CellEdit edit) in job.Edits)
        {
            string test = key.Test.ToString(CultureInfo.InvariantCulture);
            JsonObject value = [];
            JobValueText.Write(value, edit.Value);
            JobValueText.Write(value, edit.From);
            Below(Below(node, key.Label), test)[Name(key.Field)] = value;
        }

        return node;
    }

    internal static ImmutableSortedDictionary<CellKey, CellEdit> Read(JsonInput state)
    {
        ImmutableSortedDictionary<CellKey, CellEdit>.Builder edits = ImmutableSortedDictionary.CreateBuilder<CellKey, CellEdit>(CellKey.InOrder);
        foreach ((string label, JsonInput cell) in JobParts.PartsOf(state, "edits"))
            ReadCell(edits, label, cell);

        return edits.ToImmutable();
    }

    private static void ReadCell(ImmutableSortedDictionary<CellKey, CellEdit>.Builder edits, string label, JsonInput cell)
    {
        foreach (string test in cell.Names)
        {
            if (!int.TryParse(test, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < 1)
            {
                cell.Refuse(test, "is not the number of a test", "Count the tests of a cell from 1.");
                continue;
            }

            foreach ((string field, JsonInput edit) in JobParts.PartsOf(cell, test))
            {
                // A column that this version does not know is kept in the file as an unknown field.
                if (FieldOf(field) is { } column)
                    edits[new CellKey(label, number, column)] = new CellEdit(JobValueText.Read(edit), JobValueText.ReadOrigin(edit));
            }
        }
    }

    /// <summary>A column's name in files and on the command line: capacityAh.</summary>
    internal static string Name(CellField field) => char.ToLowerInvariant(field.ToString()[0]) + field.ToString()[1..];

    /// <summary>The column of a name, in any case; null when there is none.</summary>
    internal static CellField? FieldOf(string name)
    {
        foreach (CellField field in Enum.GetValues<CellField>())
        {
            if (string.Equals(field.ToString(), name, StringComparison.OrdinalIgnoreCase))
                return field;
        }

        return null;
    }

    private static JsonObject Below(JsonObject node, string name)
    {
        if (node[name] is not JsonObject below)
            node[name] = below = [];
        return below;
    }
}
