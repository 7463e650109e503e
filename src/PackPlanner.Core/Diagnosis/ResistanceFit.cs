namespace PackPlanner.Core.Diagnosis;

/// <summary>Resistances read from the answer of voltages to currents, without any curve.</summary>
/// <remarks>
/// Every group has cells, whose slow polarisation goes along with their ohmic part, and joints, which have no slow part and do not
/// change with charge: V = ... - cell[k] x factor x (I + sum of slow[j] x I behind low-pass j) - joint[k] x I.
/// </remarks>
internal sealed class ResistanceFit
{
    private readonly ResistanceWindows windows;
    private readonly double[,] weight;

    private ResistanceFit(ResistanceWindows windows, int groups)
    {
        this.windows = windows;
        weight = new double[windows.All.Count, groups];
        CellOhm = new double[groups];
        JointOhm = new double[groups];
        NoiseV = new double[groups];
        Information = new double[groups][];
    }

    /// <summary>Slow parts relative to the ohmic one, shape [low-passes]; the slowest is not seen in windows and stays 0.</summary>
    internal double[] Slow { get; } = new double[SlowCurrents.TauS.Length];

    /// <summary>Ohmic part of the cells of each group at half charge.</summary>
    internal double[] CellOhm { get; }

    /// <summary>Ohmic part that has no slow answer, of each group; negative where cells are slower than the median.</summary>
    internal double[] JointOhm { get; }

    /// <summary>One standard deviation of a voltage reading about the fit.</summary>
    internal double[] NoiseV { get; }

    /// <summary>Information on (cell, joint) per ohm squared: (cc, cj, jj) of each group.</summary>
    internal double[][] Information { get; }

    /// <summary>Fits all groups.</summary>
    /// <param name="windows">The reduced log.</param>
    /// <param name="factor">Resistance factor of window w and group k.</param>
    /// <param name="groups">How many groups.</param>
    internal static ResistanceFit Of(ResistanceWindows windows, Func<int, int, double> factor, int groups)
    {
        ResistanceFit fit = new(windows, groups);
        for (int w = 0; w < windows.All.Count; w++)
        {
            for (int k = 0; k < groups; k++)
                fit.weight[w, k] = 1 / 1e-6;
        }
        for (int round = 0; round < 3; round++)
        {
            fit.FitSlow(factor, groups);
            for (int k = 0; k < groups; k++)
                fit.FitGroup(k, factor);
            fit.Reweigh(factor, groups);
        }
        return fit;
    }

    /// <summary>Voltage step over current step one second after the step, at half charge.</summary>
    internal double OneSecondOhm(int group)
    {
        double share = 1;
        for (int j = 0; j < Slow.Length; j++)
            share += Slow[j] * (1 - Math.Exp(-1 / SlowCurrents.TauS[j]));
        return (CellOhm[group] * share) + JointOhm[group];
    }

    /// <summary>Reads the factor of every window and group anew.</summary>
    internal IEnumerable<(int Window, int Group, double Factor, double Variance)> Factors()
    {
        double[] a = Direction();
        for (int w = 0; w < windows.All.Count; w++)
        {
            ResistanceWindows.Window window = windows.All[w];
            double power = Quadratic(window.XX, a), ohmic = Row(window.XX, 0, a);
            for (int k = 0; k < NoiseV.Length; k++)
            {
                double strength = CellOhm[k] * CellOhm[k] * power;
                if (strength <= 0 || CellOhm[k] <= 0)
                    continue;
                double answer = -CellOhm[k] * (Along(window.XV, k, a) + (JointOhm[k] * ohmic));
                yield return (w, k, answer / strength, (1 / (weight[w, k] * strength)) + (0.03 * 0.03));
            }
        }
    }

    private double[] Direction() => [1, .. Slow.Take(ResistanceWindows.Terms - 1)];

    private void FitSlow(Func<int, int, double> factor, int groups)
    {
        int m = ResistanceWindows.Terms;
        double[,] xx = new double[m, m];
        double[] xv = new double[m];
        double[] total = [.. Enumerable.Range(0, groups).Select(k => CellOhm[k] + JointOhm[k])];
        double middle = total.Order().ElementAt(groups / 2);
        for (int k = 0; k < groups; k++)
        {
            // A bad joint would pass for cells that are all ohmic.
            if (middle > 0 && Math.Abs((total[k] / middle) - 1) > 0.2)
                continue;
            for (int w = 0; w < windows.All.Count; w++)
            {
                ResistanceWindows.Window window = windows.All[w];
                double g = factor(w, k), weigh = weight[w, k];
                for (int a = 0; a < m; a++)
                {
                    for (int b = 0; b < m; b++)
                        xx[a, b] += weigh * g * g * window.XX[a, b];
                    xv[a] -= weigh * g * window.XV[a, k];
                }
            }
        }
        // A low-pass quicker than the rows looks like the current itself: what it would take stays with the ohmic part.
        for (int j = 1; j < m; j++)
        {
            if (SlowCurrents.TauS[j - 1] < 0.7 * windows.StepS)
                xx[j, j] = 0;
        }
        double[] ohm = NonNegative(xx, xv);
        for (int j = 1; j < m; j++)
            Slow[j - 1] = ohm[0] > 0 ? Math.Min(3, ohm[j] / ohm[0]) : 0;
    }

    private void FitGroup(int k, Func<int, int, double> factor)
    {
        double[] a = Direction();
        double cc = 0, cj = 0, jj = 0, cv = 0, jv = 0;
        for (int w = 0; w < windows.All.Count; w++)
        {
            ResistanceWindows.Window window = windows.All[w];
            double g = factor(w, k), weigh = weight[w, k];
            cc += weigh * g * g * Quadratic(window.XX, a);
            cj += weigh * g * Row(window.XX, 0, a);
            jj += weigh * window.XX[0, 0];
            cv -= weigh * g * Along(window.XV, k, a);
            jv -= weigh * window.XV[0, k];
        }
        // A belief that joints are small keeps the split apart where the log does not: one tenth of the total.
        double size = cc > 0 ? cv / cc : 0;
        double belief = size > 0 ? 1 / (0.3 * 0.3 * size * size) : 1e-6;
        double determinant = (cc * (jj + belief)) - (cj * cj);
        if (cc <= 0 || determinant <= 1e-12 * cc * (jj + belief))
        {
            (CellOhm[k], JointOhm[k]) = (size, 0);
        }
        else
        {
            CellOhm[k] = ((cv * (jj + belief)) - (cj * jv)) / determinant;
            JointOhm[k] = ((jv * cc) - (cj * cv)) / determinant;
        }
        Information[k] = [cc, cj, jj + belief];
    }

    private void Reweigh(Func<int, int, double> factor, int groups)
    {
        double[] a = Direction();
        for (int k = 0; k < groups; k++)
        {
            double[] variance = new double[windows.All.Count];
            for (int w = 0; w < variance.Length; w++)
            {
                ResistanceWindows.Window window = windows.All[w];
                double[] ohm = [.. a.Select(x => x * CellOhm[k] * factor(w, k))];
                ohm[0] += JointOhm[k];
                double left = window.VV[k] + (2 * Along(window.XV, k, ohm)) + Quadratic(window.XX, ohm);
                variance[w] = Math.Max(1e-10, left / window.Freedom);
            }
            double middle = variance.Length == 0 ? 1e-6 : variance.Order().ElementAt(variance.Length / 2);
            NoiseV[k] = Math.Sqrt(middle);
            for (int w = 0; w < variance.Length; w++)
                weight[w, k] = 1 / Math.Max(variance[w], middle / 2);
        }
    }

    /// <summary>Least squares with no negative part, by going round the parts one at a time.</summary>
    private static double[] NonNegative(double[,] xx, double[] xv)
    {
        int m = xv.Length;
        double[] x = new double[m];
        double ridge = 1e-4;
        for (int round = 0; round < 400; round++)
        {
            for (int a = 0; a < m; a++)
            {
                double right = xv[a];
                for (int b = 0; b < m; b++)
                    right -= b == a ? 0 : xx[a, b] * x[b];
                double own = xx[a, a] * (1 + ridge);
                x[a] = own > 0 ? Math.Max(0, right / own) : 0;
            }
        }
        return x;
    }

    private static double Quadratic(double[,] xx, double[] a)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * Row(xx, i, a);
        return sum;
    }

    private static double Row(double[,] xx, int row, double[] a)
    {
        double sum = 0;
        for (int j = 0; j < a.Length; j++)
            sum += xx[row, j] * a[j];
        return sum;
    }

    private static double Along(double[,] xv, int group, double[] a)
    {
        double sum = 0;
        for (int j = 0; j < a.Length; j++)
            sum += a[j] * xv[j, group];
        return sum;
    }
}
