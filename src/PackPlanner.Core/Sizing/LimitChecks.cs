using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Sizing;

/// <summary>Which limits a choice breaks, which could not be checked, and what cautions follow.</summary>
internal static class LimitChecks
{
    internal static PackChoice Judge(PackChoice choice, SizingRequest request)
    {
        List<string> broken = [];
        List<string> notChecked = [];
        foreach ((string code, bool? breaks) in All(choice, request))
        {
            if (breaks is null)
                notChecked.Add(code);
            else if (breaks.Value)
                broken.Add(code);
        }

        broken.Sort(StringComparer.Ordinal);
        notChecked.Sort(StringComparer.Ordinal);
        PackChoice judged = choice with { LimitsBroken = broken, NotChecked = notChecked };
        return judged with { Cautions = SizingCautions.Of(judged, request) };
    }

    private static IEnumerable<(string Code, bool? Breaks)> All(PackChoice choice, SizingRequest request)
    {
        Electrics electrics = request.Electrics;
        SizingCell cell = choice.Cell;
        double derate = request.Need.CurrentDerate ?? 1;
        yield return ("voltage-over-controller", Over(choice.VoltageFullV, electrics.ControllerMaxV));
        yield return ("cutoff-under-controller", Over(electrics.ControllerMinV, choice.VoltageCutoffV));
        yield return ("charger-mismatch", electrics.ChargerV is { } charger && choice.VoltageFullV is { } full
            ? !SizingFigures.Matches(charger, full)
            : null);
        yield return ("cell-peak-current", Over(choice.CellPeakA, cell.PeakDischargeA * derate));
        yield return ("cell-continuous-current", Over(choice.CellContinuousA, cell.ContinuousDischargeA * derate));
        yield return ("range-short", Over(request.Need.RangeKm, choice.RangeKm));
        yield return ("touch-voltage", Over(choice.VoltageFullV, TouchVoltage.LimitV));
        yield return ("fuse-too-small", Over(choice.FuseMinA, electrics.FuseA));
        yield return ("fuse-over-cell-current", Over(electrics.FuseA, choice.Parallel * cell.PeakDischargeA * derate));
        yield return ("fuse-voltage", Over(choice.VoltageFullV, electrics.FuseV));
        // By the DC figure, as a limit that is broken whatever the first instant is; that one is judged by caution 21.
        yield return ("fuse-breaking", Over(choice.ShortCircuitA, electrics.FuseBreakingA));
        yield return ("charge-too-cold", Over(cell.MinChargeDegC, request.Need.ChargeTemperatureDegC));
        yield return ("peak-power-short", Over(
            request.Need.PeakPowerW / SizingFigures.LowEndV(cell, electrics, choice.Series), electrics.ControllerMaxA));
        if (request.PackMassLimitKg is { } most)
            yield return ("mass-over", Over(choice.PackMassKg, most));
        if (request.TopSpeedWantedKmh is { } wanted)
            yield return ("speed-short", Over(wanted, choice.TopSpeedKmh));
        if (electrics.RegenA is { } regen)
            yield return ("regen-over-cell-charge", Over(regen, choice.Parallel * cell.MaxChargeA));
    }

    /// <summary>Null when either is unknown: then nothing was checked.</summary>
    private static bool? Over(double? value, double? limit) =>
        value is { } known && limit is { } most ? !SizingFigures.AtLeast(most, known) : null;
}
