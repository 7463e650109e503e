using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sizing;

namespace PackPlanner.Formats.Json;

/// <summary>Reads a sizing need: cell or cells, pack, need, electrics, motor, limits.</summary>
public static class SizeCase
{
    // No pack of cells on a vehicle comes near: a figure above it is a slip of the unit.
    private const double MostVolts = 10_000;
    private const double MostWatts = 10_000_000;
    private const double MostCellAh = 2000;
    private const long MostCells = 10_000_000;

    /// <summary>Reads the case.</summary>
    /// <param name="input">The opened file.</param>
    /// <param name="understood">What was filled in from a chemistry, one sentence each.</param>
    /// <returns>The request, or the first field that is wrong.</returns>
    public static Outcome<SizingRequest> Read(JsonInput input, out IReadOnlyList<string> understood)
    {
        List<string> notes = [];
        JsonInput? single = input.Part("cell");
        IReadOnlyList<JsonInput> several = input.Parts("cells");
        SizingCell[] cells = [.. (several.Count > 0 ? several : single is null ? [] : [single]).Select(cell => Cell(cell, notes))];
        JsonInput? pack = input.Part("pack");
        JsonInput? limits = input.Part("limits");
        SizingRequest request = new(
            cells,
            pack?.Whole("series", 1),
            pack?.Whole("parallel", 1),
            pack?.Number("overheadFraction", 0),
            Need(input.Part("need")),
            Electrics(input.Part("electrics"), input.Part("motor")),
            limits?.Number("packMassKg", 0),
            limits?.Number("topSpeedKmh", 0));
        understood = notes;
        if (input.Wrong is { } wrong)
            return wrong;
        if (cells.Length == 0)
            return Refusal.Input("no-cell", $"{input.File}, field cell", "no cell model is given", "Give \"cell\":{\"nominalV\":3.6,\"fullV\":4.2,\"cutoffV\":3.0,\"capacityAh\":5.0}, a list \"cells\", or --chemistry NMC --rated-ah 5Ah.");
        if (Contradiction(request, input.File) is { } contradiction)
            return contradiction;
        return request;
    }

    private static Refusal TooManyCells(SizingRequest request, string file) => (request.Series, request.Parallel) switch
    {
        ({ } series, { } parallel) => Refusal.Input("too-many-cells", $"{file}, field pack.parallel", $"{series} in series with {parallel} in parallel are more than {MostCells} cells", "Correct one of the two."),
        ({ } series, null) => Refusal.Input("too-many-cells", $"{file}, field pack.series", $"{series} in series are more than {MostCells} cells", "Correct it, or leave it out: it is then as the volts allow."),
        _ => Refusal.Input("too-many-cells", $"{file}, field pack.parallel", $"{request.Parallel} in parallel are more than {MostCells} cells", "Correct it, or leave it out: it is then as many as the need asks for."),
    };

    private static Refusal? Contradiction(SizingRequest request, string file)
    {
        Electrics electrics = request.Electrics;
        if (electrics.ControllerMinV >= electrics.ControllerMaxV)
            return Refusal.Input("controller-volts", $"{file}, field electrics.controllerMinV",
                $"the low-voltage limit {electrics.ControllerMinV} V is not below the highest {electrics.ControllerMaxV} V", "Correct one of the two.");
        if ((request.Series ?? 1L) * (request.Parallel ?? 1) > MostCells)
            return TooManyCells(request, file);
        foreach (SizingCell cell in request.Cells)
        {
            if (cell.CutoffV >= cell.NominalV || cell.NominalV >= cell.FullV || cell.CutoffV >= cell.FullV)
                return Refusal.Input("cell-volts", $"{file}, field cell {cell.Name}".TrimEnd(),
                    $"cut-off {Known(cell.CutoffV)}, nominal {Known(cell.NominalV)} and full {Known(cell.FullV)} V do not rise in that order", "Correct them from the data sheet.");
        }

        return null;
    }

    private static string Known(double? volts) => volts?.ToString(CultureInfo.InvariantCulture) ?? "(not given)";

    private static SizingCell Cell(JsonInput cell, List<string> notes)
    {
        string? chemistry = cell.Text("chemistry");
        Chemistry? known = Chemistries.Find(chemistry);
        if (chemistry is not null && known is null)
            cell.Refuse("chemistry", $"is \"{chemistry}\", which is not known here", $"Use one of {string.Join(", ", Chemistries.All.Select(c => c.Name))}.");
        SizingCell read = new()
        {
            Name = cell.Text("name"),
            Chemistry = known?.Name,
            NominalV = cell.Number("nominalV", 0.1, 10) ?? Fill("nominalV", known?.NominalV),
            FullV = cell.Number("fullV", 0.1, 10) ?? Fill("fullV", known?.FullV),
            CutoffV = cell.Number("cutoffV", 0.1, 10) ?? Fill("cutoffV", known?.CutoffV),
            CapacityAh = cell.Number("capacityAh", 1e-6, MostCellAh),
            MassG = cell.Number("massG", 1e-6),
            ResistanceMilliohm = cell.Number("resistanceMilliohm", 0),
            AcResistanceMilliohm = cell.Number("acResistanceMilliohm", 1e-9),
            ContinuousDischargeA = cell.Number("continuousDischargeA", 1e-9),
            PeakDischargeA = cell.Number("peakDischargeA", 1e-9),
            MaxChargeA = cell.Number("maxChargeA", 1e-9),
            MinChargeDegC = cell.Number("minChargeC"),
            Price = cell.Number("price", 0),
        };
        return read;

        double? Fill(string field, double? figure)
        {
            if (figure is { } known)
                notes.Add($"{field} {known} of {chemistry} was taken from the chemistry's usual limits; the data sheet wins");
            return figure;
        }
    }

    private static VehicleNeed Need(JsonInput? need) => need is null ? new() : new()
    {
        WhPerKm = need.Number("whPerKm", 1e-9),
        MassKg = need.Number("massKg", 1e-9),
        DragAreaM2 = need.Number("cdA", 0),
        RollingCoefficient = need.Number("crr", 0),
        GradePercent = need.Number("gradePct"),
        EfficiencyFraction = need.Number("efficiency", 1e-6, 1),
        AccessoryW = need.Number("accessoryW", 0),
        AirDensityKgM3 = need.Number("airDensityKgM3", 0),
        SpeedKmh = need.Number("speedKmh", 1e-9),
        RangeKm = need.Number("rangeKm", 0),
        PeakPowerW = need.Number("peakPowerW", 0, MostWatts),
        ContinuousPowerW = need.Number("continuousPowerW", 0, MostWatts),
        ReserveFraction = need.Number("reserve", 0, 0.999999),
        UsableFraction = need.Number("usableFraction", 1e-6, 1),
        AgeingFraction = need.Number("ageing", 1e-6, 1),
        TemperatureFactor = need.Number("temperatureFactor", 1e-6),
        CurrentDerate = need.Number("currentDerate", 1e-6),
        ChargeTemperatureDegC = need.Number("chargeTemperatureC"),
    };

    private static Electrics Electrics(JsonInput? electrics, JsonInput? motor) => new()
    {
        ControllerMaxV = electrics?.Number("controllerMaxV", 1e-9, MostVolts),
        ControllerMinV = electrics?.Number("controllerMinV", 0, MostVolts),
        ControllerMaxA = electrics?.Number("controllerMaxA", 1e-9),
        ChargerV = electrics?.Number("chargerV", 1e-9, MostVolts),
        ChargerA = electrics?.Number("chargerA", 1e-9),
        TaperHours = electrics?.Number("taperHours", 0),
        LinkResistanceMilliohm = electrics?.Number("linkResistanceMilliohm", 0),
        FuseA = electrics?.Number("fuseA", 0),
        FuseV = electrics?.Number("fuseV", 0),
        FuseBreakingA = electrics?.Number("fuseBreakingA", 0),
        RegenA = electrics?.Number("regenA", 0),
        MotorRpmPerV = motor?.Number("kvRpmPerV", 0),
        MotorLoadedFraction = motor?.Number("loadedFraction", 0),
        GearRatio = motor?.Number("gearRatio", 1e-9),
        WheelCircumferenceMm = motor?.Number("wheelCircumferenceMm", 1e-9),
    };
}
