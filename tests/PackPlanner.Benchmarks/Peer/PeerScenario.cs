namespace PackPlanner.Benchmarks.Peer;

/// <summary>Draws a pack, its faults and its day from a seed, and writes the log.</summary>
internal sealed class PeerScenario
{
    internal static readonly string[] Kinds =
    [
        "nmc-ride", "lfp-full", "nca-ride", "nmc-ride-charge", "lfp-charge-ride", "nmc-half", "nca-days", "nmc-charge", "lfp-plateau", "nmc-fifth",
        "nmc-cold", "lfp-charge", "nmc-uneven-heat", "lfp-days", "nmc-long-string",
    ];

    private readonly Random random;
    private readonly double[] volts;
    private readonly double emptyV = 3.0, fullV = 4.2;
    private int endsRide = -1, endsCharge = -1;

    internal PeerScenario(int seed)
    {
        random = new Random(unchecked((seed * 104729) ^ 0x5eed));
        (Seed, Kind) = (seed, KindOf(seed));
        Chemistry = Kind[..3].ToUpperInvariant();
        bool lfp = Chemistry == "LFP", days = Kind.EndsWith("days", StringComparison.Ordinal);
        Series = Kind == "nmc-long-string" ? 96 : random.Next(8, 25);
        Parallel = random.Next(1, 9);
        RatedAh = Math.Round(lfp ? Between(40, 120) : Parallel * Between(2.4, 5.0), 1);
        (fullV, emptyV) = lfp ? (3.65, 2.5) : (4.2, random.Next(3) == 0 ? 2.8 : 3.0);
        volts = new double[Series];
        Pack = new PeerPack(random, Chemistry, RatedAh, Kind == "nmc-cold" ? Between(-8, 4) : Between(8, 30));
        Pack.Groups = Groups(lfp);
        new PeerFaults(random, this).Draw(days);
        double step = days ? 10 : random.Next(6) switch { 0 => 0.2, 1 => 2, 2 => 5, 3 => 10, _ => 1 };
        if (Kind == "nmc-long-string")
            step = Math.Max(step, 2);
        Logger = new PeerLogger(random, Series, RatedAh, step);
        Pack.Start();
        Day();
    }

    internal static string KindOf(int seed) => Kinds[seed % Kinds.Length];

    internal int Seed { get; }

    internal string Kind { get; }

    internal string Chemistry { get; }

    internal int Series { get; }

    internal int Parallel { get; }

    internal double RatedAh { get; }

    internal PeerPack Pack { get; }

    internal PeerLogger Logger { get; }

    internal double FullV => fullV;

    internal double EmptyV => emptyV;

    /// <summary>Writes the log in a way that the seed chooses.</summary>
    internal void Write(string file)
    {
        int style = (Seed / 3) % 7;
        if (style is 1 or 6 && Logger.StepS < 1)
            style = 0;
        Logger.Write(file, style, random.Next(2) == 0 ? 1 : -1);
    }

    /// <summary>Whether capacities can be told: yes, no, or either answer is right.</summary>
    internal string Told()
    {
        PeerGroup ends = Pack.Groups[endsRide >= 0 ? endsRide : endsCharge];
        double[] tops = [.. Pack.Groups.Select(g => g.Highest).Order()];
        if (Chemistry != "LFP")
            return ends.Highest - ends.Lowest >= 0.7 ? "yes" : ends.Highest - ends.Lowest < 0.4 ? "no" : "either";
        double top = Math.Max(ends.Highest, tops[Series / 2]);
        return top > 0.98 && ends.Lowest < 0.1 ? "yes" : top > 0.94 && ends.Lowest < 0.18 ? "either" : "no";
    }

    private double Between(double low, double high) => low + ((high - low) * random.NextDouble());

    private PeerGroup[] Groups(bool lfp)
    {
        double health = Between(0.78, 1.0), spread = Between(0.006, 0.013), ohm = Between(0.045, 0.1) / RatedAh, apart = Between(0.001, 0.005);
        Func<double, double> curve = PeerCurves.Draw(random, Chemistry, fullV, emptyV);
        double start = Kind switch
        {
            "nmc-half" => Between(0.6, 0.95),
            "nmc-fifth" => Between(0.45, 0.9),
            "lfp-plateau" => Between(0.52, 0.6),
            "lfp-charge-ride" => Between(0.12, 0.4),
            "nmc-charge" or "lfp-charge" => Between(0.03, 0.06),
            _ => lfp ? Between(0.986, 0.999) : Between(0.94, 0.99),
        };
        return [.. Enumerable.Range(0, Series).Select(k =>
        {
            double a = 0.001 * PeerCurves.Normal(random), b = 0.0008 * PeerCurves.Normal(random);
            return new PeerGroup
            {
                Curve = z => curve(z) + (a * Math.Sin(Math.PI * z)) + (b * Math.Sin(3 * Math.PI * z)),
                CapacityAh = RatedAh * health * (1 + Math.Clamp(spread * PeerCurves.Normal(random), -0.025, 0.025)),
                Charge = start + Math.Clamp(apart * PeerCurves.Normal(random), -0.012, start > 0.98 ? 0.0009 : 0.012),
                Ohm = ohm * (1 + Math.Clamp(0.025 * PeerCurves.Normal(random), -0.05, 0.05)),
                CoolerK = Kind == "nmc-uneven-heat" ? 8.0 * Math.Abs((2.0 * k / (Series - 1)) - 1) : 0,
            };
        })];
    }

    private void Day()
    {
        Rest(Between(20, 200));
        switch (Kind)
        {
            case "lfp-plateau":
                Ride(Between(0.12, 0.18), 0.5);
                break;
            case "nmc-fifth":
                Ride(Between(0.14, 0.23), 0.6);
                break;
            case "nmc-half":
                Ride(Between(0.42, 0.6), 0.6);
                break;
            case "nmc-charge" or "lfp-charge":
                ChargeUp(Between(0.15, 0.4), 2);
                break;
            case "lfp-charge-ride":
                ChargeUp(Between(0.2, 0.4), 2);
                Rest(Between(300, 3000));
                Ride(9, Between(0.3, 0.8));
                break;
            case "nmc-ride-charge":
                Ride(9, Between(0.3, 0.8));
                Rest(Between(600, 1800));
                ChargeUp(0.25, Between(0.2, 0.6));
                break;
            case "nca-days" or "lfp-days":
                Ride(Between(0.3, 0.55), 0.4);
                Rest(1500);
                Park(Between(5, 10));
                ChargeUp(0.2, 2);
                Rest(1200);
                Park(Between(14, 30));
                Rest(400);
                Ride(9, 0.4);
                break;
            default:
                Ride(9, Between(0.3, 0.9));
                break;
        }
        Rest(Between(60, 400));
    }

    private void Step(double seconds, double amps)
    {
        Pack.Step(seconds, amps, volts);
        Logger.See(seconds, amps, volts, Pack.Groups, Pack.ProbeDegC);
    }

    private void Rest(double seconds)
    {
        for (double t = 0; t < seconds; t += 0.2)
            Step(0.2, 0);
    }

    private void Park(double hours)
    {
        Logger.Asleep = true;
        for (double t = 0; t < hours * 3600; t += 30)
        {
            Pack.Step(30, 0, volts, leaksOnly: true);
            Logger.See(30, 0, volts, Pack.Groups, Pack.ProbeDegC);
        }
        Logger.Asleep = false;
    }

    /// <summary>Speeds up, rolls, brakes and waits, over hills, until a group meets the cut-off or a share of the rated charge is drawn.</summary>
    private void Ride(double share, double rate)
    {
        double from = Pack.DrawnAh, hill = 0;
        while (Pack.DrawnAh - from < share * RatedAh)
        {
            double cruise = rate * RatedAh * Between(0.5, 1.3);
            (double Seconds, double Amps)[] leg =
            [
                (Between(3, 10), 2.2 * cruise), (Between(10, 90), cruise), (Between(2, 8), random.Next(3) == 0 ? 0 : -0.7 * cruise), (random.Next(3) == 0 ? Between(5, 50) : 0, 0),
            ];
            foreach ((double seconds, double amps) in leg)
            {
                for (double t = 0; t < seconds; t += 0.2)
                {
                    hill += (-0.01 * hill) + (0.012 * PeerCurves.Normal(random));
                    double limp = volts.Min() < emptyV + 0.12 ? 0.45 : 1, now = amps <= 0 ? amps : amps * limp * Math.Max(0.1, 1 + hill);
                    if (now < 0 && volts.Max() > fullV - 0.02)
                        now = 0;
                    Step(0.2, now);
                    if (volts.Min() < emptyV)
                    {
                        endsRide = Array.IndexOf(volts, volts.Min());
                        return;
                    }
                }
            }
        }
        endsRide = Array.IndexOf(volts, volts.Min());
    }

    private void ChargeUp(double rate, double mostShare)
    {
        double amps = rate * RatedAh, from = Pack.DrawnAh;
        while (amps > 0.04 * RatedAh && from - Pack.DrawnAh < mostShare * RatedAh)
        {
            Step(0.5, -amps);
            if (volts.Max() > fullV)
            {
                endsCharge = Array.IndexOf(volts, volts.Max());
                amps *= 0.98;
            }
        }
        if (endsCharge < 0)
            endsCharge = Array.IndexOf(volts, volts.Max());
    }
}
