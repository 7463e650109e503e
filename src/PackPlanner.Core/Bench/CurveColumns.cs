namespace PackPlanner.Core.Bench;

/// <summary>The columns of a log without its lost rows.</summary>
internal sealed class CurveColumns
{
    private CurveColumns(double[] timeS, double[] currentA, double[] volts, double[]? degC, double[]? counterAh, double[]? counterWh)
    {
        TimeS = timeS;
        CurrentA = currentA;
        Volts = volts;
        DegC = degC;
        CounterAh = counterAh;
        CounterWh = counterWh;
    }

    internal double[] TimeS { get; }

    internal double[] CurrentA { get; }

    internal double[] Volts { get; }

    internal double[]? DegC { get; }

    internal double[]? CounterAh { get; }

    internal double[]? CounterWh { get; }

    internal int Count => TimeS.Length;

    /// <summary>Rows with time, current and volts.</summary>
    internal static CurveColumns Of(TestCurve curve)
    {
        int[] kept = [.. Enumerable.Range(0, curve.TimeS.Length)
            .Where(i => double.IsFinite(curve.TimeS[i]) && double.IsFinite(curve.CurrentA[i]) && double.IsFinite(curve.Volts[i]))];
        double[] Column(double[] all) => [.. kept.Select(i => all[i])];
        return new CurveColumns(
            Column(curve.TimeS), Column(curve.CurrentA), Column(curve.Volts),
            curve.TemperatureDegC is { } degC ? Column(degC) : null,
            curve.CounterAh is { } ah ? Column(ah) : null,
            curve.CounterWh is { } wh ? Column(wh) : null);
    }

    /// <summary>The same with an offset taken off the current.</summary>
    internal CurveColumns Less(double offsetA) =>
        new(TimeS, [.. CurrentA.Select(current => current - offsetA)], Volts, DegC, CounterAh, CounterWh);

    /// <summary>The same by another clock.</summary>
    internal CurveColumns At(double[] timeS) => new(timeS, CurrentA, Volts, DegC, CounterAh, CounterWh);
}
