namespace PackPlanner.Core.Diagnosis;

/// <summary>Goes through a log once and cuts it into pieces: where charge, direction, rest, gap or temperature ends one.</summary>
internal sealed class SliceCutter(DiagnosisColumns log, ChargeCount count, double ratedAh, double shortestS, double topV)
{
    private const int MostTops = 3;
    private const double RestGrowth = 2;
    private readonly List<ChargeSlices.Piece> pieces = [];
    private readonly SlowCurrents slow = new();
    private readonly double[] forced = new double[ChargeSlices.Memory.Length];
    private readonly double[] left = [.. ChargeSlices.Memory.Select(_ => 1.0)];
    private readonly List<double> topH = [];
    private readonly double gapS = Math.Max(60, 5 * log.UsualStepS);
    private double restLimitS;
    private double quietS;
    private bool atTop;
    private double loadH;

    internal int Episodes { get; private set; } = 1;

    internal ChargeSlices.Piece[] Cut()
    {
        ChargeSlices.Piece? open = null;
        for (int i = 0; i < log.Rows; i++)
        {
            Follow(i, out bool gap);
            int kind = count.Resting[i] ? 0 : count.CurrentA[i] > 0 ? 1 : -1;
            bool parked = kind == 0 && open is { Slice.Kind: 0 };
            if (open is not null && ((gap && !parked) || Ends(open, i, kind)))
            {
                Close(open);
                open = null;
            }
            if (open is null)
            {
                open = Open(i, kind);
                restLimitS = kind == 0 ? Math.Min(1800, Math.Max(shortestS, restLimitS * RestGrowth)) : 0;
            }
            Add(open, i);
        }
        if (open is not null)
            Close(open);
        foreach (ChargeSlices.Piece piece in pieces)
            piece.TopH = [.. piece.TopH, .. new double[topH.Count - piece.TopH.Length]];
        for (int e = 0; e < topH.Count; e++)
        {
            double so = 0;
            foreach (ChargeSlices.Piece piece in pieces)
                piece.TopH[e] = so = Math.Max(so, piece.TopH[e]);
        }
        return [.. pieces];
    }

    private void Follow(int i, out bool gap)
    {
        double stepS = count.StepS[i];
        double meanA = i == 0 || log.RowsAreAverages ? count.CurrentA[i] : (count.CurrentA[i] + count.CurrentA[i - 1]) / 2;
        gap = stepS > gapS;
        if (i == 0)
            return;
        slow.Advance(stepS, gap ? 0 : meanA, log.RowsAreAverages && !gap);
        double movedAh = count.DrawnAh[i] - count.DrawnAh[i - 1];
        for (int m = 0; m < ChargeSlices.Memory.Length; m++)
        {
            double kept = Math.Exp(-Math.Abs(movedAh) / (ChargeSlices.Memory[m] * ratedAh));
            forced[m] = Math.Sign(movedAh) + ((forced[m] - Math.Sign(movedAh)) * kept);
            left[m] *= kept;
        }
        quietS = count.Resting[i] ? quietS + stepS : gap ? quietS + stepS : 0;
        loadH += count.Resting[i] || gap ? 0 : stepS / 3600;
        FollowTop(i, stepS);
    }

    /// <summary>Counts the hours near full: at rest or on charge with the highest group above the balancer's voltage.</summary>
    private void FollowTop(int i, double stepS)
    {
        double highest = double.NaN;
        for (int k = 0; k < log.Groups; k++)
        {
            double v = log.Volts(k, i);
            if (!(v <= highest))
                highest = double.IsNaN(v) ? highest : v;
        }
        bool now = highest >= topV && count.CurrentA[i] <= 0.02 * ratedAh;
        if (now && !atTop && topH.Count < MostTops)
            topH.Add(0);
        atTop = now;
        if (now)
            topH[^1] += stepS / 3600;
    }

    private bool Ends(ChargeSlices.Piece open, int i, int kind)
    {
        double longS = log.TimeS[i] - log.TimeS[open.Rows.First];
        double charge = Math.Abs(count.DrawnAh[i] - count.DrawnAh[open.Rows.First]);
        return (open.Slice.Kind == 0) != (kind == 0) || charge > 0.0033 * ratedAh
            || longS >= (open.Slice.Kind == 0 ? restLimitS : shortestS);
    }

    private ChargeSlices.Piece Open(int i, int kind)
    {
        if (quietS == 0 && pieces.Count > 0 && pieces[^1].Slice.Kind == 0 && log.TimeS[i] - log.TimeS[LastRestStart()] > 3600)
            Episodes++;
        if (kind != 0)
            restLimitS = 0;
        return new ChargeSlices.Piece
        {
            Rows = (i, i),
            SlowA = new double[SlowCurrents.TauS.Length],
            Hysteresis = new double[2 * ChargeSlices.Memory.Length],
            Volts = new double[log.Groups],
            Readings = new int[log.Groups],
            Slice = (0, kind, Episodes),
        };
    }

    private int LastRestStart()
    {
        int p = pieces.Count - 1;
        while (p > 0 && pieces[p - 1].Slice.Kind == 0)
            p--;
        return pieces[p].Rows.First;
    }

    private void Add(ChargeSlices.Piece open, int i)
    {
        open.Rows = (open.Rows.First, i);
        open.TimeS += log.TimeS[i];
        open.DrawnAh += count.DrawnAh[i];
        open.LoadH += loadH;
        open.CurrentA += count.CurrentA[i];
        open.TemperatureDegC += log.Temperature(i);
        for (int j = 0; j < open.SlowA.Length; j++)
            open.SlowA[j] += slow.NowA[j];
        for (int m = 0; m < ChargeSlices.Memory.Length; m++)
        {
            open.Hysteresis[2 * m] += forced[m];
            open.Hysteresis[(2 * m) + 1] += left[m];
        }
        for (int k = 0; k < open.Volts.Length; k++)
        {
            double v = log.Volts(k, i);
            if (!double.IsNaN(v))
            {
                open.Volts[k] += v;
                open.Readings[k]++;
            }
        }
    }

    private void Close(ChargeSlices.Piece open)
    {
        int n = open.Rows.Last - open.Rows.First + 1;
        open.TimeS /= n;
        open.DrawnAh /= n;
        open.CurrentA /= n;
        open.LoadH /= n;
        open.TemperatureDegC /= n;
        for (int j = 0; j < open.SlowA.Length; j++)
            open.SlowA[j] /= n;
        for (int m = 0; m < open.Hysteresis.Length; m++)
            open.Hysteresis[m] /= n;
        for (int k = 0; k < open.Volts.Length; k++)
            open.Volts[k] = open.Readings[k] == 0 ? double.NaN : open.Volts[k] / open.Readings[k];
        int kind = open.Slice.Kind == 0 ? 0 : Math.Sign(open.CurrentA);
        open.Slice = ((int)Math.Floor(open.DrawnAh / (0.01 * ratedAh)), kind, open.Slice.Episode);
        open.TopH = [.. topH];
        pieces.Add(open);
    }
}
