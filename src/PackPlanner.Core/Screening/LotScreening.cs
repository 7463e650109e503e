using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>The door of this room: a verdict for each cell of a lot, with what was read, the limit, and whose limit it is.</summary>
/// <remarks>
/// A value within twice its spread beyond a limit is held for a repeat, not rejected; at a safety limit on both
/// sides. An aborted test is never a low capacity. A missing reading passes nothing: it is named. Lot medians are
/// taken over all cells with a usable value before any verdict, so that a verdict cannot move the median that it
/// rests on.
/// </remarks>
public static class LotScreening
{
    /// <summary>Judges a lot.</summary>
    /// <param name="rows">Rows of one or more tables; rows of one label are one cell.</param>
    /// <param name="request">What the user says about the lot.</param>
    /// <returns>One verdict for each label. No verdict depends on the order of the rows.</returns>
    public static ScreenedLot Judge(IReadOnlyList<CellRow> rows, ScreeningRequest request)
    {
        IReadOnlyList<CellDraft> cells = CellGathering.Of(rows, request);
        (Repeatability repeatability, IReadOnlyList<SlotOffset> slots) = Repeats(cells, request);
        bool graphiteByVolts = cells.All(cell => cell.Chemistry is null)
            && SafetyReasons.RestsTooHighForLto(cells.Select(cell => cell.RestV).OfType<double>());
        IReadOnlyList<ModelLot> models = CapacityLimits.Of(cells, request);
        Chemistry? chemistry = request.Chemistry ?? MostCommon(cells);
        LotReasons reasons = new(cells, request, models, repeatability, slots, graphiteByVolts, chemistry);
        ScreenedCell[] judged = [.. cells.Select(reasons.Judge)];
        ScreenedLot lot = new()
        {
            Cells = judged,
            MedianCapacityAh = Robust.MedianOrNull(cells.Select(cell => cell.CapacityAh).OfType<double>()),
            MedianResistanceMilliohm = Robust.MedianOrNull(cells.Select(cell => cell.ResistanceMilliohm).OfType<double>()),
            Repeatability = repeatability,
            Slots = slots,
            Models = models,
            Chemistry = chemistry,
            Chemistries =
            [
                .. cells.Select(cell => cell.Chemistry?.Name).OfType<string>()
                    .Concat(cells.Select(cell => cell.UnknownChemistry).OfType<string>().Where(_ => request.Chemistry is null))
                    .Distinct().Order(StringComparer.Ordinal),
            ],
            GraphiteByVolts = graphiteByVolts,
            HighestMilliohm = request.HighestMilliohm,
            Cautions = [],
        };
        return lot with { Cautions = LotCautions.Of(lot) };
    }

    private static (Repeatability Repeatability, IReadOnlyList<SlotOffset> Slots) Repeats(
        IReadOnlyList<CellDraft> cells, ScreeningRequest request)
    {
        string[] names =
        [
            .. cells.SelectMany(cell => cell.Tests).Select(row => row.Slot).OfType<string>()
                .Distinct().OrderBy(slot => slot.Length).ThenBy(slot => slot, StringComparer.Ordinal),
        ];
        Dictionary<string, int> at = names.Select((name, i) => (name, i)).ToDictionary(pair => pair.name, pair => pair.i, StringComparer.Ordinal);
        List<RepeatTests.Test> tests = [];
        int number = 0;
        foreach (CellDraft cell in cells.Where(cell => cell.RepeatsDifferFraction <= CellDraft.MostRepeatsDiffer).OrderBy(cell => cell.Label, StringComparer.Ordinal))
        {
            tests.AddRange(cell.Tests
                .Select(row => new RepeatTests.Test(number, row.Slot is { } slot ? at[slot] : -1, row.CapacityAh!.Value))
                .OrderBy(test => test.Slot).ThenBy(test => test.Ah));
            number++;
        }

        RepeatTests.Finding found = RepeatTests.Fit(tests, names.Length, request.RepeatabilityFraction ?? Repeatability.AssumedFraction);
        bool enough = found.Fraction > 0 && found.Freedom >= Repeatability.FewestDegreesOfFreedom;
        Repeatability repeatability = request.RepeatabilityFraction is { } given
            ? new Repeatability(given, RepeatabilityOrigin.Given, found.Freedom, found.Fraction)
            : new Repeatability(
                enough ? found.Fraction!.Value : Repeatability.AssumedFraction,
                enough ? RepeatabilityOrigin.Repeats : RepeatabilityOrigin.Assumed, found.Freedom, found.Fraction);
        int[] counts = new int[names.Length];
        foreach (RepeatTests.Test test in tests.Where(test => test.Slot >= 0))
            counts[test.Slot]++;
        SlotOffset[] slots = [.. names.Select((name, i) => new SlotOffset(name, Known(found.SlotFraction[i]), Known(found.SlotSpread[i]), counts[i]))];
        return (repeatability, slots);
    }

    private static Chemistry? MostCommon(IReadOnlyList<CellDraft> cells) =>
        cells.Select(cell => cell.Chemistry).OfType<Chemistry>()
            .GroupBy(chemistry => chemistry.Name)
            .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal)
            .FirstOrDefault()?.First();

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
