using CsCheck;
using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Tests.Core.UsableEnergy;

/// <summary>The ride of a string against the plainest way to compute one: many small bites of charge from rules typed anew from the method's page.</summary>
public class TinyStepsTests
{
    private sealed record Case(Chemistry Chemistry, double[] Ah, double[] Milliohm, double[] Charge, double Link, bool InWatts, double PerHour, double? DegC, double Controller);

    private static readonly Gen<Case> Cases =
        from n in Gen.Int[1, 6]
        from chemistry in Gen.Int[0, Chemistries.All.Count - 1].Select(i => Chemistries.All[i])
        from ah in Gen.Double[20, 50].Array[n]
        from milliohm in Gen.Double[0.5, 3].Array[n]
        from charge in Gen.Double[0.3, 0.9].Array[n]
        from link in Gen.Double[0, 0.5]
        from inWatts in Gen.Bool
        from perHour in Gen.Double[0.05, 1.5]
        from degC in Gen.OneOf(Gen.Const((double?)null), Gen.Double[-15, 40].Select(c => (double?)c))
        from controller in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.9, 1.1])
        select new Case(chemistry, ah, milliohm, charge, link, inWatts, perHour, degC, controller);

    [Fact]
    public void A_ride_agrees_with_small_bites_of_charge()
    {
        int compared = 0;
        Cases.Sample(one =>
        {
            EnergyRequest request = Request(one);
            LossList list = new(request, new StringModel(request), TestContext.Current.CancellationToken);
            list.Build();
            (double takenAh, double wattHours, double hours) = Slow(one);
            Assert.Equal(takenAh, list.Last.TakenAh, tolerance: 0.0006 * one.Ah.Min());
            Assert.Equal(wattHours, list.Last.DeliveredWh, tolerance: 0.0006 * one.Ah.Min() * one.Ah.Length * one.Chemistry.FullV);
            Assert.Equal(hours, list.Last.Hours, tolerance: 0.0006 / one.PerHour + 1e-4);
            compared += takenAh > 0 ? 1 : 0;
        }, seed: "0000KIcCwDG2", iter: 1000, threads: 1);
        Assert.True(compared > 800, $"only {compared} rides began at all");
    }

    // A burst, a rest, watts and a little given back, by turns of seven seconds. Where a burst just fails to end the ride, the next one ends it as it
    // begins: so what may differ is the charge of a turn.
    [Fact]
    public void A_ride_by_profile_agrees_with_quarter_seconds()
    {
        Cases.Sample(one =>
        {
            double loadA = one.PerHour * one.Ah.Min();
            LoadStep[] profile = [new(3, 1.4 * loadA, false), new(1, 0, false), new(2, 0.8 * Watts(one), true), new(1, -0.5 * loadA, false)];
            EnergyRequest request = Request(one) with { Load = new LoadPlan.Profile(profile) };
            LossList list = new(request, new StringModel(request), TestContext.Current.CancellationToken);
            list.Build();
            (double takenAh, double wattHours) = SlowProfile(one, profile);
            double nearAh = 6 * loadA / 3600 + 0.0003 * one.Ah.Min();
            Assert.Equal(takenAh, list.Last.TakenAh, tolerance: nearAh);
            Assert.Equal(wattHours, list.Last.DeliveredWh, tolerance: nearAh * one.Ah.Length * one.Chemistry.FullV);
        }, seed: "0000KIcCwDG2", iter: 100, threads: 1);
    }

    private static EnergyRequest Request(Case one) => new()
    {
        Groups = [.. one.Ah.Select((q, g) => new SeriesGroup(g + 1, q, one.Milliohm[g], one.Charge[g]))],
        Chemistry = one.Chemistry,
        Load = one.InWatts ? new LoadPlan.ConstantPower(Watts(one)) : new LoadPlan.ConstantCurrent(one.PerHour * one.Ah.Min()),
        LinkMilliohm = one.Link,
        TemperatureDegC = one.DegC,
        PackEmptyV = one.Controller > 0 ? ControllerV(one) : null,
    };

    private static double Watts(Case one) => one.PerHour * one.Ah.Min() * one.Chemistry.NominalV * one.Ah.Length;

    private static double ControllerV(Case one) => one.Controller * one.Chemistry.CutoffV * one.Ah.Length;

    private static (double TakenAh, double WattHours, double Hours) Slow(Case one)
    {
        Plain pack = new(one);
        double biteAh = one.Ah.Min() / 2500;
        double wattHours = 0, hours = 0;
        for (double takenAh = 0; ; takenAh += biteAh)
        {
            // Volts and ohms in the middle of the bite.
            (double openV, double ohm, _) = pack.At(takenAh, 0);
            double amps = one.InWatts ? Amperes(Watts(one), openV, ohm) : one.PerHour * one.Ah.Min();
            if (pack.Ends(takenAh, amps))
                return (takenAh, wattHours, hours);
            (openV, ohm, _) = pack.At(takenAh + biteAh / 2, 0);
            amps = one.InWatts ? Amperes(Watts(one), openV, ohm) : amps;
            wattHours += biteAh * (openV - amps * ohm);
            hours += biteAh / amps;
        }
    }

    private static (double TakenAh, double WattHours) SlowProfile(Case one, LoadStep[] profile)
    {
        Plain pack = new(one);
        double takenAh = 0, wattHours = 0;
        while (true)
        {
            foreach (LoadStep step in profile)
            {
                for (double s = 0; s < step.Seconds; s += 0.25)
                {
                    (double openV, double ohm, _) = pack.At(takenAh, 0);
                    double amps = step.IsPower ? Amperes(step.Value, openV, ohm) : step.Value;
                    if (amps >= 0 && pack.Ends(takenAh, amps))
                        return (takenAh, wattHours);
                    takenAh += amps * 0.25 / 3600;
                    wattHours += amps * (openV - amps * ohm) * 0.25 / 3600;
                }
            }
        }
    }

    // P = (U - I R) I solved for I; the most that the pack can give where it cannot give P.
    private static double Amperes(double watts, double openV, double ohm)
    {
        double under = openV * openV - 4 * watts * ohm;
        return under <= 0 ? openV / (2 * ohm) : ohm == 0 ? watts / openV : (openV - Math.Sqrt(under)) / (2 * ohm);
    }

    private sealed class Plain
    {
        private readonly Case one;
        private readonly OpenCircuitCurve curve;
        private readonly double[] ah, start, ohm;

        internal Plain(Case one)
        {
            this.one = one;
            curve = one.Chemistry.Curve.Between(one.Chemistry.FullV, one.Chemistry.CutoffV);
            // Charged together until the first group is full.
            double addedAh = one.Charge.Zip(one.Ah, (z, q) => (1 - z) * q).Min();
            start = [.. one.Charge.Zip(one.Ah, (z, q) => z + addedAh / q)];
            ah = [.. one.Ah.Select(q => q * ColdAh(one.Chemistry, one.DegC ?? 25))];
            ohm = [.. one.Milliohm.Select(r => r / 1000 * ColdOhm(one.DegC ?? 25))];
        }

        internal (double OpenV, double Ohm, double LowestV) At(double takenAh, double amps)
        {
            double openV = 0, ohms = one.Link / 1000 * (ah.Length - 1), lowest = double.PositiveInfinity;
            for (int g = 0; g < ah.Length; g++)
            {
                double z = start[g] - takenAh / ah[g];
                double volts = curve.VoltsAt(z), r = ohm[g] * Shape(z);
                (openV, ohms, lowest) = (openV + volts, ohms + r, Math.Min(lowest, volts - amps * r));
            }

            return (openV, ohms, lowest);
        }

        internal bool Ends(double takenAh, double amps)
        {
            (double openV, double ohms, double lowest) = At(takenAh, amps);
            return lowest <= one.Chemistry.CutoffV || (one.Controller > 0 && openV - amps * ohms <= ControllerV(one));
        }

        // docs/methods/energy.md: level down to 20 %, 2.05 milliohm there and 2.53 at 10 %, on along that line to 0, level below; the mean is 1.
        private static double Shape(double z)
        {
            double Raw(double at) => at >= 0.2 ? 2.05 : 2.05 + (0.2 - Math.Max(at, 0)) / 0.1 * (2.53 - 2.05);
            return Raw(z) / (0.8 * Raw(1) + 0.2 * (Raw(0.2) + Raw(0)) / 2);
        }

        // Half at 25 °C of what it is at 0 °C, along a line over 1/T.
        private static double ColdOhm(double degC)
        {
            double ofTheWay = (1 / (degC + 273.15) - 1 / 298.15) / (1 / 273.15 - 1 / 298.15);
            return Math.Pow(2, ofTheWay);
        }

        private static double ColdAh(Chemistry chemistry, double degC) => chemistry.Name != "LFP" ? Math.Min(1, 1 - 0.005 * (25 - degC))
            : degC >= 25 ? 1 : degC >= 0 ? 0.8 + 0.2 * degC / 25 : 0.8 + 0.3 * degC / 20;
    }
}
