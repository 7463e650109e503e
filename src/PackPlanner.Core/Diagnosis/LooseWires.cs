using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Sense wires whose contact comes and goes: two neighbours jump by opposite amounts while their sum stays.</summary>
/// <remarks>
/// A tap between two groups that reads wrong by e adds e to one and takes it from the other. A misplaced tap does so by a constant, which
/// the fit finds; a loose one jumps, and then neither reading says anything by itself. Their sum is still right: half of it stands for each.
/// </remarks>
internal static class LooseWires
{
    // A jump is fifty millivolts, where caution 16 begins, or far more than what the reading usually moves against the others, and
    // mirrored to a fifth (our choice: with twelve millivolts, unlike resistances under a jumpy load were taken for a loose wire).
    // From twenty millivolts up to that it is spoken of and accuses none.
    private const double LeastJumpV = 0.05, LeastSuspectedV = 0.02, Grains = 2.5, Unusual = 8, Seldom = 2, Mirrored = 0.2;
    private const int LeastJumps = 4;

    // Chance makes more jumps where there are more rows: beyond this many each, one more is asked for (our choice).
    private const int RowsForAJump = 100_000;

    /// <summary>A loose tap: between <paramref name="Below"/> and the next group.</summary>
    /// <param name="Below">The lower of the two groups, from 0.</param>
    /// <param name="ApartV">How far the readings stand off their mean, median over the rows.</param>
    /// <param name="Jumps">Jumps counted.</param>
    /// <param name="FirstJumpS">When it jumped first, seconds.</param>
    internal readonly record struct Wire(int Below, double ApartV, int Jumps, double FirstJumpS)
    {
        /// <summary>Whether a group, from 0, is read over this wire.</summary>
        internal bool Touches(int group) => group == Below || group == Below + 1;
    }

    /// <summary>Loose wires, and taps whose groups jump against each other too little to be taken for one.</summary>
    internal static (IReadOnlyList<Wire> Loose, IReadOnlyList<Wire> Suspected) Look(DiagnosisColumns log)
    {
        if (log.Groups < 3)
            return ([], []);
        double[] middleV = MiddleMoves(log);
        double[] ownOhm = OwnOhm(log, middleV);
        double[] usualV = UsualMoves(log, middleV, ownOhm);
        List<Wire> loose = [], suspected = [];
        for (int k = 0; k + 1 < log.Groups; k++)
        {
            ((int large, int firstLarge), (int small, int firstSmall)) = Jumps(log, middleV, ownOhm, Math.Max(usualV[k], usualV[k + 1]), k);
            int least = Math.Max(LeastJumps, log.Rows / RowsForAJump);
            if (large >= least)
                loose.Add(new Wire(k, Apart(log, k), large, log.TimeS[firstLarge]));
            else if (small >= least)
                suspected.Add(new Wire(k, Apart(log, k), small, log.TimeS[firstSmall]));
        }
        return (loose, [.. suspected.Where(s => !loose.Any(w => w.Touches(s.Below) || w.Touches(s.Below + 1)))]);
    }

    /// <summary>A note for each tap at which the groups jump by less than a loose wire does.</summary>
    internal static IEnumerable<string> Notes(IReadOnlyList<Wire> suspected) => suspected.Select(w => Invariant(
        $"groups {w.Below + 1} and {w.Below + 2} jump by opposite amounts, mostly below {1000 * LeastJumpV:f0} mV, {w.Jumps} times: a sense wire that begins to come loose, or two groups that answer the current unlike each other; this log does not tell which, so look at the wire between them"));

    /// <summary>Counts mirrored moves past the limit of a loose wire and past the lower one, with the first row of each.</summary>
    private static ((int Count, int First) Large, (int Count, int First) Small) Jumps(DiagnosisColumns log, double[] middleV, double[] ownOhm, double usualV, int k)
    {
        double large = Math.Max(Math.Max(LeastJumpV, Grains * log.GrainV), usualV), small = Math.Max(Math.Max(LeastSuspectedV, Grains * log.GrainV), usualV);
        double steepestOhm = ownOhm.Max(Math.Abs);
        (int larges, int firstLarge, int smalls, int firstSmall) = (0, 0, 0, 0);
        for (int i = 1; i < log.Rows; i++)
        {
            double a = Move(log, middleV, k, i, ownOhm[k]), b = Move(log, middleV, k + 1, i, ownOhm[k + 1]);
            // A step of current moves unlike groups apart too, and not all of that at once.
            double past = Math.Min(Math.Abs(a), Math.Abs(b)) - (0.5 * steepestOhm * Math.Abs(log.CurrentA[i] - log.CurrentA[i - 1]));
            if (!(past > small && Math.Abs(a + b) < Mirrored * Math.Max(Math.Abs(a), Math.Abs(b))))
                continue;
            firstSmall = smalls++ == 0 ? i : firstSmall;
            if (past > large)
                firstLarge = larges++ == 0 ? i : firstLarge;
        }
        return ((larges, firstLarge), (smalls, firstSmall));
    }

    /// <summary>The columns with half the sum in place of both readings at a loose wire; of wires beside one another, the mean of all their groups.</summary>
    internal static DiagnosisColumns Mended(DiagnosisColumns log, IReadOnlyList<Wire> wires)
    {
        if (wires.Count == 0)
            return log;
        double[][] volts = [.. log.GroupV];
        for (int w = 0; w < wires.Count;)
        {
            int from = wires[w].Below, to = from + 1;
            for (w++; w < wires.Count && wires[w].Below == to; w++)
                to++;
            double[][] read = log.GroupV[from..(to + 1)];
            double[] mean = [.. Enumerable.Range(0, log.Rows).Select(row => read.Average(group => group[row]))];
            Array.Fill(volts, mean, from, to - from + 1);
        }
        return new DiagnosisColumns(log.TimeS, log.CurrentA, volts, log.TemperatureDegC, log.RowsAreAverages);
    }

    /// <summary>The figures of both groups at a loose wire are their mean; each may stand off it as groups do.</summary>
    internal static GroupEstimate[] Widened(GroupEstimate[] groups, IReadOnlyList<Wire> wires)
    {
        const double apart = 0.03;
        return
        [
            .. groups.Select((g, k) => !wires.Any(wire => wire.Touches(k)) ? g : g with
            {
                CapacitySd = Math.Sqrt((g.CapacitySd * g.CapacitySd) + (apart * apart)),
                ShareSd = Math.Sqrt((g.ShareSd * g.ShareSd) + (apart * apart)),
                OffsetSd = Math.Sqrt((g.OffsetSd * g.OffsetSd) + (apart * apart / 4)),
                ResistanceSd = Math.Sqrt((g.ResistanceSd * g.ResistanceSd) + (apart * apart)),
                TapV = wires.Where(wire => wire.Touches(k)).Max(wire => wire.ApartV),
            }),
        ];
    }

    /// <summary>An event for each wire.</summary>
    internal static IEnumerable<RideEvent> Events(IReadOnlyList<Wire> wires) => wires.Select(w => new RideEvent(
        w.FirstJumpS, "mirrored", w.Below + 1, null, null, Invariant($"groups {w.Below + 1} and {w.Below + 2} jump by opposite amounts, {w.Jumps} times: a loose sense wire")));

    /// <summary>Caution 16 for each wire.</summary>
    internal static IEnumerable<Caution> Cautions(IReadOnlyList<Wire> wires) => wires.Select(w => new Caution(
        "caution-16", SignalWord.Warning, Invariant($"groups {w.Below + 1} and {w.Below + 2}"),
        Invariant($"readings jump, mirrored, and stand {1000 * w.ApartV:f0} mV off their mean")));

    /// <summary>Change of a group's reading since the row before, less what the others did and what its own resistance does.</summary>
    private static double Move(DiagnosisColumns log, double[] middleV, int k, int i, double ownOhm) =>
        log.GroupV[k][i] - log.GroupV[k][i - 1] - middleV[i] + (ownOhm * (log.CurrentA[i] - log.CurrentA[i - 1]));

    /// <summary>By how much each group answers a step of current more than the others, ohm.</summary>
    private static double[] OwnOhm(DiagnosisColumns log, double[] middleV)
    {
        int stride = Math.Max(1, log.Rows / 20000);
        double[] ohm = new double[log.Groups];
        for (int k = 0; k < ohm.Length; k++)
        {
            double squares = 0, products = 0;
            for (int i = 1; i < log.Rows; i += stride)
            {
                double step = log.CurrentA[i] - log.CurrentA[i - 1], move = Move(log, middleV, k, i, 0);
                if (double.IsNaN(step) || double.IsNaN(move))
                    continue;
                squares += step * step;
                products -= step * move;
            }
            ohm[k] = squares > 0 ? products / squares : 0;
        }
        return ohm;
    }

    /// <summary>What the pack as a whole did since the row before: the median of three far-apart groups takes its answer to the current off.</summary>
    private static double[] MiddleMoves(DiagnosisColumns log)
    {
        double[] one = log.GroupV[0], other = log.GroupV[log.Groups / 2], last = log.GroupV[^1], middleV = new double[log.Rows];
        for (int i = 1; i < middleV.Length; i++)
        {
            double a = one[i] - one[i - 1], b = other[i] - other[i - 1], c = last[i] - last[i - 1];
            middleV[i] = Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
        }
        return middleV;
    }

    /// <summary>How far each group's readings move against the others without being taken for a jump, volts.</summary>
    private static double[] UsualMoves(DiagnosisColumns log, double[] middleV, double[] ownOhm)
    {
        int stride = Math.Max(1, log.Rows / 2000);
        double[] usual = new double[log.Groups];
        List<double> moves = [];
        for (int k = 0; k < usual.Length; k++)
        {
            moves.Clear();
            for (int i = 1; i < log.Rows; i += stride)
            {
                double move = Math.Abs(Move(log, middleV, k, i, ownOhm[k]));
                if (!double.IsNaN(move))
                    moves.Add(move);
            }
            moves.Sort();
            usual[k] = moves.Count == 0 ? 0 : Math.Max(Unusual * moves[moves.Count / 2], Seldom * moves[moves.Count * 9 / 10]);
        }
        return usual;
    }

    private static double Apart(DiagnosisColumns log, int k)
    {
        int stride = Math.Max(1, log.Rows / 2000);
        List<double> apart = [];
        for (int i = 0; i < log.Rows; i += stride)
        {
            double half = Math.Abs(log.GroupV[k][i] - log.GroupV[k + 1][i]) / 2;
            if (!double.IsNaN(half))
                apart.Add(half);
        }
        return Robust.Median([.. apart]);
    }
}
