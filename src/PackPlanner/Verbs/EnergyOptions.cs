using System.CommandLine;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>What was drawn from the command line as a load.</summary>
/// <param name="Plan">The load; null when none was given.</param>
internal sealed record LoadFound(LoadPlan? Plan);

/// <summary>The options of <c>energy</c>, read and checked.</summary>
internal sealed class EnergyOptions
{
    private static readonly Option<string?> LoadOption = new("--load") { Description = "40A, 1500W or a profile PROFILE.csv with time_s and current_A or power_W; none: at rest" };
    private static readonly Option<string?> FullVOption = new("--full-v") { Description = "volts of a group to which it is charged (default the chemistry's limit)" };
    private static readonly Option<string?> EmptyVOption = new("--empty-v") { Description = "loaded volts of a group at which it ends (default the chemistry's cut-off)" };
    private static readonly Option<string?> PackEmptyV = new("--pack-empty-v") { Description = "loaded volts of the pack at which the controller gives up" };
    private static readonly Option<string?> ControllerMaxV = new("--controller-max-v") { Description = "most volts that the controller bears" };
    private static readonly Option<string?> TemperatureOption = new("--temperature") { Description = "cell temperature of the ride, such as 8degC" };
    private static readonly Option<string?> Reserve = new("--reserve") { Description = "part of the energy kept back, such as 10%" };
    private static readonly Option<string?> RatedAh = new("--rated-ah") { Description = "capacity of a group when new, such as 45Ah" };
    private static readonly Option<string?> NominalV = new("--nominal-v") { Description = "nominal volts of a group (default the chemistry's)" };
    private static readonly Option<string?> Link = new("--link") { Description = "each link between two groups, such as 0.2mohm" };
    private static readonly Option<string?> PlacesOption = new("--places") { Description = "the answer of fit --json: --link is then one strip, and a link of several side by side has its part of it" };
    private static readonly Option<string?> Leads = new("--leads") { Description = "leads, fuse and contactor together, such as 2mohm" };
    private static readonly Option<string?> TestCurrent = new("--test-current") { Description = "current through a group in the capacity tests" };
    private static readonly Option<string?> TestCutoffV = new("--test-cutoff-v") { Description = "volts of a group at which the capacity tests ended" };
    private static readonly Option<int?> ParallelOption = new("--parallel") { Description = "cells in parallel in each group" };
    private static readonly Option<string?> CellRating = new("--discharge-rating") { Description = "highest continuous current of one cell, such as 10A" };
    private static readonly Option<string?> Charger = new("--charger") { Description = "charging current, such as 5A: adds the charger's settings" };
    private static readonly Option<string?> ChargerV = new("--charger-v") { Description = "volts at which the charger ends, such as 54.6V: held against the full pack" };
    private static readonly Option<string?> CellCharge = new("--charge-rating") { Description = "highest charging current of one cell, such as 2A: the charger is held against it" };
    private static readonly Option<string?> ChargeTemperature = new("--charge-temperature") { Description = "cell temperature while charging (default that of the ride)" };
    private static readonly Option<string?> Has = new("--has") { Description = "what is planned or fitted: fuse,disconnect,pre-charge,monitor,cell-fuses" };
    private static readonly Option<int?> DrawsOption = new("--draws") { Description = "take the 90 % range from so many seeded draws over whole discharges, such as 10000" };
    private static readonly Option<string?> CableLength = new("--cable-length") { Description = "one way from pack to controller, such as 2m: adds a cable to start from" };
    private static readonly Option<string?> CapacitanceOption = new("--capacitance") { Description = "capacitors of the controller, such as 1.5mF: adds a pre-charge resistor to start from" };
    private static readonly Option<string?> Joint = new("--joint") { Description = "each of the two joints of a cell with its strip or bar, such as 0.1mohm, where the cells' resistances leave it out" };
    private static readonly Option<string?> Peak = new("--peak") { Description = "largest current, such as 60A: adds the heat at the peak" };
    private static readonly Option<string?> PeakTime = new("--peak-time") { Description = "how long the peak lasts, such as 20s" };
    private static readonly Option<string?> CellMass = new("--cell-mass") { Description = "mass of one cell, such as 48g: adds how fast it could warm" };
    private static readonly Option<string?> InsulationOption = new("--insulation") { Description = "measured between pack and frame, such as 500kohm" };

    private readonly VerbCall call;

    private EnergyOptions(VerbCall call) => this.call = call;

    internal static IReadOnlyList<Option> All { get; } =
    [
        LoadOption, FullVOption, EmptyVOption, PackEmptyV, ControllerMaxV, TemperatureOption, Reserve, RatedAh, NominalV, Link, PlacesOption, Leads,
        TestCurrent, TestCutoffV, ParallelOption, CellRating, Charger, ChargerV, CellCharge, ChargeTemperature, Has, DrawsOption, CableLength, CapacitanceOption,
        Joint, Peak, PeakTime, CellMass, InsulationOption, .. UseOptions.All,
    ];

    internal int? Parallel { get; private init; }

    /// <summary>Capacity of a group when new, ampere-hours; null when not typed.</summary>
    internal double? RatedGroupAh => Above(RatedAh, call.Quantity<ElectricCharge>(RatedAh, "a charge", "45Ah")?.AmpereHours);

    internal double? WhPerKm { get; private init; }

    /// <summary>Draws of the Monte Carlo run; null: the spread is formed directly.</summary>
    internal int? Draws { get; private init; }

    internal required StringProtection Protection { get; init; }

    /// <summary>Reads every option, so that the first wrong one is known.</summary>
    internal static EnergyOptions Read(VerbCall call)
    {
        EnergyOptions options = new(call)
        {
            Parallel = call.Value(ParallelOption),
            WhPerKm = UseOptions.WhPerKm(call),
            Draws = call.Value(DrawsOption),
            Protection = ProtectionOf(call),
        };
        if (options.Parallel < 1)
            call.Refuse("--parallel", $"{options.Parallel} is no number of cells", "Give 1 or more.");
        if (options.Draws is < 100 or > 1_000_000)
            call.Refuse("--draws", $"{options.Draws} draws tell too little or take too long", "Give from 100 to 1000000.");
        options.Fill(new EnergyRequest { Groups = [], Chemistry = Core.Cells.Chemistries.LithiumIronPhosphate });
        return options;
    }

    /// <summary>Puts the typed figures into a request; what was not typed stays as it is.</summary>
    internal EnergyRequest Fill(EnergyRequest request) => request with
    {
        FullV = Volts(FullVOption) ?? request.FullV,
        EmptyV = Volts(EmptyVOption) ?? request.EmptyV,
        PackEmptyV = Volts(PackEmptyV) ?? request.PackEmptyV,
        ControllerMaxV = Volts(ControllerMaxV) ?? request.ControllerMaxV,
        TemperatureDegC = Degrees(call, TemperatureOption) ?? request.TemperatureDegC,
        ReserveFraction = ReserveOf() ?? request.ReserveFraction,
        LinkMilliohm = Milliohm(Link) ?? request.LinkMilliohm,
        LeadsMilliohm = Milliohm(Leads) ?? request.LeadsMilliohm,
        JointMilliohm = Milliohm(Joint) ?? request.JointMilliohm,
        PeakA = Above(Peak, call.Quantity<ElectricCurrent>(Peak, "a current", "60A")?.Amperes) ?? request.PeakA,
        PeakS = Above(PeakTime, call.Quantity<Duration>(PeakTime, "a time", "20s")?.Seconds) ?? request.PeakS,
        CellMassKg = Above(CellMass, call.Quantity<Mass>(CellMass, "a mass", "48g")?.Kilograms) ?? request.CellMassKg,
        RatedAh = RatedGroupAh ?? request.RatedAh,
        NominalV = Volts(NominalV) ?? request.NominalV,
        TestCurrentA = call.Quantity<ElectricCurrent>(TestCurrent, "a current", "2A")?.Amperes ?? request.TestCurrentA,
        TestCutoffV = Volts(TestCutoffV) ?? request.TestCutoffV,
    };

    /// <summary>The request with its links as they were placed, where places were named.</summary>
    internal Outcome<EnergyRequest> Linked(EnergyRequest request)
    {
        if (call.Value(PlacesOption) is not { } places)
            return request;
        if (request.LinkMilliohm is not { } strip)
            return Refusal.CommandLine("no-strip", "--places", "how many strips join two groups tells nothing without the resistance of one", "Add --link 0.2mohm, one strip between two cells.");
        return FitLinks.Read(places).Is(out FitLinks? links, out Refusal? why) && links.Mean(request.Groups.Count).Is(out LinkFactor? factor, out why)
            ? request with { LinkMilliohm = strip * factor.Value }
            : why;
    }

    /// <summary>What is typed of the protection, over what a job says.</summary>
    internal StringProtection Over(StringProtection job) => new()
    {
        OnlyFirstInstant = job.OnlyFirstInstant || Protection.OnlyFirstInstant,
        Fuse = job.Fuse || Protection.Fuse,
        Disconnect = job.Disconnect || Protection.Disconnect,
        PreCharge = job.PreCharge || Protection.PreCharge,
        Monitor = job.Monitor || Protection.Monitor,
        CellFuses = job.CellFuses || Protection.CellFuses,
        CellRatingA = Protection.CellRatingA ?? job.CellRatingA,
        ChargerA = Protection.ChargerA ?? job.ChargerA,
        ChargerV = Protection.ChargerV ?? job.ChargerV,
        CellChargeA = Protection.CellChargeA ?? job.CellChargeA,
        ChargeDegC = Protection.ChargeDegC ?? job.ChargeDegC,
        InsulationOhm = Protection.InsulationOhm ?? job.InsulationOhm,
        CableM = Protection.CableM ?? job.CableM,
        CapacitanceF = Protection.CapacitanceF ?? job.CapacitanceF,
    };

    /// <summary>The load, perhaps read from a profile.</summary>
    internal static Outcome<LoadFound> Load(VerbCall verbCall)
    {
        if (verbCall.Value(LoadOption) is not { } typed)
            return new LoadFound(null);
        if (File.Exists(typed) || typed.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) || typed.EndsWith(".csv.gz", StringComparison.OrdinalIgnoreCase))
            return LoadProfiles.Read(typed, verbCall.CurrentSign == "charge", verbCall.StandardInput).Is(out LoadPlan.Profile? profile, out Refusal? why)
                ? new LoadFound(profile)
                : why;
        LoadPlan? plan = TypedQuantity.TryRead(typed, "a current", "40A", out ElectricCurrent current, out _) ? new LoadPlan.ConstantCurrent(current.Amperes)
            : TypedQuantity.TryRead(typed, "a power", "1500W", out Power power, out _) ? new LoadPlan.ConstantPower((double)power.Watts)
            : null;
        return plan switch
        {
            null => Refusal.CommandLine("bad-option", "--load", $"\"{typed}\" is neither a current, a power nor a file that exists", "Write --load 40A, --load 1500W or --load profile.csv."),
            LoadPlan.ConstantCurrent { LoadA: <= 0 } or LoadPlan.ConstantPower { LoadW: <= 0 } => Refusal.CommandLine("bad-option", "--load", $"\"{typed}\" draws nothing", "Give a load above zero, or leave --load out for the figures at rest."),
            _ => new LoadFound(plan),
        };
    }

    private static StringProtection ProtectionOf(VerbCall call)
    {
        string[] known = ["fuse", "disconnect", "pre-charge", "monitor", "cell-fuses"];
        string[] has = [.. (call.Value(Has) ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(word => word.ToLowerInvariant()).Select(word => word == "bms" ? "monitor" : word)];
        if (has.FirstOrDefault(word => !known.Contains(word)) is { } unknown)
            call.Refuse("--has", $"\"{unknown}\" is not known", $"Did you mean {NearestName.Of(unknown, known)}? Known: {string.Join(", ", known)}.");
        return new StringProtection
        {
            Fuse = has.Contains("fuse"),
            Disconnect = has.Contains("disconnect"),
            PreCharge = has.Contains("pre-charge"),
            Monitor = has.Contains("monitor"),
            CellFuses = has.Contains("cell-fuses"),
            CellRatingA = call.Quantity<ElectricCurrent>(CellRating, "a current", "10A")?.Amperes,
            ChargerA = call.Quantity<ElectricCurrent>(Charger, "a current", "5A")?.Amperes,
            ChargerV = Above(call, ChargerV, call.Quantity<ElectricPotential>(ChargerV, "a voltage", "54.6V")?.Volts),
            CellChargeA = Above(call, CellCharge, call.Quantity<ElectricCurrent>(CellCharge, "a current", "2A")?.Amperes),
            ChargeDegC = Degrees(call, ChargeTemperature),
            InsulationOhm = call.Quantity<ElectricResistance>(InsulationOption, "a resistance", "500kohm")?.Ohms,
            CableM = Above(call, CableLength, call.Quantity<Length>(CableLength, "a length", "2m")?.Meters),
            CapacitanceF = Above(call, CapacitanceOption, call.Quantity<ElectricCapacitance>(CapacitanceOption, "a capacitance", "1.5mF")?.Farads),
        };
    }

    private static double? Degrees(VerbCall call, Option<string?> option)
    {
        double? degC = call.Quantity<Temperature>(option, "a temperature", "8degC")?.DegreesCelsius;
        if (degC is < -60 or > 100)
            call.Refuse(option.Name, $"{degC:0.#} °C is no temperature of a pack in use", "Give degrees Celsius such as 8degC, or Fahrenheit such as 46degF.");
        return degC;
    }

    private double? ReserveOf()
    {
        double? reserve = call.Quantity<Ratio>(Reserve, "a share", "10%")?.DecimalFractions;
        if (reserve is < 0 or >= 1)
            call.Refuse("--reserve", $"{Figures.Digits(reserve.Value * 100, 4)} % cannot be kept back", "Give it from 0% to below 100%.");
        return reserve;
    }

    private double? Volts(Option<string?> option) =>
        Above(option, call.Quantity<ElectricPotential>(option, "a voltage", "3.1V")?.Volts);

    private double? Milliohm(Option<string?> option)
    {
        double? milliohm = call.Quantity<ElectricResistance>(option, "a resistance", "0.2mohm")?.Milliohms;
        if (milliohm < 0)
            call.Refuse(option.Name, $"{milliohm} mohm is below zero", "Give 0mohm or more.");
        return milliohm;
    }

    private double? Above(Option<string?> option, double? value) => Above(call, option, value);

    private static double? Above(VerbCall call, Option<string?> option, double? value)
    {
        if (value <= 0)
            call.Refuse(option.Name, $"{value} is not above zero", "Correct the figure.");
        return value;
    }
}
