using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>An invented pack and the physics that makes its log. Written apart from the estimator.</summary>
internal sealed class SimulatedPack
{
    internal required CurveFamily Family { get; init; }

    internal required double RatedAh { get; init; }

    internal required double FullV { get; init; }

    internal required double EmptyV { get; init; }

    internal required int Parallel { get; init; }

    internal required SimulatedGroup[] Groups { get; init; }

    internal required double Tau1S { get; init; }

    internal required double Tau2S { get; init; }

    internal required double Rise { get; init; }

    internal required double RiseLength { get; init; }

    internal required double ActivationK { get; init; }

    internal required double HysteresisV { get; init; }

    internal required double HysteresisMemory { get; init; }

    internal required double AmbientDegC { get; init; }

    internal double BalancerV { get; init; } = double.PositiveInfinity;

    internal double BalancerA { get; init; }

    internal double Degrees { get; private set; }

    internal double MeanCapacityAh => Groups.Select(g => g.CapacityAh).Order().ElementAt(Groups.Length / 2);

    internal void Start()
    {
        Degrees = AmbientDegC;
        foreach (SimulatedGroup g in Groups)
            g.Charge = g.StartCharge;
    }

    /// <summary>Goes on by some seconds at a steady current and gives the loaded voltages at the end.</summary>
    internal void Step(double stepS, double currentA, double[] volts)
    {
        double heat = 0;
        for (int k = 0; k < Groups.Length; k++)
        {
            SimulatedGroup g = Groups[k];
            double bleed = g.Bleeding ? BalancerA : 0;
            double moved = (currentA + g.LeakA + bleed) * stepS / 3600;
            g.Charge -= moved / g.CapacityAh;
            double factor = Factor(g.Charge, Degrees + g.HotterK);
            double k1 = Math.Exp(-stepS / Tau1S), k2 = Math.Exp(-stepS / Tau2S);
            g.V1 = (currentA * g.R1 * factor) + ((g.V1 - (currentA * g.R1 * factor)) * k1);
            g.V2 = (currentA * g.R2 * factor) + ((g.V2 - (currentA * g.R2 * factor)) * k2);
            double memory = Math.Exp(-Math.Abs(moved) / (HysteresisMemory * g.CapacityAh));
            double towards = Math.Sign(moved);
            g.Hysteresis = towards + ((g.Hysteresis - towards) * memory);
            double inside = g.Curve(g.Charge) - (HysteresisV * g.Hysteresis) - g.V1 - g.V2 - (currentA * g.R0 * factor);
            volts[k] = inside - (currentA * g.JointOhm);
            heat += currentA * currentA * (g.R0 + g.R1 + g.R2) * factor;
        }
        double mass = RatedAh * Groups.Length * 100;
        Degrees += stepS * ((heat / mass) - ((Degrees - AmbientDegC) / 7200));
        double lowest = volts.Min();
        for (int k = 0; k < Groups.Length; k++)
            Groups[k].Bleeding = currentA < 0.02 * RatedAh && volts[k] > BalancerV && volts[k] > lowest + 0.004;
    }

    /// <summary>Volts as the taps read them: a misplaced tap adds to one group what it takes from the next.</summary>
    internal void Read(double[] volts, double[] seen)
    {
        for (int k = 0; k < Groups.Length; k++)
            seen[k] = volts[k] + Groups[k].TapV;
    }

    internal double Factor(double charge, double degrees)
    {
        double z = Math.Max(charge, -0.02);
        double shape = (1 + (Rise * Math.Exp(-z / RiseLength))) / (1 + (Rise * Math.Exp(-0.5 / RiseLength)));
        return shape * Math.Exp(ActivationK * ((1 / (degrees + 273.15)) - (1 / 298.15)));
    }

    /// <summary>What a step of current does after one second, near half charge, at a temperature.</summary>
    internal double OneSecondOhm(SimulatedGroup g, double degrees) => g.JointOhm
        + (Factor(0.5, degrees + g.HotterK) * (g.R0 + (g.R1 * (1 - Math.Exp(-1 / Tau1S))) + (g.R2 * (1 - Math.Exp(-1 / Tau2S)))));
}
