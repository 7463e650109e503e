using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Core.Screening;

/// <summary>Small lots for tests. Invented.</summary>
internal static class Lots
{
    /// <summary>Ten like cells of about 5 Ah, 30 milliohm and 3.60 V.</summary>
    internal static CellRow[] Ten { get; } =
    [
        .. new[] { 4.60, 4.61, 4.59, 4.62, 4.58, 4.60, 4.63, 4.57, 4.61, 4.60 }
            .Select((ah, i) => Cell($"T{i + 1:00}", ah, 30 + 0.1 * (i % 3), 3.600 + 0.001 * (i % 4))),
    ];

    internal static CellRow Cell(string label, double? ah, double? milliohm = 30, double? restV = 3.601) => new()
    {
        Label = label,
        CapacityAh = ah,
        ResistanceMilliohm = milliohm,
        RestV = restV,
    };
}
