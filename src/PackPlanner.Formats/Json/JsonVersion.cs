using System.Globalization;
using System.Text.Json;

namespace PackPlanner.Formats.Json;

/// <summary>Versions of the JSON files that this program reads.</summary>
internal static class JsonVersion
{
    private const int Known = 1;

    /// <summary>Why a file of this program cannot be read: a later version may mean something else by the same fields.</summary>
    /// <param name="file">What to call it in messages.</param>
    /// <param name="root">Its outermost value.</param>
    /// <returns>Null where the file is of a known version, names none, or is not of this program.</returns>
    internal static Refusal? Newer(string file, JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object
            || !root.TryGetProperty("schema", out JsonElement schema) || schema.ValueKind != JsonValueKind.String || !schema.GetString()!.StartsWith("packplanner", StringComparison.Ordinal)
            || !root.TryGetProperty("version", out JsonElement version) || version.ValueKind != JsonValueKind.Number || version.GetDouble() <= Known)
            return null;
        return Refusal.Input("file-too-new", $"{file}, field version", string.Create(CultureInfo.InvariantCulture, $"it is of file version {version.GetDouble()}, known here: {Known}"),
            "Update the program, or write the file for version 1.");
    }
}
