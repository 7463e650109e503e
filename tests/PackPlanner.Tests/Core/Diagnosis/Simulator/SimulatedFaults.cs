namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>Plants faults in a pack, and notes what a diagnosis must name and what it may name beside.</summary>
internal sealed class SimulatedFaults(Random random, SimulatedPack pack)
{
    /// <param name="kind">Of the log: a log of a charge alone shows neither resistance nor joint.</param>
    /// <param name="days">Whether the log lasts days: then the first fault is a leak.</param>
    internal void Plant(string kind, bool days)
    {
        int faults = random.Next(4) switch { 0 => 0, 1 => 1, 2 => 1, _ => 2 };
        List<int> free = [.. Enumerable.Range(0, pack.Groups.Length)];
        for (int f = 0; f < faults && free.Count > 3; f++)
        {
            int k = free[random.Next(free.Count)];
            string what = days && f == 0 ? "leak" : random.Next(6) switch
            {
                0 => "low",
                1 => "dead",
                2 => "imbalance",
                3 => "high",
                4 => "joint",
                _ => "tap",
            };
            if (kind is "nmc-charge" or "lfp-charge" && what is "high" or "joint" && kind.EndsWith("charge", StringComparison.Ordinal))
                what = "imbalance";
            if (what == "dead" && pack.Parallel < 3)
                what = "low";
            free.Remove(k);
            if (Apply(k, what))
                free.Remove(k + 1);
        }
    }

    private double Between(double low, double high) => low + ((high - low) * random.NextDouble());

    /// <summary>Plants one fault; true when the neighbour above is hurt too.</summary>
    private bool Apply(int k, string what)
    {
        SimulatedGroup g = pack.Groups[k];
        switch (what)
        {
            case "low":
                Age(g);
                break;
            case "dead":
                LoseACell(g);
                break;
            case "imbalance":
                double sign = g.StartCharge < 0.15 || (random.Next(3) == 0 && g.StartCharge < 0.9) ? (g.StartCharge > 0.2 ? -1 : 1) : -1;
                g.StartCharge += sign * Between(0.06, 0.14);
                g.Required.Add("imbalance");
                break;
            case "high":
                double worse = Between(1.47, 2.1);
                (g.R0, g.R1, g.R2) = (g.R0 * worse, g.R1 * worse, g.R2 * worse);
                g.Required.Add("high-resistance");
                break;
            case "joint":
                g.JointOhm = g.R0 * Between(0.7, 1.5);
                g.Required.Add("connection");
                g.Allowed.Add("high-resistance");
                break;
            case "leak":
                g.LeakA = pack.RatedAh < 35 ? Between(0.025, 0.12) * Math.Max(1, pack.RatedAh / 18) : Between(0.09, 0.25) * Math.Max(1, pack.RatedAh / 60);
                g.Required.Add("self-discharge");
                g.Allowed.Add("imbalance");
                break;
            default:
                return ShiftTap(k, g);
        }
        return false;
    }

    private void Age(SimulatedGroup g)
    {
        g.CapacityAh = pack.MeanCapacityAh * Between(0.68, 0.9);
        g.Required.Add("low-capacity");
    }

    private void LoseACell(SimulatedGroup g)
    {
        double left = (pack.Parallel - 1.0) / pack.Parallel;
        if (left > 0.9)
        {
            Age(g);
            return;
        }

        g.CapacityAh *= left;
        (g.R0, g.R1, g.R2) = (g.R0 / left, g.R1 / left, g.R2 / left);
        g.Required.Add("low-capacity");
        (left <= 0.69 ? g.Required : g.Allowed).Add("high-resistance");
    }

    private bool ShiftTap(int k, SimulatedGroup g)
    {
        double d = Between(0.02, 0.06) * (random.Next(2) == 0 ? 1 : -1);
        g.TapV += d;
        g.Required.Add("sensor");
        if (k + 1 >= pack.Groups.Length)
            return false;
        pack.Groups[k + 1].TapV -= d;
        if (!pack.Groups[k + 1].Required.Contains("sensor"))
            pack.Groups[k + 1].Required.Add("sensor");
        return true;
    }
}
