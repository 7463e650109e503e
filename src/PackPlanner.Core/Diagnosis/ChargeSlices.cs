namespace PackPlanner.Core.Diagnosis;

/// <summary>A log cut into pieces of at most a third of a percent of charge, each piece averaged.</summary>
/// <remarks>
/// Averaging takes the noise out and keeps what is linear: charge, current, slow currents. Pieces at the same charge and of the
/// same kind (rest, discharge, charge) make one slice; a slice weighs the same however long the log stayed in it, because the
/// errors of a curve do not average out with time.
/// </remarks>
internal sealed class ChargeSlices
{
    /// <summary>Kinds of hysteresis memory kept, as the share of capacity that renews it.</summary>
    internal static readonly double[] Memory = [0.02, 0.08];

    private ChargeSlices(Piece[] pieces, int episodes)
    {
        Pieces = pieces;
        for (int i = 0; i < pieces.Length; i++)
            pieces[i].Place = i;
        Episodes = episodes;
        Dictionary<(int, int, int), int> counts = [];
        foreach (Piece piece in pieces)
            counts[piece.Slice] = counts.GetValueOrDefault(piece.Slice) + 1;
        SharedBy = [.. pieces.Select(p => counts[p.Slice])];
    }

    /// <summary>One averaged piece.</summary>
    internal sealed class Piece
    {
        /// <summary>Its place among the pieces; -1 for one that is none of them.</summary>
        internal int Place = -1;

        /// <summary>Seconds, mean.</summary>
        internal double TimeS;

        /// <summary>Ampere-hours drawn since the first row, mean.</summary>
        internal double DrawnAh;

        /// <summary>Amperes, mean.</summary>
        internal double CurrentA;

        /// <summary>Degrees Celsius, mean; NaN when unknown.</summary>
        internal double TemperatureDegC;

        /// <summary>Amperes behind each low-pass, mean.</summary>
        internal double[] SlowA = [];

        /// <summary>Hysteresis driven by the current so far, and what is left of the state at the first row, for each memory.</summary>
        internal double[] Hysteresis = [];

        /// <summary>Hours so far in which a top balancer may have worked, one for each occasion.</summary>
        internal double[] TopH = [];

        /// <summary>Hours under load or charge so far, mean.</summary>
        internal double LoadH;

        /// <summary>Mean volts of each group; NaN when none was read.</summary>
        internal double[] Volts = [];

        /// <summary>Readings behind each mean.</summary>
        internal int[] Readings = [];

        /// <summary>Step of charge, kind and episode: pieces alike share one weight.</summary>
        internal (int Charge, int Kind, int Episode) Slice;

        /// <summary>First and last row.</summary>
        internal (int First, int Last) Rows;
    }

    /// <summary>The pieces in order of time.</summary>
    internal Piece[] Pieces { get; }

    /// <summary>How many pieces share the slice of each piece.</summary>
    internal int[] SharedBy { get; }

    /// <summary>Rides, charges and rests apart by an hour or more.</summary>
    internal int Episodes { get; }

    /// <summary>Cuts a log.</summary>
    /// <param name="log">The columns.</param>
    /// <param name="count">The counted charge.</param>
    /// <param name="ratedAh">Rated capacity of a group.</param>
    /// <param name="shortestS">Pieces under load last at least this long unless charge ends them.</param>
    /// <param name="topV">From this voltage up a balancer may work.</param>
    internal static ChargeSlices Of(DiagnosisColumns log, ChargeCount count, double ratedAh, double shortestS, double topV)
    {
        SliceCutter cutter = new(log, count, ratedAh, shortestS, topV);
        return new ChargeSlices(cutter.Cut(), cutter.Episodes);
    }
}
