namespace PackPlanner.Core.Diagnosis;

/// <summary>Looks for channels that keep one reading where a sound group cannot.</summary>
/// <remarks>
/// Sound groups keep one reading too: at rest, in the middle of a flat curve, through the last hour of a charge in which the fullest rise past them,
/// all the more where a log is coarse. So either the load must step and all the others follow it, or charge must flow that moves every group.
/// </remarks>
internal sealed class StillChannels
{
    // What the others move by before one that does not is looked at; a coarse log is given four of its steps (our choice).
    private const double MovedV = 0.15, Grains = 4;

    // A step of the load that shows in the others, the part of the rated charge in an hour that makes one, and how many of them no sound group passes over (our choice).
    private const double JumpV = 0.015, JumpGrains = 3, JumpPerHour = 0.02;
    private const int Jumps = 5;

    // The part of the rated charge through which no sound group keeps one reading: a flat curve hides as much as half of it from steps of 10 mV (our choice, by the curves of this program).
    private const double MovesSloped = 0.05, MovesFlat = 0.6, MovesFlatFine = 0.2, FineGrainV = 0.002;

    private const int LeastRows = 50;

    // Of millions of rows so many tell as well as all: what stands still for long stands still on each of them.
    private const int RowsLookedAt = 200_000;

    // Past so many usual steps between two rows nobody knows what flowed.
    private const double LongestSteps = 20;

    private readonly RideLog log;
    private readonly double movedV, jumpV, jumpA, movesAh;
    private readonly StillRun[] runs;
    private readonly List<StillChannel> found = [];

    private StillChannels(RideLog log, double grainV, PackGiven? given)
    {
        this.log = log;
        (movedV, jumpV) = (Math.Max(MovedV, Grains * grainV), Math.Max(JumpV, JumpGrains * grainV));
        jumpA = JumpPerHour * (given?.RatedGroupAh ?? 0);
        double part = given?.Chemistry.HasFlatCurve != true ? MovesSloped : grainV <= FineGrainV ? MovesFlatFine : MovesFlat;
        movesAh = given is null ? 0 : part * given.RatedGroupAh;
        runs = [.. log.GroupV.Select(volts => new StillRun(volts))];
    }

    /// <summary>Looks for them.</summary>
    /// <param name="log">The log, with two groups or more that read.</param>
    /// <param name="read">How many groups read at all.</param>
    /// <param name="grainV">The smallest step between its readings, volts.</param>
    /// <param name="given">What is known of the pack; null: any charge that flows moves every group.</param>
    internal static IReadOnlyList<StillChannel> Find(RideLog log, int read, double grainV, PackGiven? given)
    {
        StillChannels look = new(log, grainV, given);
        look.Go(read);
        return look.found;
    }

    private void Go(int read)
    {
        int stride = Math.Max(1, log.Rows / RowsLookedAt);
        List<double> sorted = new(runs.Length);
        double charge = 0;
        for (int i = 0; i < log.Rows; i += stride)
        {
            charge += FlownAh(i - stride, i);
            sorted.Clear();
            sorted.AddRange(log.GroupV.Select(volts => volts[i]).Where(double.IsFinite));
            // A reading that another group lost would move the middle by itself.
            bool all = sorted.Count == read;
            sorted.Sort();
            for (int k = 0; k < runs.Length; k++)
            {
                if (!double.IsFinite(runs[k].Volts[i]))
                    continue;
                if (!runs[k].GoesOn(i))
                    Close(k, i);
                if (all)
                    runs[k].See(MiddleWithout(sorted, runs[k].Volts[i]), log.CurrentA is { } current ? current[i] : double.NaN, charge, jumpV, jumpA);
            }
        }

        for (int k = 0; k < runs.Length; k++)
            Close(k, log.Rows);
    }

    private double FlownAh(int before, int row)
    {
        if (before < 0 || log.CurrentA is not { } current || !double.IsFinite(current[before]))
            return 0;
        double seconds = log.TimeS[row] - log.TimeS[before];
        double longest = LongestSteps * (row - before) * (log.UsualStepS > 0 ? log.UsualStepS : seconds);
        return current[before] * Math.Clamp(seconds, 0, longest) / 3600;
    }

    private static double MiddleWithout(List<double> sorted, double own)
    {
        int at = sorted.BinarySearch(own), others = sorted.Count - 1;
        double Other(int place) => sorted[place < at ? place : place + 1];
        return others % 2 == 1 ? Other(others / 2) : (Other((others / 2) - 1) + Other(others / 2)) / 2;
    }

    private void Close(int k, int next)
    {
        StillRun run = runs[k];
        bool stands = run.Jumps >= Jumps || (run.MovedV > movedV && (log.CurrentA is null || run.MovedAh >= movesAh));
        if (run.MovedV > jumpV && stands && run.Rows >= LeastRows)
            found.Add(new StillChannel(k, run.Volts[run.First], run.First, run.Last, run.MovedV));
        if (next < log.Rows)
            run.Begin(next);
    }
}
