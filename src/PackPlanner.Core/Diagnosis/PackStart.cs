using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Beliefs that stand before the joint fit.</summary>
internal static class PackStart
{
    // Slow parts relative to the ohmic one where the log holds no steps to tell (common practice, no source).
    private static readonly double[] UsualSlow = [.12, .18, .18, .25, .3];

    private static readonly double[] SeenSd = [.08, .1, .15, .35];

    // Squared error that the division into cells and joint has whatever the log, in units: about 3 %.
    private const double OwnError = 0.03 * 0.03;

    /// <summary>Expected slow parts relative to the ohmic one and one standard deviation of each, shape [low-passes].</summary>
    internal static (double Mean, double Sd)[] ExpectedSlow(PackModel model)
    {
        int seen = Known(model) ? ResistanceWindows.Terms - 1 : 0;
        return [.. UsualSlow.Select((usual, j) => j < seen ? (model.Resistance.Slow[j], SeenSd[j]) : (usual, 0.4))];
    }

    /// <summary>Amperes that the ohmic resistance would need for the drop of a piece, slow currents as they are expected.</summary>
    /// <param name="slow">What <see cref="ExpectedSlow"/> gives.</param>
    /// <param name="piece">A piece of the log.</param>
    internal static double DriveA((double Mean, double Sd)[] slow, ChargeSlices.Piece piece) =>
        piece.CurrentA + Enumerable.Range(0, piece.SlowA.Length).Sum(j => slow[j].Mean * piece.SlowA[j]);

    /// <summary>Expected logarithm of capacity over rated: used packs hold less than new ones, hardly any holds more.</summary>
    internal static double ExpectedLogCapacity(double at, out double sd)
    {
        double expected = Math.Log(0.93);
        sd = at > expected ? 0.06 : 0.13;
        return expected;
    }

    /// <summary>True where steps of current told the resistance to a tenth or better.</summary>
    internal static bool Known(PackModel model)
    {
        double sd = 1 / Math.Sqrt(Math.Max(1e-12, Robust.UpperMedian(model.Resistance.Information.Select(i => i[0]))));
        return sd < 0.03 * model.UnitOhm;
    }

    /// <summary>Expected cells and joint of a group in units, and the information on them.</summary>
    internal static void ResistanceBelief(
        PackModel model, int k, out double cells, out double joint, out double cc, out double cj, out double jj)
    {
        if (!Known(model))
        {
            (cells, joint, cc, cj, jj) = (1, 0, 1 / 0.09, 0, 1 / 0.0025);
            return;
        }
        cells = model.Resistance.CellOhm[k] / model.UnitOhm;
        joint = model.Resistance.JointOhm[k] / model.UnitOhm;
        double[] information = model.Resistance.Information[k];
        // Counted row by row the information is far too proud: a tenth of it, and an error of the model's own on top.
        double scale = 0.1 * model.UnitOhm * model.UnitOhm;
        double determinant = scale * scale * ((information[0] * information[2]) - (information[1] * information[1]));
        // Where current and slow current moved alike all along, rounding decides the sign of the determinant.
        determinant = Math.Max(determinant, 1e-9 * scale * scale * information[0] * information[2]);
        double vc = (scale * information[2] / determinant) + OwnError, vj = (scale * information[0] / determinant) + OwnError;
        double vx = (-scale * information[1] / determinant) - (0.9 * OwnError);
        determinant = (vc * vj) - (vx * vx);
        (cc, cj, jj) = (vj / determinant, -vx / determinant, vc / determinant);
    }
}
