namespace PackPlanner.Screens.Plots;

/// <summary>Axis marks at steps of 1, 2 or 5 times a power of ten.</summary>
internal static class Ticks
{
    /// <summary>Marks within a range, at most <paramref name="most"/> of them.</summary>
    internal static IReadOnlyList<double> Between(double low, double high, int most)
    {
        if (!(high > low) || most < 1)
            return [low];
        double step = StepOf((high - low) / most);
        // A narrow range can lie between two marks of the wanted step; an axis without a figure tells nothing.
        for (int finer = 0; finer < 4; finer++)
        {
            List<double> ticks = Multiples(low, high, step);
            if (ticks.Count > 0)
                return ticks;
            step = StepOf(step / 2.5);
        }

        return [low];
    }

    private static List<double> Multiples(double low, double high, double step)
    {
        List<double> ticks = [];
        for (double n = Math.Ceiling((low / step) - 1e-9); n * step <= high + (step * 1e-9); n++)
            // Nought has no sign on an axis.
            ticks.Add((n * step) + 0.0);
        return ticks;
    }

    /// <summary>Decimals that every mark needs to be written as it is; a single mark too.</summary>
    internal static int Decimals(IReadOnlyList<double> ticks)
    {
        for (int decimals = 0; decimals < 6; decimals++)
        {
            double scale = Math.Pow(10, decimals);
            if (ticks.All(tick => Math.Abs((tick * scale) - Math.Round(tick * scale)) < 1e-6))
                return decimals;
        }

        return 6;
    }

    /// <summary>The least step of 1, 2 or 5 times a power of ten that is not below <paramref name="atLeast"/>.</summary>
    internal static double StepOf(double atLeast)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(atLeast)));
        foreach (double step in new[] { 1.0, 2.0, 5.0 })
        {
            if (step * power >= atLeast * (1 - 1e-12))
                return step * power;
        }

        return 10 * power;
    }
}
