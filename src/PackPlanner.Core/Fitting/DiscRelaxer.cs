namespace PackPlanner.Core.Fitting;

/// <summary>
/// Moves discs until none overlaps another or a wall: least sum of squared overlaps by a limited-memory quasi-Newton method
/// with neighbour lists. Discs beyond <c>moving</c> stand still and only push. Holds its own arrays, so that thousands of trials cost
/// no memory; use one for each thread.
/// </summary>
/// <remarks>Steps are halved until the energy falls enough.</remarks>
internal sealed class DiscRelaxer(DiscRegion region, double distance)
{
    /// <summary>Asked beyond the rule, so that an answer holds in full after rounding.</summary>
    private const double SpareMm = 2e-6;

    /// <summary>What may be lacking of the asked distance plus <see cref="SpareMm"/>.</summary>
    private const double AcceptMm = 1.5e-6;

    private double[] x = [];
    private double[] gradient = [];
    private double[] trial = [];
    private double[] trialGradient = [];
    private double[] direction = [];
    private readonly DescentMemory memory = new();
    private readonly DiscPairs pairs = new(distance);
    private int moving;

    /// <summary>Pair and wall terms evaluated so far: the measure of work that ends searches.</summary>
    internal long Work { get; private set; }

    /// <summary>Largest lack of the last run, millimetres.</summary>
    internal double WorstMm { get; private set; }

    /// <summary>Moves the discs in place; true when every distance is kept.</summary>
    /// <param name="xs">Moving discs, centre, millimetres.</param>
    /// <param name="ys">Moving discs, centre, millimetres.</param>
    /// <param name="stillX">Discs that stand still.</param>
    /// <param name="stillY">Discs that stand still.</param>
    /// <param name="most">Steps at most.</param>
    internal bool Relax(Span<double> xs, Span<double> ys, ReadOnlySpan<double> stillX, ReadOnlySpan<double> stillY, int most)
    {
        Load(xs, ys, stillX, stillY);
        bool done = Minimise(most);
        for (int i = 0; i < moving; i++)
            (xs[i], ys[i]) = (x[2 * i], x[(2 * i) + 1]);
        return done;
    }

    /// <summary>What disc <paramref name="i"/> lacks after the last run: sum of squares over its pairs and walls.</summary>
    internal double LackOf(int i)
    {
        double energy = 0;
        for (int p = 0; p < pairs.Count; p++)
        {
            if (pairs.First[p] != i && pairs.Second[p] != i)
                continue;
            double lack = distance + SpareMm - pairs.DistanceMm(p, x);
            energy += lack > 0 ? lack * lack : 0;
        }

        double gx = 0, gy = 0;
        return energy + region.Push(x[2 * i], x[(2 * i) + 1], SpareMm, ref gx, ref gy);
    }

    private void Load(Span<double> xs, Span<double> ys, ReadOnlySpan<double> stillX, ReadOnlySpan<double> stillY)
    {
        moving = xs.Length;
        int n = 2 * moving;
        if (x.Length < n)
            (x, gradient, trial, trialGradient, direction) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        pairs.Load(moving, stillX, stillY);
        for (int i = 0; i < moving; i++)
            (x[2 * i], x[(2 * i) + 1]) = (xs[i], ys[i]);
    }

    private bool Minimise(int most)
    {
        int n = 2 * moving;
        pairs.List(x);
        double energy = Evaluate(x, gradient);
        int dull = 0;
        memory.Clear(n);
        for (int step = 0; step < most; step++)
        {
            if (energy < AcceptMm * AcceptMm)
                break;
            double slope = TurnDownhill(n);
            if (slope == 0)
                break;
            if (StepDown(n, energy, slope) is not { } next)
            {
                if (memory.IsEmpty)
                    break;
                memory.Clear(n);
                continue;
            }

            // An energy that hardly falls any more while much is lacking means that the discs are jammed.
            dull = next > energy * 0.98 ? dull + 1 : 0;
            memory.Remember(x, trial, gradient, trialGradient, n);
            (x, trial, gradient, trialGradient) = (trial, x, trialGradient, gradient);
            energy = next;
            if (dull > 12)
                break;
        }

        WorstMm = Worst();
        return WorstMm < AcceptMm;
    }

    /// <summary>Sets the direction; where what is remembered leads uphill, straight down the gradient.</summary>
    /// <returns>How the energy falls along it, negative; 0 at the bottom.</returns>
    private double TurnDownhill(int n)
    {
        memory.Turn(gradient, direction, n);
        double slope = DescentMemory.Dot(direction, gradient, n);
        if (slope < 0)
            return slope;
        memory.Clear(n);
        memory.Turn(gradient, direction, n);
        slope = DescentMemory.Dot(direction, gradient, n);
        return slope > -1e-300 ? 0 : slope;
    }

    /// <summary>Tries a step and halves it until the energy falls enough; null when it never does.</summary>
    /// <returns>The energy at the trial point.</returns>
    private double? StepDown(int n, double energy, double slope)
    {
        double length = Clip(n);
        for (int halvings = 0; halvings <= 25; halvings++)
        {
            for (int i = 0; i < n; i++)
                trial[i] = x[i] + (length * direction[i]);
            pairs.KeepFresh(trial);
            double next = Evaluate(trial, trialGradient);
            if (next <= energy + (1e-4 * length * slope))
                return next;
            length /= 2;
        }

        return null;
    }

    /// <summary>No disc moves further in one step than a third of a pitch: beyond that the neighbour list says nothing.</summary>
    private double Clip(int n)
    {
        double largest = 0;
        for (int i = 0; i < n; i++)
            largest = Math.Max(largest, Math.Abs(direction[i]));
        return largest > distance / 3 ? distance / 3 / largest : 1;
    }

    private double Evaluate(double[] at, double[] into)
    {
        Array.Clear(into, 0, 2 * moving);
        double energy = 0, want = distance + SpareMm, want2 = want * want;
        int[] first = pairs.First, second = pairs.Second;
        double[] stillX = pairs.StillX, stillY = pairs.StillY;
        int count = pairs.Count;
        for (int p = 0; p < count; p++)
        {
            int i = first[p], j = second[p];
            double ox = j >= 0 ? at[2 * j] : stillX[~j], oy = j >= 0 ? at[(2 * j) + 1] : stillY[~j];
            double dx = at[2 * i] - ox, dy = at[(2 * i) + 1] - oy, d2 = (dx * dx) + (dy * dy);
            if (d2 >= want2)
                continue;
            double d = Math.Sqrt(d2), lack = want - d;
            energy += lack * lack;
            // Two discs on one spot are parted along x, in the order of their numbers.
            double f = d > 1e-9 ? 2 * lack / d : 0, fx = d > 1e-9 ? f * dx : 2 * lack, fy = f * dy;
            into[2 * i] -= fx;
            into[(2 * i) + 1] -= fy;
            if (j >= 0)
            {
                into[2 * j] += fx;
                into[(2 * j) + 1] += fy;
            }
        }

        for (int i = 0; i < moving; i++)
            energy += region.Push(at[2 * i], at[(2 * i) + 1], SpareMm, ref into[2 * i], ref into[(2 * i) + 1]);
        Work += count + (4L * moving);
        return energy;
    }

    /// <summary>The largest single lack.</summary>
    private double Worst()
    {
        double worst = 0;
        for (int p = 0; p < pairs.Count; p++)
            worst = Math.Max(worst, distance + SpareMm - pairs.DistanceMm(p, x));
        for (int i = 0; i < moving; i++)
        {
            double gx = 0, gy = 0;
            worst = Math.Max(worst, Math.Sqrt(region.Push(x[2 * i], x[(2 * i) + 1], SpareMm, ref gx, ref gy)));
        }

        return worst;
    }
}
