using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>Draws packs, faults, rides and loggers from a seed, and makes the log.</summary>
internal static class SimulatedScenario
{
    /// <summary>Every kind of log that the simulator draws.</summary>
    internal static readonly string[] Kinds =
    [
        "nmc-ride", "nca-ride", "nmc-ride", "nca-ride", "lfp-charge-ride", "lfp-ride", "lfp-charge-ride", "nmc-days", "nca-days", "nmc-charge",
        "lfp-charge", "nmc-slow", "lfp-plateau", "lfp-top", "nmc-fifth", "nmc-half", "nmc-cold", "lfp-days",
    ];

    internal static SimulatedLog Make(int seed) => Make(seed, Kinds[seed % Kinds.Length]);

    internal static SimulatedLog Make(int seed, string kind)
    {
        Random random = new(unchecked((seed * 7919) + 17));
        CurveFamily family = kind[..3] switch { "lfp" => CurveFamily.Lfp, "nca" => CurveFamily.Nca, _ => CurveFamily.Nmc };
        bool days = kind.EndsWith("days", StringComparison.Ordinal);
        SimulatedPack pack = DrawPack(random, family, kind, days);
        new SimulatedFaults(random, pack).Plant(kind, days);
        SimulatedLogger logger = DrawLogger(random, pack, kind, days);
        return Ride(random, pack, logger, kind);
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    private static SimulatedPack DrawPack(Random random, CurveFamily family, string kind, bool days)
    {
        bool lfp = family == CurveFamily.Lfp;
        int series = random.Next(4, 17), parallel = random.Next(1, 13);
        double rated = lfp ? Between(random, 40, 110) : Between(random, 8, 40);
        double full = lfp ? 3.65 : 4.2, empty = lfp ? 2.5 : random.Next(4) == 0 ? 2.8 : 3.0;
        double health = Between(random, 0.82, 1.0), total = Between(random, 0.055, 0.12) / rated;
        double share1 = Between(random, 0.15, 0.5), share2 = Between(random, 0.2, 0.8);
        Func<double, double> curve = SimulatedCurves.Draw(random, family, full, empty, lfp ? Between(random, 0.002, 0.006) : Between(random, 0.006, 0.018));
        double start = StartCharge(random, kind);
        SimulatedGroup[] groups = Groups(random, series, curve, rated * health, total, (share1, share2), start);
        return new SimulatedPack
        {
            Family = family,
            RatedAh = Math.Round(rated, 1),
            FullV = full,
            EmptyV = empty,
            Parallel = parallel,
            Groups = groups,
            Tau1S = Between(random, 2, 12),
            Tau2S = Between(random, 60, 400),
            Rise = Between(random, 0.3, 1.3),
            RiseLength = Between(random, 0.05, 0.13),
            ActivationK = Between(random, 1800, 3500),
            HysteresisV = lfp ? Between(random, 0.004, 0.016) : Between(random, 0, 0.003),
            HysteresisMemory = Between(random, 0.02, 0.08),
            AmbientDegC = kind == "nmc-cold" ? Between(random, -5, 6) : Between(random, 10, 30),
            BalancerV = days && random.Next(3) > 0 ? (lfp ? 3.42 : 4.08) : double.PositiveInfinity,
            BalancerA = Between(random, 0.03, 0.08),
        };
    }

    private static SimulatedGroup[] Groups(
        Random random, int series, Func<double, double> curve, double ah, double ohm, (double Slow, double Slower) share, double start)
    {
        double spread = Between(random, 0.002, 0.006), ages = Between(random, 0.005, 0.011);
        return [.. Enumerable.Range(0, series).Select(_ =>
        {
            double own = ohm * (1 + (0.03 * SimulatedCurves.Normal(random)));
            Func<double, double> bend = SimulatedCurves.Smooth(random, Between(random, 0.0006, 0.0016), 0.15);
            return new SimulatedGroup
            {
                Curve = z => curve(z) + bend(z),
                CapacityAh = ah * (1 + Math.Clamp(ages * SimulatedCurves.Normal(random), -0.025, 0.025)),
                R0 = own,
                R1 = own * share.Slow * (1 + (0.05 * SimulatedCurves.Normal(random))),
                R2 = own * share.Slower * (1 + (0.05 * SimulatedCurves.Normal(random))),
                StartCharge = start + Math.Clamp(spread * SimulatedCurves.Normal(random), -0.012, 0.012),
                HotterK = random.Next(3) == 0 ? SimulatedCurves.Normal(random) : 0,
            };
        })];
    }

    private static double StartCharge(Random random, string kind) => kind switch
    {
        "lfp-plateau" => Between(random, 0.55, 0.62),
        "lfp-top" => Between(random, 0.985, 0.999),
        "lfp-ride" => Between(random, 0.992, 0.999),
        "lfp-charge-ride" => Between(random, 0.1, 0.3),
        "lfp-charge" or "nmc-charge" => Between(random, 0.03, 0.07),
        "nmc-fifth" => Between(random, 0.5, 0.9),
        "nmc-half" => Between(random, 0.6, 0.95),
        "nmc-days" or "nca-days" => Between(random, 0.9, 0.97),
        "lfp-days" => Between(random, 0.95, 0.995),
        _ => Between(random, 0.95, 0.985),
    };

    private static SimulatedLogger DrawLogger(Random random, SimulatedPack pack, string kind, bool days)
    {
        bool slow = kind == "nmc-slow" || days || (kind.Contains("charge") && random.Next(2) == 0);
        double step = slow ? (random.Next(2) == 0 ? 10 : 5) : random.Next(4) switch { 0 => 2, 1 => 0.5, _ => 1 };
        bool averages = slow && random.Next(3) > 0;
        double grain = random.Next(8) switch { 0 => 0.005, 1 => kind == "nmc-slow" ? 0.01 : 0.002, _ => 0.001 };
        return new SimulatedLogger(random, pack, step, averages, grain, Between(random, 0.0003, 0.0012))
        {
            OffsetA = random.Next(2) == 0 ? Between(random, -0.003, 0.003) * pack.RatedAh : 0,
            Gain = 1 + (0.004 * SimulatedCurves.Normal(random)),
            DeadBandA = random.Next(4) == 0 ? Between(random, 0.05, 0.2) : 0,
            NoiseA = Between(random, 0.02, 0.12),
            HasTemperature = random.Next(3) > 0,
            SkewS = random.Next(4) == 0 ? Between(random, 0.1, 0.5) : 0,
            DropShare = random.Next(3) == 0 ? 0.005 : 0,
        };
    }

    private static SimulatedLog Ride(Random random, SimulatedPack pack, SimulatedLogger logger, string kind)
    {
        SimulatedRide ride = new(random, pack, logger);
        pack.Start();
        ride.Rest(Between(random, 30, 150));
        switch (kind)
        {
            case "lfp-plateau":
                ride.Drive(0.7, maxAh: Between(random, 0.12, 0.2) * pack.RatedAh);
                break;
            case "lfp-top":
                ride.Drive(0.7, maxAh: Between(random, 0.18, 0.28) * pack.RatedAh);
                break;
            case "nmc-fifth":
                ride.Drive(0.7, maxAh: Between(random, 0.15, 0.24) * pack.RatedAh);
                break;
            case "nmc-half":
                ride.Drive(0.7, maxAh: Between(random, 0.42, 0.55) * pack.RatedAh);
                break;
            case "lfp-charge-ride":
                ride.Charge(Between(random, 0.2, 0.4));
                ride.Rest(Between(random, 300, 2400));
                ride.Drive(Between(random, 0.5, 1.0), double.PositiveInfinity);
                break;
            case "lfp-charge" or "nmc-charge":
                ride.Charge(Between(random, 0.15, 0.35));
                break;
            case "nmc-days" or "nca-days" or "lfp-days":
                ThreeDays(random, pack, ride);
                break;
            default:
                ride.Drive(Between(random, 0.4, 1.0), double.PositiveInfinity);
                break;
        }
        ride.Rest(Between(random, 60, 240));
        return new SimulatedLog(kind, pack, logger.Columns(), ride.Truth());
    }

    private static void ThreeDays(Random random, SimulatedPack pack, SimulatedRide ride)
    {
        for (int day = 0; day < 3; day++)
        {
            ride.Drive(0.5, maxAh: (day == 2 ? 2 : Between(random, 0.3, 0.6)) * pack.RatedAh);
            ride.Rest(1200);
            if (day == 2)
                break;
            ride.Sleep(Between(random, 1, 5) * 3600);
            ride.Charge(Between(random, 0.15, 0.3));
            ride.Rest(1800);
            ride.Sleep(Between(random, 8, 18) * 3600);
            ride.Rest(300);
        }
    }
}
