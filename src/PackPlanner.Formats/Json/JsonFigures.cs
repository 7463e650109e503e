namespace PackPlanner.Formats.Json;

/// <summary>Figures on their way into JSON.</summary>
public static class JsonFigures
{
    /// <summary>Unknown is null in JSON, never NaN or infinite.</summary>
    /// <param name="figure">A figure, perhaps NaN.</param>
    /// <returns>The figure, or null.</returns>
    public static double? Known(double figure) => double.IsFinite(figure) ? figure : null;

    /// <summary>Unknown is null in JSON, never NaN or infinite.</summary>
    /// <param name="figure">A figure, perhaps null or NaN.</param>
    /// <returns>The figure, or null.</returns>
    public static double? Known(double? figure) => figure is { } known && double.IsFinite(known) ? known : null;
}
