using System.Text.Json;
using System.Text.Json.Nodes;
using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.JobFiles;

/// <summary>A cell row as a node of a small tree, for rows that were added by hand.</summary>
internal static class CellRowNode
{
    internal static JsonObject Of(CellRow row)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes))
            CellRowText.Write(writer, row);
        return JsonNode.Parse(bytes.ToArray())!.AsObject();
    }
}
