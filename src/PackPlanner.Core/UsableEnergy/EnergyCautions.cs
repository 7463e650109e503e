using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Packs;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>What else must be known to judge where a string can hurt.</summary>
public sealed record StringProtection
{
    /// <summary>A main fuse is planned or fitted.</summary>
    public bool Fuse { get; init; }

    /// <summary>A disconnect is planned or fitted.</summary>
    public bool Disconnect { get; init; }

    /// <summary>A pre-charge path is planned or fitted.</summary>
    public bool PreCharge { get; init; }

    /// <summary>A monitor that watches each group is planned or fitted.</summary>
    public bool Monitor { get; init; }

    /// <summary>Each cell has a fuse or fusible link.</summary>
    public bool CellFuses { get; init; }

    /// <summary>Highest continuous current of one cell, amperes; null: unknown.</summary>
    public double? CellRatingA { get; init; }

    /// <summary>Cell temperature while charging, degrees Celsius; null: that of the ride.</summary>
    public double? ChargeDegC { get; init; }

    /// <summary>Charging current of the charger, amperes; null: no charger is named.</summary>
    public double? ChargerA { get; init; }

    /// <summary>End volts of the charger; null: unknown.</summary>
    public double? ChargerV { get; init; }

    /// <summary>Highest charging current of one cell, amperes; null: unknown.</summary>
    public double? CellChargeA { get; init; }

    /// <summary>True where the resistances given are 1 kHz ones.</summary>
    public bool OnlyFirstInstant { get; init; }

    /// <summary>Insulation between pack and frame, ohms; null: not measured.</summary>
    public double? InsulationOhm { get; init; }

    /// <summary>One way from pack to controller, metres; null: unknown.</summary>
    public double? CableM { get; init; }

    /// <summary>Capacitors of the controller, farads; null: unknown.</summary>
    public double? CapacitanceF { get; init; }
}

/// <summary>A caution that could not be judged.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Why">Which reading is missing.</param>
public sealed record NotChecked(string Code, string Why);

/// <summary>Cautions that a string in use raises: 9 to 11, 21 to 24, 28 and 30 to 32.</summary>
public static class EnergyCautions
{
    /// <summary>Least insulation for each volt of working voltage, ohms. Source: [Iso6469-4].</summary>
    public const double LeastOhmPerV = 100;

    // Between 0 °C and this a charge is to be slower (caution-11). Common practice, no source.
    private const double CoolDegC = 10;

    /// <summary>Judges a string.</summary>
    /// <param name="request">The string and its load.</param>
    /// <param name="budget">Its budget.</param>
    /// <param name="shorted">Its short-circuit currents.</param>
    /// <param name="protection">What is planned or fitted.</param>
    /// <returns>The cautions raised, and those that could not be judged.</returns>
    public static (IReadOnlyList<Caution> Raised, IReadOnlyList<NotChecked> NotChecked) Of(
        EnergyRequest request, EnergyBudget budget, StringShortCircuit shorted, StringProtection protection)
    {
        List<Caution> raised = [];
        List<NotChecked> open = [];
        double fullV = request.Groups.Count * request.ChargedToV;
        AddIf(raised, TouchVoltage.Of("pack", fullV));
        if (protection.InsulationOhm is { } insulationOhm)
            AddIf(raised, Insulation(insulationOhm, fullV));
        else if (fullV > TouchVoltage.LimitV)
            open.Add(new NotChecked("caution-10", "the insulation between pack and frame was not measured"));
        Cold(request, protection, raised, open);
        if (shorted.ProspectiveA is { } prospectiveA)
            AddIf(raised, ShortCircuit.HighCurrent("pack", prospectiveA));
        else
            Supposed(request, shorted, raised, open);
        CellFuses(request, protection, raised, open);
        Protection(protection, raised);
        Rating(request, budget, protection, raised, open);
        if (protection.ChargerA is not null)
            raised.Add(new Caution("caution-28", SignalWord.Warning, "charger settings", "the first charge of a new or changed pack"));
        raised.AddRange(ChargerCautions.Of(request, protection));
        raised.AddRange(Extrapolated(request, protection));
        return (raised, open);
    }

    /// <summary>Caution 10, where the insulation between pack and frame is too low.</summary>
    /// <param name="ohm">Insulation, ohms.</param>
    /// <param name="fullV">Volts of the pack at full charge.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? Insulation(double ohm, double fullV) => ohm < LeastOhmPerV * fullV
        ? new Caution("caution-10", fullV > TouchVoltage.LimitV ? SignalWord.Danger : SignalWord.Notice, "pack",
            FormattableString.Invariant($"{ohm:0} ohm to the frame at {fullV:0.0} V, the least is {LeastOhmPerV * fullV:0} ohm"))
        : null;

    // What stands for missing resistances may warn, and never says that nothing is to be warned of.
    private static void Supposed(EnergyRequest request, StringShortCircuit shorted, List<Caution> raised, List<NotChecked> open)
    {
        string why = MissingResistances.Supposed(request.Groups) ?? MissingResistances.Words(request.Groups)!;
        if (shorted.LikelyProspective is not { } likely)
        {
            open.Add(new NotChecked("caution-21", $"{why}: the short-circuit current is not known"));
            return;
        }

        if (ShortCircuit.HighCurrent("pack", likely.LikelyA) is { } high)
            raised.Add(high with { Saw = $"{high.Saw}; {why}" });
        open.Add(new NotChecked("caution-21", $"{why}: a short circuit begins at {likely.Words}"));
    }

    private static void Cold(EnergyRequest request, StringProtection protection, List<Caution> raised, List<NotChecked> open)
    {
        double? degC = protection.ChargeDegC ?? request.TemperatureDegC;
        string of = protection.ChargeDegC is null ? "the temperature given for the ride" : "the temperature given for charging";
        if (degC is null)
            open.Add(new NotChecked("caution-11", "no temperature: cold charging is not judged"));
        else if (!request.Chemistry.HasGraphiteAnode)
            open.Add(new NotChecked("caution-11", $"{request.Chemistry.Name}: only the data sheet gives the lowest charging temperature"));
        else if (degC < 0)
            raised.Add(new Caution("caution-11", SignalWord.Warning, "charging", $"{degC:0.#} °C, {of}; a graphite anode is not charged below 0 °C"));
        else if (degC < CoolDegC)
            raised.Add(new Caution("caution-11", SignalWord.Caution, "charging", $"{degC:0.#} °C, {of}: at most {ChargeRates.PerHour(request.Chemistry, degC.Value):0.##} A for each Ah where the data sheet says nothing else"));
    }

    private static void CellFuses(EnergyRequest request, StringProtection protection, List<Caution> raised, List<NotChecked> open)
    {
        SeriesGroup? widest = request.Groups.Where(group => group.Parallel is not null).OrderBy(group => group.ResistanceMilliohm is null).MaxBy(group => group.Parallel);
        if (widest?.Parallel is not { } parallel)
            open.Add(new NotChecked("caution-22", "the number of cells in parallel is not given"));
        else if (!protection.CellFuses)
            AddIf(raised, ShortCircuit.NoCellFuses($"group {widest.Number}", parallel, request.ChargedToV, widest.ResistanceMilliohm * parallel, widest.CapacityAh / parallel));
    }

    /// <summary>Which of the four parts that each stop a different accident are not said to be there.</summary>
    internal static string[] Lacking(StringProtection protection) =>
    [
        .. new (bool Has, string Name)[]
        {
            (protection.Fuse, "fuse"), (protection.Disconnect, "disconnect"),
            (protection.PreCharge, "pre-charge"), (protection.Monitor, "BMS with a cut-off for each group"),
        }.Where(part => !part.Has).Select(part => part.Name),
    ];

    private static void Protection(StringProtection protection, List<Caution> raised)
    {
        if (Lacking(protection) is { Length: > 0 } missing)
            raised.Add(new Caution("caution-23", SignalWord.Warning, "pack", $"not stated: {string.Join(", ", missing)}"));
    }

    private static void Rating(EnergyRequest request, EnergyBudget budget, StringProtection protection, List<Caution> raised, List<NotChecked> open)
    {
        if (protection.CellRatingA is not { } ratingA || budget.EffectiveA <= 0 || request.Groups.Any(group => group.Parallel is null))
        {
            string[] missing =
            [
                .. new (bool Is, string Name)[]
                {
                    (budget.EffectiveA <= 0, "a load"), (protection.CellRatingA is null, "the highest continuous current of a cell"),
                    (request.Groups.Any(group => group.Parallel is null), "the cells in parallel"),
                }.Where(part => part.Is).Select(part => part.Name),
            ];
            open.Add(new NotChecked("caution-24", $"not said: {string.Join(", ", missing)}"));
            return;
        }

        if (request.Groups.Any(group => group.LargestShareTimes is null))
            open.Add(new NotChecked("caution-24", $"shares inside {(MissingResistances.Words(request.Groups) is { } lacking && request.Groups.Any(group => group.LargestShareTimes is not null) ? $"some groups are not known ({lacking})" : "the groups are not known")}: an equal share is taken"));
        foreach (SeriesGroup group in request.Groups)
        {
            double worstA = budget.EffectiveA / group.Parallel!.Value * (group.LargestShareTimes ?? 1);
            double agedA = ratingA * Math.Min(1, group.CapacityAh / request.RatedAh ?? 1);
            if (worstA > agedA)
                raised.Add(new Caution("caution-24", SignalWord.Warning, $"group {group.Number}", $"its hardest-worked cell carries {worstA:0.0#} A; its aged rating is {agedA:0.0#} A"));
        }
    }

    private static IEnumerable<Caution> Extrapolated(EnergyRequest request, StringProtection protection)
    {
        if (request.TemperatureDegC is { } degC && ColdCapacity.IsExtrapolated(request.Chemistry, degC))
            yield return new Caution("caution-30", SignalWord.Notice, "temperature", $"{degC:0.#} °C lies below what the rule for the cold was measured for");
        if (request.Chemistry.Curve.Standing == Standing.Assumed)
            yield return new Caution("caution-30", SignalWord.Notice, "open-circuit curve", $"the curve of {request.Chemistry.Name} is its general shape from memory, not a measurement");
        if (protection.OnlyFirstInstant)
            yield return new Caution("caution-30", SignalWord.Notice, "resistance", "1 kHz resistances understate sag and heat under a load that lasts");
    }

    private static void AddIf(List<Caution> raised, Caution? caution)
    {
        if (caution is not null)
            raised.Add(caution);
    }
}
