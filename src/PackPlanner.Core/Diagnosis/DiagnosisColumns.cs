namespace PackPlanner.Core.Diagnosis;

/// <summary>The columns of a log that the fit reads: bare arrays, discharge positive.</summary>
/// <param name="TimeS">Seconds, never falling, shape [rows].</param>
/// <param name="CurrentA">Amperes, discharge positive, shape [rows].</param>
/// <param name="GroupV">Volts, shape [groups][rows]; NaN where lost.</param>
/// <param name="TemperatureDegC">Mean of the probes, shape [rows]; null when there is none.</param>
/// <param name="RowsAreAverages">Rows are means over the time since the row before.</param>
internal sealed record DiagnosisColumns(
    double[] TimeS, double[] CurrentA, double[][] GroupV, double[]? TemperatureDegC, bool RowsAreAverages)
{
    /// <summary>Rows.</summary>
    internal int Rows => TimeS.Length;

    /// <summary>Series groups.</summary>
    internal int Groups => GroupV.Length;

    /// <summary>Median seconds between rows.</summary>
    internal double UsualStepS { get; } = ChargeCount.UsualStep(TimeS);

    /// <summary>The smallest step between different readings of one group, volts.</summary>
    internal double GrainV { get; } = Grain(GroupV);

    /// <summary>Temperature of a row; NaN when unknown.</summary>
    internal double Temperature(int row) => TemperatureDegC is null ? double.NaN : TemperatureDegC[row];

    /// <summary>Copies one row of volts; false when any of them is lost.</summary>
    internal bool CopyVolts(int row, double[] into)
    {
        bool whole = true;
        for (int k = 0; k < GroupV.Length; k++)
        {
            into[k] = GroupV[k][row];
            whole &= !double.IsNaN(into[k]);
        }
        return whole;
    }

    /// <summary>A stretch of the rows.</summary>
    internal DiagnosisColumns Cut(LogStretch stretch)
    {
        int from = stretch.First, to = stretch.Last + 1;
        return new DiagnosisColumns(
            [.. TimeS[from..to].Select(t => t - TimeS[from])], CurrentA[from..to], [.. GroupV.Select(v => v[from..to])],
            TemperatureDegC?[from..to], RowsAreAverages);
    }

    private static double Grain(double[][] groupV)
    {
        double grain = 0.1;
        foreach (double[] volts in groupV)
        {
            for (int i = 1; i < Math.Min(volts.Length, 3000); i++)
            {
                double d = Math.Abs(volts[i] - volts[i - 1]);
                if (d > 2e-5)
                    grain = Math.Min(grain, d);
            }
        }
        return grain;
    }
}
