using System.Text.Json;

namespace PackPlanner.Formats.Json;

/// <summary>Values of a JSON file as what they are meant to be.</summary>
internal static class JsonValues
{
    /// <summary>Gives a value where it is of the wanted kind.</summary>
    internal delegate bool TryRead<T>(JsonElement item, out T value);

    internal static bool TryFinite(JsonElement item, out double number)
    {
        number = double.NaN;
        return item.ValueKind == JsonValueKind.Number && item.TryGetDouble(out number) && double.IsFinite(number);
    }

    /// <summary>A number that something can have measured: see <see cref="LargestFigure"/>.</summary>
    internal static bool TryMeasured(JsonElement item, out double number) => TryFinite(item, out number) && LargestFigure.Allows(number);

    internal static bool TryText(JsonElement item, out string text)
    {
        text = item.ValueKind == JsonValueKind.String ? item.GetString()! : "";
        return item.ValueKind == JsonValueKind.String;
    }
}
