using PackPlanner.Core.Packs;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Core.Sizing;

/// <summary>Works out every figure of one S, and of the P that it needs or is given.</summary>
internal static class ChoiceBuilder
{
    internal static PackChoice Build(SizingRequest request, SizingCell cell, int series, int? parallelGiven)
    {
        VehicleNeed need = request.Need;
        double? peakA = SizingFigures.PeakA(request, cell, series);
        double? lowA = SizingFigures.ContinuousW(request) / SizingFigures.LowEndV(cell, request.Electrics, series);
        double derate = need.CurrentDerate ?? 1;
        int? forEnergy = SizingFigures.ParallelForEnergy(request, cell, series);
        int? forPeak = SizingFigures.Ceiling(peakA / (cell.PeakDischargeA * derate));
        int? forContinuous = SizingFigures.Ceiling(lowA / (cell.ContinuousDischargeA * derate));
        int? parallel = parallelGiven ?? Largest(forEnergy, forPeak, forContinuous);

        PackChoice choice = new()
        {
            Cell = cell,
            Need = SizingFigures.Need(need),
            Window = SizingFigures.Window(cell, request.Electrics),
            Series = series,
            Parallel = parallel,
            ParallelForEnergy = forEnergy,
            ParallelForPeakCurrent = forPeak,
            ParallelForContinuousCurrent = forContinuous,
            PeakCurrentA = peakA,
            ContinuousCurrentLowA = lowA,
        };
        choice = WithVoltages(choice, request);
        choice = WithSize(choice, request);
        choice = WithEnergyAndHeat(choice, request);
        choice = WithFaultAndCharge(choice, request);
        choice = WithSpeed(choice, request);
        return LimitChecks.Judge(choice, request);
    }

    private static PackChoice WithVoltages(PackChoice choice, SizingRequest request)
    {
        double? full = choice.Series * choice.Cell.FullV;
        double? nominal = choice.Series * choice.Cell.NominalV;
        double? cutoff = choice.Series * choice.Cell.CutoffV;
        return choice with
        {
            VoltageFullV = full,
            VoltageNominalV = nominal,
            VoltageCutoffV = cutoff,
            MarginControllerMaxV = request.Electrics.ControllerMaxV - full,
            MarginControllerMinV = cutoff - request.Electrics.ControllerMinV,
            ContinuousCurrentA = SizingFigures.ContinuousW(request) / nominal,
        };
    }

    private static PackChoice WithSize(PackChoice choice, SizingRequest request)
    {
        int? cells = choice.Series * choice.Parallel;
        double? cellMassKg = cells * choice.Cell.MassG / 1000;
        double? capacityAh = choice.Parallel * choice.Cell.CapacityAh;
        return choice with
        {
            Cells = cells,
            CapacityAh = capacityAh,
            EnergyNominalWh = choice.VoltageNominalV * capacityAh,
            CRatePeak = choice.PeakCurrentA / capacityAh,
            CRateContinuous = choice.ContinuousCurrentA / capacityAh,
            CellPeakA = choice.PeakCurrentA / choice.Parallel,
            CellContinuousA = choice.ContinuousCurrentLowA / choice.Parallel,
            CellMassKg = cellMassKg,
            PackMassKg = cellMassKg * (1 + request.OverheadFraction),
            Links = 2 * cells,
        };
    }

    private static PackChoice WithEnergyAndHeat(PackChoice choice, SizingRequest request)
    {
        double? ohm = choice.Parallel is { } parallel
            ? SizingFigures.ResistanceOhm(request, choice.Cell.ResistanceMilliohm, choice.Series, parallel)
            : null;
        double? usableWh = choice.Parallel is { } p ? SizingFigures.UsableWh(request, choice.Cell, choice.Series, p) : null;
        return choice with
        {
            PackResistanceMilliohm = ohm * 1000,
            OhmicLossFraction = choice.ContinuousCurrentA * ohm / choice.VoltageNominalV,
            EnergyUsableWh = usableWh,
            RangeKm = usableWh / choice.Need.WhPerKm,
            SagPeakV = choice.PeakCurrentA * ohm,
            VoltageUnderPeakV = choice.VoltageNominalV - choice.PeakCurrentA * ohm,
            HeatPeakW = choice.PeakCurrentA * choice.PeakCurrentA * ohm,
            HeatContinuousW = choice.ContinuousCurrentA * choice.ContinuousCurrentA * ohm,
            PricePerUsableKWh = choice.Cells * choice.Cell.Price / (usableWh / 1000),
            StrandedWh = StrandedWh(choice, request, usableWh),
        };
    }

    // The controller's limit above the cells' cut-off: taken as the share of the voltage span that is not used, an
    // upper estimate, because the curve is steeper near empty than on the way there.
    private static double? StrandedWh(PackChoice choice, SizingRequest request, double? usableWh) =>
        choice is { VoltageFullV: { } full, VoltageCutoffV: { } cutoff } && request.Electrics.ControllerMinV is { } controller
        && controller > cutoff && full > controller
            ? usableWh * (controller - cutoff) / (full - cutoff)
            : null;

    private static PackChoice WithFaultAndCharge(PackChoice choice, SizingRequest request)
    {
        Electrics electrics = request.Electrics;
        double? shortA = choice.VoltageFullV / (choice.PackResistanceMilliohm / 1000);
        double? firstOhm = choice.Parallel is { } parallel
            ? SizingFigures.ResistanceOhm(request, choice.Cell.AcResistanceMilliohm, choice.Series, parallel)
            : null;
        double? chargeA = Smaller(electrics.ChargerA, choice.Parallel * choice.Cell.MaxChargeA);
        return choice with
        {
            ShortCircuitA = shortA,
            ProspectiveShortCircuitA = choice.VoltageFullV / firstOhm ?? ShortCircuit.FirstInstantOverDc * shortA,
            FuseMinA = FuseRule.OverContinuous * choice.ContinuousCurrentLowA,
            ChargeCurrentA = chargeA,
            ChargeHours = choice.CapacityAh / chargeA + (electrics.TaperHours ?? 0.5),
        };
    }

    private static PackChoice WithSpeed(PackChoice choice, SizingRequest request)
    {
        Electrics electrics = request.Electrics;
        double? wheelRpm = electrics.MotorRpmPerV * choice.VoltageNominalV * (electrics.MotorLoadedFraction ?? 1) / electrics.GearRatio;
        double? byMotor = wheelRpm * electrics.WheelCircumferenceMm * 60 / 1e6;
        double? atLimitW = electrics.ControllerMaxA
            * (choice.VoltageNominalV - electrics.ControllerMaxA * choice.PackResistanceMilliohm / 1000);
        double? wheelW = Smaller(request.Need.PeakPowerW, atLimitW) * (request.Need.EfficiencyFraction ?? 1);
        RoadLoad? road = SizingFigures.Road(request.Need);
        double? byPower = road is not null && wheelW is { } watts and > 0 ? road.SpeedKmh(watts) : null;
        return choice with
        {
            WheelRpm = wheelRpm,
            TopSpeedByMotorKmh = byMotor,
            TopSpeedByPowerKmh = byPower,
            TopSpeedKmh = byMotor is { } motor && byPower is { } power ? Math.Min(motor, power) : byMotor ?? byPower,
        };
    }

    private static double? Smaller(double? a, double? b) => a is { } x && b is { } y ? Math.Min(x, y) : null;

    private static int? Largest(params ReadOnlySpan<int?> counts)
    {
        int? largest = null;
        foreach (int? count in counts)
            if (count is { } known && (largest is null || known > largest))
                largest = known;
        return largest is { } cells ? Math.Max(1, cells) : null;
    }
}
