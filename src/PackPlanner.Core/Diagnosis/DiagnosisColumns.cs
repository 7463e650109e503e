namespace PackPlanner.Core.Diagnosis;

/// <summary>The columns of a log that the fit reads: bare arrays, discharge positive.</summary>
/// <param name="TimeS">Seconds, never falling, shape [rows].</param>
/// <param name="CurrentA">Amperes, discharge positive, shape [rows].</param>
/// <param name="GroupV">Volts, shape [groups][rows or more]; NaN where lost. Read by <see cref="Volts"/>: the first row may stand further on.</param>
/// <param name="TemperatureDegC">Mean of the probes, shape [rows]; null when there is none.</param>
/// <param name="RowsAreAverages">Rows are means over the time since the row before.</param>
/// <param name="FirstRow">Where the first row stands in <paramref name="GroupV"/>: a stretch of a long log shares its volts, which are most of it.</param>
internal sealed record DiagnosisColumns(
    double[] TimeS, double[] CurrentA, double[][] GroupV, double[]? TemperatureDegC, bool RowsAreAverages, int FirstRow = 0)
{
    /// <summary>Rows.</summary>
    internal int Rows => TimeS.Length;

    /// <summary>Series groups.</summary>
    internal int Groups => GroupV.Length;

    /// <summary>Median seconds between rows.</summary>
    internal double UsualStepS { get; } = ChargeCount.UsualStep(TimeS);

    /// <summary>The smallest step between different readings of one group, volts.</summary>
    internal double GrainV { get; } = Grain(GroupV, FirstRow, TimeS.Length);

    /// <summary>Volts of a group at a row; NaN when lost.</summary>
    internal double Volts(int group, int row) => GroupV[group][FirstRow + row];

    /// <summary>Temperature of a row, degrees Celsius; NaN when unknown.</summary>
    internal double Temperature(int row) => TemperatureDegC is null ? double.NaN : TemperatureDegC[row];

    /// <summary>Copies one row of volts; false when any of them is lost.</summary>
    internal bool CopyVolts(int row, double[] into)
    {
        bool whole = true;
        for (int k = 0; k < GroupV.Length; k++)
        {
            into[k] = Volts(k, row);
            whole &= !double.IsNaN(into[k]);
        }
        return whole;
    }

    /// <summary>A stretch of the rows.</summary>
    internal DiagnosisColumns Cut(LogStretch stretch)
    {
        int from = stretch.First, to = stretch.Last + 1;
        double[] timeS = new double[to - from];
        for (int i = 0; i < timeS.Length; i++)
            timeS[i] = TimeS[from + i] - TimeS[from];
        return new DiagnosisColumns(
            timeS, CurrentA[from..to], GroupV,
            TemperatureDegC?[from..to], RowsAreAverages, FirstRow + from);
    }

    private static double Grain(double[][] groupV, int from, int rows)
    {
        double grain = 0.1;
        foreach (double[] volts in groupV)
        {
            for (int i = from + 1; i < from + Math.Min(rows, 3000); i++)
            {
                double d = Math.Abs(volts[i] - volts[i - 1]);
                if (d > 2e-5)
                    grain = Math.Min(grain, d);
            }
        }
        return grain;
    }
}
