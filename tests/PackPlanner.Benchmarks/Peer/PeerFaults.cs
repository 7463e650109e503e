namespace PackPlanner.Benchmarks.Peer;

/// <summary>Draws the faults of a pack, and notes what a diagnosis of it must name and what it may name beside.</summary>
internal sealed class PeerFaults(Random random, PeerScenario made)
{
    private readonly HashSet<int> taken = [];

    /// <param name="days">Whether the log lasts days: then the first fault is a leak.</param>
    internal void Draw(bool days)
    {
        int count = random.Next(5) switch { 0 => 0, 1 or 2 => 1, 3 => 2, _ => 3 };
        for (int f = 0; f < Math.Max(count, days ? 1 : 0); f++)
        {
            int k = random.Next(made.Series - 1);
            if (taken.Contains(k) || taken.Contains(k + 1))
                continue;
            taken.Add(k);
            bool charge = made.Kind.EndsWith("-charge", StringComparison.Ordinal) && made.Kind != "nmc-ride-charge";
            Put(days && f == 0 ? 9 : random.Next(charge ? 3 : 8), k, made.Pack.Groups[k]);
        }
    }

    private void Put(int what, int k, PeerGroup g)
    {
        switch (what)
        {
            case 0 or 3:
                g.CapacityAh *= Between(0.65, 0.89);
                g.Required.Add(["low-capacity"]);
                break;
            case 1:
                g.Charge += (g.Charge < 0.2 || (g.Charge < 0.85 && random.Next(2) == 0) ? 1 : -1) * Between(0.065, 0.15);
                g.Required.Add(["imbalance"]);
                break;
            case 2:
                ShiftTap(k, g);
                break;
            case 4:
                g.Ohm *= Between(1.5, 2.3);
                g.Required.Add(["high-resistance"]);
                break;
            case 5:
                g.JointOhm = g.Ohm * Between(0.75, 1.5);
                g.Required.Add(["connection"]);
                g.Allowed.Add("high-resistance");
                break;
            case 6:
                Age(g);
                break;
            case 7 when made.Parallel is > 1 and < 7:
                LoseACell(g);
                break;
            case 9:
                Leak(g);
                break;
        }
    }

    private void ShiftTap(int k, PeerGroup g)
    {
        double d = Between(0.021, 0.07) * (random.Next(2) == 0 ? 1 : -1);
        PeerGroup next = made.Pack.Groups[k + 1];
        (g.TapV, next.TapV) = (d, -d);
        g.Required.Add(["sensor"]);
        next.Required.Add(["sensor"]);
        taken.Add(k + 1);
    }

    // Aged through and through: less charge and more resistance.
    private void Age(PeerGroup g)
    {
        g.CapacityAh *= Between(0.7, 0.86);
        g.Ohm *= Between(1.5, 2.0);
        g.Required.Add(["low-capacity"]);
        g.Required.Add(["high-resistance"]);
    }

    private void LoseACell(PeerGroup g)
    {
        double left = (made.Parallel - 1.0) / made.Parallel;
        (g.CapacityAh, g.Ohm) = (g.CapacityAh * left, g.Ohm / left);
        g.Required.Add(["low-capacity"]);
        if (left < 0.69)
            g.Required.Add(["high-resistance"]);
        else
            g.Allowed.Add("high-resistance");
    }

    private void Leak(PeerGroup g)
    {
        g.LeakA = made.RatedAh < 30
            ? Between(0.03, 0.12) * Math.Max(1, made.RatedAh / 15)
            : Between(0.1, 0.3) * Math.Max(1, made.RatedAh / 55);
        g.Required.Add(["self-discharge"]);
        g.Allowed.Add("imbalance");
    }

    private double Between(double low, double high) => low + ((high - low) * random.NextDouble());
}
