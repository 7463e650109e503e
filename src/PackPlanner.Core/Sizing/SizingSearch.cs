using System.Globalization;

namespace PackPlanner.Core.Sizing;

/// <summary>Chooses S and P for each cell model and keeps what no other choice beats.</summary>
public static class SizingSearch
{
    /// <summary>The door: every choice that no other beats in mass, range and margins.</summary>
    /// <param name="request">Cells, need, electrics and limits; S and P given or open.</param>
    /// <param name="places">
    /// Says how many cells of a model the space takes when it is to hold S groups of P; null: no space was given. A
    /// choice that does not fit is brought down to the largest P that does; one of which null is said was not tried and is left out.
    /// </param>
    /// <returns>Choices, or the two limits that contradict each other.</returns>
    /// <exception cref="ArgumentException">No cell model, or S or P below 1.</exception>
    public static SizingOutcome Find(SizingRequest request, Func<SizingCell, int, int, int?>? places = null)
    {
        if (request.Cells.Count == 0)
            throw new ArgumentException("Sizing needs at least one cell model.", nameof(request));
        if (request.Series < 1 || request.Parallel < 1)
            throw new ArgumentException("S and P count from 1.", nameof(request));
        List<PackChoice> all = [];
        List<SizingReason> reasons = [];
        foreach (SizingCell cell in request.Cells)
        {
            int[] allowed = Series(request, cell);
            if (allowed.Length == 0)
                reasons.Add(WhyNone(request, cell));
            foreach (int series in allowed)
            {
                PackChoice choice = WithBinding(ChoiceBuilder.Build(request, cell, series, request.Parallel), request);
                if (places is null || choice.Parallel is not { } parallel)
                    all.Add(choice);
                else if (places(cell, series, parallel) is not { } room)
                    reasons.Add(new("stopped-early", $"{Named(cell)}the search was stopped before {series} cells in series were tried in the space. Let it look longer."));
                else if (InSpace(choice, request, room) is { } fitting)
                    all.Add(fitting);
                else
                    reasons.Add(new("does-not-fit", $"{Named(cell)}the space does not take {series} cells in series. Run packplanner fit on it to see what is short."));
            }
        }

        return all.Count == 0 ? new SizingOutcome.None(reasons) : new SizingOutcome.Choices(Unbeaten(all));
    }

    // Inside the window and matching the charger; if there is none, from where energy is only stranded.
    private static int[] Series(SizingRequest request, SizingCell cell)
    {
        if (request.Series is { } given)
            return [given];
        SeriesWindow window = SizingFigures.Window(cell, request.Electrics);
        int[] candidates = [.. (window.MatchingCharger ?? Enumerable.Range(1, 1000)).Where(series => window.Max is null || series <= window.Max)];
        if (window is { Min: null, Max: null, MatchingCharger: null })
            return [];
        if (window is { Max: null, MatchingCharger: null })
            return [window.Min!.Value];
        int[] inside = [.. candidates.Where(series => window.Min is null || series >= window.Min)];
        if (inside.Length == 0)
            inside = [.. candidates.Where(series => series >= window.MinStranding)];
        return window.Min is null && window.MatchingCharger is null ? [.. inside.TakeLast(1)] : inside;
    }

    private static PackChoice? InSpace(PackChoice choice, SizingRequest request, int places)
    {
        if (places >= choice.Cells)
            return choice with { Places = places };
        int fewer = places / choice.Series;
        return fewer == 0
            ? null
            : ChoiceBuilder.Build(request, choice.Cell, choice.Series, fewer) with
            {
                Places = places,
                Binding = new("places", $"{places} places hold {choice.Series}s{fewer}; {choice.Series}s{choice.Parallel} takes {choice.Cells}", choice.Parallel, choice.PackMassKg, choice.RangeKm),
            };
    }

    private static SizingReason WhyNone(SizingRequest request, SizingCell cell)
    {
        SeriesWindow window = SizingFigures.Window(cell, request.Electrics);
        string name = Named(cell);
        Electrics electrics = request.Electrics;
        if (window is { Max: null, Min: null, MatchingCharger: null })
            return new("series-open", $"{name}neither controller volts nor charger volts nor S are given, so nothing says how many in series. Give pack.series or electrics.controllerMaxV.");
        if (window is { Max: { } max, MinStranding: { } min } && min > max)
            return new("controller-window", $"{name}the controller's {Text(electrics.ControllerMaxV)} V at full charge allows {max} in series, its {Text(electrics.ControllerMinV)} V low-voltage limit wants {min} or more. Another controller, or a cell of another voltage.");
        if (window.Max is < 1)
            return new("controller-window", $"{name}one cell has {Text(cell.FullV)} V when full, the controller bears {Text(electrics.ControllerMaxV)} V. Another controller, or a cell of another voltage.");
        if (window.MatchingCharger is { Count: 0 })
            return new("charger-volts", $"{name}no whole number in series suits a charger of {Text(electrics.ChargerV)} V: {Text(electrics.ChargerV / cell.FullV)} cells of {Text(cell.FullV)} V. Another charger setting.");
        return new("charger-against-controller", $"{name}the charger of {Text(electrics.ChargerV)} V suits {string.Join(", ", window.MatchingCharger ?? [])} in series, the controller allows {window.MinStranding?.ToString(CultureInfo.InvariantCulture) ?? "any"} to {window.Max?.ToString(CultureInfo.InvariantCulture) ?? "any"}. Another charger or another controller.");
    }

    private static PackChoice WithBinding(PackChoice choice, SizingRequest request)
    {
        if (request.Parallel is { } given)
            return choice with { Binding = new("given", $"P = {given} was given", null, null, null) };
        (string Limit, int? Parallel, string Words)[] wants =
        [
            ("parallel-for-energy", choice.ParallelForEnergy, $"{Text(request.Need.RangeKm)} km take {choice.ParallelForEnergy} in parallel"),
            ("parallel-for-peak-current", choice.ParallelForPeakCurrent, $"{Text(choice.PeakCurrentA)} A peak take {choice.ParallelForPeakCurrent} in parallel"),
            ("parallel-for-continuous-current", choice.ParallelForContinuousCurrent, $"{Text(choice.ContinuousCurrentLowA)} A continuous take {choice.ParallelForContinuousCurrent} in parallel"),
        ];
        (string limit, int? parallel, string words) = wants.FirstOrDefault(want => want.Parallel is not null && want.Parallel == choice.Parallel);
        if (limit is null)
            return choice;
        int? without = wants.Where(want => want.Limit != limit).Max(want => want.Parallel);
        PackChoice? other = without is { } fewer && fewer < parallel ? ChoiceBuilder.Build(request, choice.Cell, choice.Series, Math.Max(1, fewer)) : null;
        return choice with { Binding = new(limit, words, without, other?.PackMassKg, other?.RangeKm) };
    }

    private static PackChoice[] Unbeaten(IReadOnlyList<PackChoice> all) =>
    [
        .. all.Where(choice => !all.Any(other => Beats(other, choice)))
            .OrderBy(choice => choice.LimitsBroken.Count)
            .ThenBy(choice => choice.PackMassKg ?? choice.CellMassKg ?? double.MaxValue)
            .ThenByDescending(choice => choice.RangeKm ?? 0)
            .ThenBy(choice => choice.Series)
            .ThenBy(choice => choice.Cell.Name, StringComparer.Ordinal),
    ];

    private static bool Beats(PackChoice a, PackChoice b)
    {
        (double? A, double? B)[] better =
        [
            (-a.LimitsBroken.Count, -b.LimitsBroken.Count),
            (-a.PackMassKg, -b.PackMassKg),
            (a.RangeKm, b.RangeKm),
            (a.MarginControllerMaxV, b.MarginControllerMaxV),
            (a.MarginControllerMinV, b.MarginControllerMinV),
        ];
        return better.All(pair => (pair.A ?? double.MinValue) >= (pair.B ?? double.MinValue))
            && better.Any(pair => (pair.A ?? double.MinValue) > (pair.B ?? double.MinValue));
    }

    private static string Named(SizingCell cell) => cell.Name is { } name ? $"{name}: " : "";

    private static string Text(double? figure) => figure is { } known ? known.ToString("0.##", CultureInfo.InvariantCulture) : "-";
}
