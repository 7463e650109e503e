using System.Text.Json;

namespace PackPlanner.Tests.Verbs;

/// <summary>
/// Sizing reckoned a second time, straight from the formulas of docs/methods/sizing.md, for one S and P: it shares no code with the program.
/// A figure that follows from a missing input is null.
/// </summary>
internal sealed class SizingReckoner(JsonElement whole, JsonElement cell, int series, double? parallel)
{
    private const double Gravity = 9.80665;

    internal Dictionary<string, double?> Figures { get; } = [];

    internal SortedSet<string> Broken { get; } = new(StringComparer.Ordinal);

    internal SortedSet<string> NotChecked { get; } = new(StringComparer.Ordinal);

    private double? this[string key] { get => Figures[key]; set => Figures[key] = value; }

    internal SizingReckoner Reckon()
    {
        Energy();
        Volts();
        Currents();
        Cells();
        Faults();
        Speeds();
        Limits();
        return this;
    }

    private double? Cell(string name) => Number(cell, name);

    private double? Of(string part, string name) => whole.TryGetProperty(part, out JsonElement found) ? Number(found, name) : null;

    private static double? Number(JsonElement part, string name) =>
        part.TryGetProperty(name, out JsonElement found) && found.ValueKind == JsonValueKind.Number ? found.GetDouble() : null;

    private double Kept => (1 - (Of("need", "reserve") ?? 0)) * (Of("need", "usableFraction") ?? 1) * (Of("need", "ageing") ?? 1) * (Of("need", "temperatureFactor") ?? 1);

    private double? RoadW(double kmh)
    {
        double v = kmh / 3.6, slope = Math.Atan((Of("need", "gradePct") ?? 0) / 100);
        double? air = 0.5 * (Of("need", "airDensityKgM3") ?? 1.225) * Of("need", "cdA") * v * v;
        return v * (air + (Of("need", "massKg") * Gravity * ((Of("need", "crr") * Math.Cos(slope)) + Math.Sin(slope))));
    }

    private void Energy()
    {
        double? speed = Of("need", "speedKmh");
        double? fromRoad = speed is double kmh ? ((RoadW(kmh) / (Of("need", "efficiency") ?? 1)) + (Of("need", "accessoryW") ?? 0)) / kmh : null;
        this["whPerKm"] = Of("need", "whPerKm") ?? fromRoad;
        this["energyDeliveredWh"] = this["whPerKm"] * Of("need", "rangeKm");
        this["energyNominalNeededWh"] = this["energyDeliveredWh"] / Kept;
    }

    private void Volts()
    {
        double? most = Of("electrics", "controllerMaxV"), least = Of("electrics", "controllerMinV");
        this["seriesMin"] = least / Cell("cutoffV") is double a ? Math.Ceiling(a - 1e-9) : null;
        this["seriesMax"] = most / Cell("fullV") is double b ? Math.Floor(b + 1e-9) : null;
        this["seriesMinStranding"] = least / Cell("nominalV") is double c ? Math.Floor(c + 1e-9) + 1 : null;
        this["voltageFullV"] = series * Cell("fullV");
        this["voltageNominalV"] = series * Cell("nominalV");
        this["voltageCutoffV"] = series * Cell("cutoffV");
        this["marginControllerMaxV"] = most - this["voltageFullV"];
        this["marginControllerMinV"] = this["voltageCutoffV"] - least;
    }

    private double? LowV => Of("electrics", "controllerMinV") is double least && this["voltageCutoffV"] is double cutoff ? Math.Max(least, cutoff) : this["voltageCutoffV"];

    private double? ContinuousW => Of("need", "continuousPowerW") ?? (this["whPerKm"] * Of("need", "speedKmh"));

    private void Currents()
    {
        double? peak = Of("need", "peakPowerW") / LowV;
        this["peakCurrentA"] = peak is double p && Of("electrics", "controllerMaxA") is double most ? Math.Min(p, most) : peak;
        this["continuousCurrentA"] = ContinuousW / this["voltageNominalV"];
        this["continuousCurrentLowA"] = ContinuousW / LowV;
        double derate = Of("need", "currentDerate") ?? 1;
        this["parallelForPeakCurrent"] = this["peakCurrentA"] / (Cell("peakDischargeA") * derate) is double a ? Math.Ceiling(a - 1e-9) : null;
        this["parallelForContinuousCurrent"] = this["continuousCurrentLowA"] / (Cell("continuousDischargeA") * derate) is double b ? Math.Ceiling(b - 1e-9) : null;
        this["parallelForEnergy"] = null;
        for (int p1 = 1; p1 < 2000 && this["parallelForEnergy"] is null && UsableWh(p1) is double wh && this["energyDeliveredWh"] is double wanted; p1++)
            this["parallelForEnergy"] = wh >= wanted - 1e-6 ? p1 : null;
        parallel ??= new[] { this["parallelForEnergy"], this["parallelForPeakCurrent"], this["parallelForContinuousCurrent"] }.Max();
        this["parallel"] = parallel;
    }

    private double? Ohm(double? cellMilliohm, double? beside) => ((series * cellMilliohm / beside) + Of("electrics", "linkResistanceMilliohm")) / 1000;

    private double? UsableWh(double? beside)
    {
        double? volts = this["voltageNominalV"], lost = ContinuousW / volts * Ohm(Cell("resistanceMilliohm"), beside) / volts;
        return volts * beside * Cell("capacityAh") * Kept * (1 - lost);
    }

    private void Cells()
    {
        double? ohm = Ohm(Cell("resistanceMilliohm"), parallel), peak = this["peakCurrentA"], steady = this["continuousCurrentA"];
        this["cells"] = series * parallel;
        this["capacityAh"] = parallel * Cell("capacityAh");
        this["energyNominalWh"] = this["voltageNominalV"] * this["capacityAh"];
        this["packResistanceMilliohm"] = ohm * 1000;
        this["ohmicLossFraction"] = steady * ohm / this["voltageNominalV"];
        this["energyUsableWh"] = UsableWh(parallel);
        this["rangeKm"] = this["energyUsableWh"] / this["whPerKm"];
        this["sagPeakV"] = peak * ohm;
        this["voltageUnderPeakV"] = this["voltageNominalV"] - (peak * ohm);
        this["heatPeakW"] = peak * peak * ohm;
        this["heatContinuousW"] = steady * steady * ohm;
        this["cRatePeak"] = peak / this["capacityAh"];
        this["cRateContinuous"] = steady / this["capacityAh"];
        this["cellPeakA"] = peak / parallel;
        this["cellContinuousA"] = this["continuousCurrentLowA"] / parallel;
        this["cellMassKg"] = this["cells"] * Cell("massG") / 1000;
        this["packMassKg"] = this["cellMassKg"] * (1 + Of("pack", "overheadFraction"));
        this["links"] = 2 * this["cells"];
        this["pricePerUsableKWh"] = this["cells"] * Cell("price") / this["energyUsableWh"] * 1000;
    }

    private void Faults()
    {
        this["shortCircuitA"] = this["voltageFullV"] / Ohm(Cell("resistanceMilliohm"), parallel);
        this["prospectiveShortCircuitA"] = (this["voltageFullV"] / Ohm(Cell("acResistanceMilliohm"), parallel)) ?? (2 * this["shortCircuitA"]);
        this["fuseMinA"] = 1.25 * this["continuousCurrentLowA"];
        this["chargeCurrentA"] = Of("electrics", "chargerA") is double charger && parallel * Cell("maxChargeA") is double borne ? Math.Min(charger, borne) : null;
        this["chargeHours"] = (this["capacityAh"] / this["chargeCurrentA"]) + (Of("electrics", "taperHours") ?? 0.5);
    }

    private void Speeds()
    {
        this["wheelRpm"] = Of("motor", "kvRpmPerV") * this["voltageNominalV"] * (Of("motor", "loadedFraction") ?? 1) / Of("motor", "gearRatio");
        this["topSpeedByMotorKmh"] = this["wheelRpm"] * Of("motor", "wheelCircumferenceMm") * 60 / 1e6;
        double? amps = Of("electrics", "controllerMaxA"), atLimit = amps * (this["voltageNominalV"] - (amps * Ohm(Cell("resistanceMilliohm"), parallel)));
        double? watts = atLimit is double w && Of("need", "peakPowerW") is double peak ? (Of("need", "efficiency") ?? 1) * Math.Min(w, peak) : null;
        double? byPower = null;
        // The road's power rises with speed: halving finds where it is what the wheel gets.
        if (watts is double at && RoadW(1) is not null)
        {
            (double low, double high) = (0, 1000);
            for (int k = 0; k < 60; k++)
                (low, high) = RoadW((low + high) / 2) < at ? ((low + high) / 2, high) : (low, (low + high) / 2);
            byPower = low;
        }

        this["topSpeedByPowerKmh"] = byPower;
        this["topSpeedKmh"] = new[] { byPower, this["topSpeedByMotorKmh"] }.Min();
    }

    private void Limits()
    {
        double derate = Of("need", "currentDerate") ?? 1;
        double? full = this["voltageFullV"], charger = Of("electrics", "chargerV"), fuseA = Of("electrics", "fuseA");
        Judge("voltage-over-controller", full - Of("electrics", "controllerMaxV"));
        Judge("cutoff-under-controller", Of("electrics", "controllerMinV") - this["voltageCutoffV"]);
        Judge("charger-mismatch", charger is null ? null : Math.Max((0.97 * full!.Value) - charger.Value, charger.Value - (1.005 * full.Value)));
        Judge("cell-peak-current", this["cellPeakA"] - (Cell("peakDischargeA") * derate));
        Judge("cell-continuous-current", this["cellContinuousA"] - (Cell("continuousDischargeA") * derate));
        Judge("range-short", Of("need", "rangeKm") - this["rangeKm"]);
        Judge("touch-voltage", full - 60);
        Judge("fuse-too-small", this["fuseMinA"] - fuseA);
        Judge("fuse-over-cell-current", fuseA - (parallel * Cell("peakDischargeA") * derate));
        Judge("fuse-voltage", full - Of("electrics", "fuseV"));
        Judge("fuse-breaking", this["shortCircuitA"] - Of("electrics", "fuseBreakingA"));
        Judge("charge-too-cold", Cell("minChargeC") - Of("need", "chargeTemperatureC"));
        if (Of("limits", "packMassKg") is double kg)
            Judge("mass-over", this["packMassKg"] - kg);
        if (Of("limits", "topSpeedKmh") is double kmh)
            Judge("speed-short", kmh - this["topSpeedKmh"]);
    }

    private void Judge(string code, double? over)
    {
        if (over is null)
            NotChecked.Add(code);
        else if (over > 1e-9)
            Broken.Add(code);
    }
}
