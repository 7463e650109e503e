using System.Text;

namespace PackPlanner.Core.Fitting;

/// <summary>Where the centres of the cells of one layer may be: in any one of its pieces.</summary>
internal sealed class DiscRegion
{
    private readonly RegionPiece[] pieces;

    internal DiscRegion(IReadOnlyList<RegionPiece> pieces)
    {
        this.pieces = [.. pieces];
        (MinX, MaxX, MinY, MaxY) = (double.PositiveInfinity, double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity);
        StringBuilder key = new();
        foreach (RegionPiece piece in this.pieces)
        {
            double c = piece.Inside.Clearance;
            foreach (double u in piece.Inside.U)
                (MinX, MaxX) = (Math.Min(MinX, u + c), Math.Max(MaxX, u - c));
            foreach (double v in piece.Inside.V)
                (MinY, MaxY) = (Math.Min(MinY, v + c), Math.Max(MaxY, v - c));
            piece.AppendKey(key);
        }

        Key = key.ToString();
    }

    internal IReadOnlyList<RegionPiece> Pieces => pieces;

    /// <summary>Equal for two layers in which the same places are allowed.</summary>
    internal string Key { get; }

    /// <summary>Bounds of the allowed places, millimetres.</summary>
    internal double MinX { get; }

    internal double MaxX { get; }

    internal double MinY { get; }

    internal double MaxY { get; }

    internal bool IsEmpty => pieces.Length == 0 || MinX > MaxX + Geometry2.RoundingMm || MinY > MaxY + Geometry2.RoundingMm;

    /// <summary>Distance to spare, millimetres; below zero when the place is not allowed. Changes by 1 mm per mm at most.</summary>
    internal double Margin(double x, double y)
    {
        double best = double.NegativeInfinity;
        foreach (RegionPiece piece in pieces)
            best = Math.Max(best, piece.Margin(x, y));
        return best;
    }

    /// <summary>Adds the penalty of the piece that needs the least, square millimetres, and its gradient.</summary>
    internal double Push(double x, double y, double extra, ref double gx, ref double gy)
    {
        if (pieces.Length == 1)
            return pieces[0].Push(x, y, extra, ref gx, ref gy);
        double best = double.PositiveInfinity, bestX = 0, bestY = 0;
        foreach (RegionPiece piece in pieces)
        {
            double px = 0, py = 0;
            double energy = piece.Push(x, y, extra, ref px, ref py);
            if (energy < best)
                (best, bestX, bestY) = (energy, px, py);
            if (best == 0)
                return 0;
        }

        gx += bestX;
        gy += bestY;
        return best;
    }

    /// <summary>The piece that has most room to spare at a place.</summary>
    internal RegionPiece PieceAt(double x, double y) => pieces.MaxBy(p => p.Margin(x, y))!;
}
