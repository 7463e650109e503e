using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>What is usual among the cells of each model, and the least capacity that follows from it.</summary>
internal static class CapacityLimits
{
    /// <summary>Share of the rated capacity below which a used cell is turned away, where the user says nothing. Source: [CommonPractice].</summary>
    internal const double UsualFraction = 0.8;

    // A median of fewer cells than this says nothing about what is usual.
    private const int FewestForMedian = 3;

    /// <summary>The models of a lot. Cells without a model's name are told apart by their rated capacity.</summary>
    internal static IReadOnlyList<ModelLot> Of(IReadOnlyList<CellDraft> cells, ScreeningRequest request)
    {
        bool tableDiffers = cells.Select(cell => cell.RatedAh).OfType<double>().Distinct().Count() > 1;
        return
        [
            .. cells.GroupBy(KeyOf)
                .OrderBy(model => model.Key, StringComparer.Ordinal)
                .Select(model => Of([.. model], request, tableDiffers)),
        ];
    }

    /// <summary>Which model a cell belongs to.</summary>
    internal static string KeyOf(CellDraft cell) =>
        cell.Model?.ToUpperInvariant() ?? (cell.RatedAh is { } rated ? $"{rated:R} Ah" : "");

    private static ModelLot Of(CellDraft[] cells, ScreeningRequest request, bool tableDiffers)
    {
        double? written = cells.Min(cell => cell.RatedAh);
        double? rated = tableDiffers ? written ?? request.RatedAh : request.RatedAh ?? written;
        double? median = Robust.MedianOrNull(cells.Select(cell => cell.CapacityAh).OfType<double>());
        double? milliohm = Robust.MedianOrNull(cells.Select(cell => cell.ResistanceMilliohm).OfType<double>());
        double fraction = request.LeastFraction ?? UsualFraction;

        // 80 % of rated is our own choice. Where it would turn away the middle of the lot itself, it says only that
        // the whole lot is old; what is wanted then is to tell its better cells from its worse ones.
        // One or two cells are no lot: they are held against the rated capacity whatever they have.
        bool medianUsable = cells.Count(cell => cell.CapacityAh is not null) >= FewestForMedian;
        bool ratedTooHigh = medianUsable && request.LeastFraction is null && rated is { } r && median < UsualFraction * r;
        bool byMedian = rated is null || ratedTooHigh;
        double? least = !byMedian ? fraction * rated : medianUsable ? fraction * median : null;
        LimitOrigin? from = least is null ? null
            : byMedian ? LimitOrigin.LotMedian
            : request.LeastFraction is not null ? LimitOrigin.User
            : LimitOrigin.DataSheet;
        return new ModelLot(
            cells.Select(cell => cell.Model).Min(StringComparer.Ordinal), cells.Length, rated, median, milliohm,
            least, from, fraction, ratedTooHigh && least is not null);
    }
}
