namespace PackPlanner.Core.Diagnosis;

/// <summary>The pack current seen through a bank of low-passes: what slow polarisation is made of.</summary>
/// <remarks>Fixed times instead of fitted ones keep the fit linear; any two true times lie between neighbours of the bank.</remarks>
internal sealed class SlowCurrents
{
    /// <summary>Times of the bank, seconds.</summary>
    internal static readonly double[] TauS = [2.5, 8, 30, 120, 500];

    private readonly double[] state = new double[TauS.Length];

    /// <summary>Amperes behind each low-pass at the row (or, for averaged rows, its mean over the row), shape [TauS.Length].</summary>
    internal double[] NowA { get; } = new double[TauS.Length];

    /// <summary>Goes on by one row.</summary>
    /// <param name="stepS">Seconds since the row before.</param>
    /// <param name="meanA">Mean current over that time.</param>
    /// <param name="averages">The row's readings are means over that time.</param>
    internal void Advance(double stepS, double meanA, bool averages)
    {
        for (int j = 0; j < TauS.Length; j++)
        {
            double kept = Math.Exp(-stepS / TauS[j]);
            double before = state[j];
            state[j] = meanA + ((before - meanA) * kept);
            NowA[j] = averages && stepS > 0 ? meanA + ((before - meanA) * (1 - kept) * TauS[j] / stepS) : state[j];
        }
    }
}
