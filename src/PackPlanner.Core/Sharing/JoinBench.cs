using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Sharing;

/// <summary>The cells of one joining with their common figures.</summary>
internal sealed class JoinBench
{
    private readonly JoinRequest request;
    private readonly double? leastOhm;
    private readonly Dictionary<string, JoinCell> byLabel;

    internal JoinBench(JoinRequest request)
    {
        this.request = request;
        LinkOhm = request.LinkMilliohm / 1000;
        Joinable = [.. request.Cells.Where(cell => !cell.NotToBeCharged && cell.RestV is not null)];
        byLabel = Joinable.GroupBy(cell => cell.Label, StringComparer.Ordinal).ToDictionary(same => same.Key, same => same.First(), StringComparer.Ordinal);
        leastOhm = Joinable.Min(cell => cell.ResistanceMilliohm) / 1000;
        TargetV = Target();
    }

    internal double LinkOhm { get; }

    /// <summary>Cells that may be joined and whose volts are known.</summary>
    internal IReadOnlyList<JoinCell> Joinable { get; }

    /// <summary>Volts that the cells agreeing with one another have in parallel: what the others are brought to.</summary>
    internal double TargetV { get; }

    /// <summary>A range round the target without what lies past empty or full of the chemistry; the target itself stays in it.</summary>
    internal (double LowV, double HighV) InReach(double lowV, double highV) => request.Chemistry is not { } chemistry ? (lowV, highV)
        : (Math.Max(lowV, Math.Min(chemistry.CutoffV, TargetV)), Math.Min(highV, Math.Max(chemistry.FullV, TargetV)));

    /// <summary>Ohms of a cell; null when unknown.</summary>
    internal static double? OhmOf(JoinCell cell) => cell.ResistanceMilliohm / 1000;

    /// <summary>The other cells in parallel; null where there are none, or no resistance is known.</summary>
    internal JoinedCells? Others(JoinCell cell) => Together([.. Joinable.Where(other => !ReferenceEquals(other, cell))], cell.RestV!.Value);

    /// <summary>What may flow between a cell and the others; null when neither a rating nor ampere-hours are known.</summary>
    internal double? LimitA(JoinCell cell, JoinedCells others, double differenceV)
    {
        double? own = differenceV > 0 ? ChargeA(cell) : DischargeA(cell);
        double least = Math.Min(own ?? double.PositiveInfinity, others.LeastLimitA);
        return own is null || double.IsInfinity(least) ? null : least;
    }

    /// <summary>What may flow between a cell and the others if the cell stood below them, or above.</summary>
    internal double? LimitA(JoinCell cell, bool receives) =>
        Together([.. Joinable.Where(other => !ReferenceEquals(other, cell))], receives ? double.NegativeInfinity : double.PositiveInfinity) is { } others
            ? LimitA(cell, others, receives ? 1 : -1)
            : null;

    /// <summary>Joining starts with the cells nearest to the middle and goes outwards.</summary>
    internal string[] Order()
    {
        if (Joinable.Count == 0)
            return [];
        double middle = Robust.Median([.. Joinable.Select(cell => cell.RestV!.Value)]);
        return [.. Joinable.OrderBy(cell => Math.Abs(cell.RestV!.Value - middle)).ThenBy(cell => cell.Label, StringComparer.Ordinal).Select(cell => cell.Label)];
    }

    /// <summary>Current when a cell is joined to those before it in the order that are not late.</summary>
    internal double? InOrderA(JoinCell cell, string[] order, HashSet<string> late)
    {
        int place = Array.IndexOf(order, cell.Label);
        if (place < 1 || OhmOf(cell) is not { } ohm)
            return null;
        JoinCell[] before = [.. order.Take(place).Where(label => !late.Contains(label)).Select(label => byLabel[label])];
        return Together(before, cell.RestV!.Value) is { } joined
            ? Math.Abs(joined.OpenV - cell.RestV!.Value) / (ohm + joined.Ohm + LinkOhm)
            : null;
    }

    /// <summary>Hours until a cell and the others have come near enough through a resistance; null where the curve does not tell.</summary>
    internal double? HoursThrough(JoinCell cell, JoinedCells others, double wholeOhm, double enoughV)
    {
        if (request.Chemistry is not { } chemistry || cell.CapacityAh is not > 0 || !(others.CapacityAh > 0))
            return null;
        if (chemistry.HasFlatCurve && (CurveTells.IsSilent(chemistry, cell.RestV!.Value) || CurveTells.IsSilent(chemistry, others.OpenV)))
            return null;
        double one = chemistry.Curve.FractionAt(cell.RestV!.Value);
        double many = chemistry.Curve.FractionAt(others.OpenV);
        double hours = 0;
        // Each step takes a fiftieth of the time constant at the present slopes, about 2 % of the difference.
        for (int step = 0; step < 20_000; step++)
        {
            double differenceV = chemistry.Curve.VoltsAt(many) - chemistry.Curve.VoltsAt(one);
            if (Math.Abs(differenceV) <= enoughV)
                return hours;
            double voltPerAh = chemistry.Curve.SlopeAt(one) / cell.CapacityAh.Value + chemistry.Curve.SlopeAt(many) / others.CapacityAh;
            double stepH = wholeOhm / voltPerAh / 50;
            double movedAh = differenceV / wholeOhm * stepH * (1 - 0.01);
            one += movedAh / cell.CapacityAh.Value;
            many -= movedAh / others.CapacityAh;
            hours += stepH;
        }

        return null;
    }

    internal double? ChargeA(JoinCell cell) => request.ChargeRatingA ?? cell.CapacityAh * JoiningCheck.UnknownRatingPerHour;

    internal double? DischargeA(JoinCell cell) => request.DischargeRatingA ?? cell.CapacityAh * JoiningCheck.UnknownRatingPerHour;

    // A cell of unknown resistance among the others is taken as low as the lowest known, so that the current is not made to look small.
    private JoinedCells? Together(JoinCell[] cells, double againstV)
    {
        if (cells.Length == 0 || leastOhm is not { } least)
            return null;
        double openV = JoinedCells.Of([.. cells.Select(cell => (cell.RestV!.Value, OhmOf(cell) ?? least, cell.CapacityAh, (double?)null))]).OpenV;
        return JoinedCells.Of([.. cells.Select(cell => (cell.RestV!.Value, OhmOf(cell) ?? least, cell.CapacityAh, openV > againstV ? DischargeA(cell) : ChargeA(cell)))]);
    }

    // Outwards from the middle, as long as each next cell stays within its limit (or within 0.05 V where no limit is known).
    private double Target()
    {
        if (Joinable.Count == 0)
            return double.NaN;
        List<JoinCell> agreeing = [];
        foreach (string label in Order())
        {
            JoinCell cell = byLabel[label];
            if (agreeing.Count == 0 || Agrees(cell, [.. agreeing]))
                agreeing.Add(cell);
        }

        return Together([.. agreeing], 0)?.OpenV ?? agreeing.Average(cell => cell.RestV!.Value);
    }

    private bool Agrees(JoinCell cell, JoinCell[] agreeing)
    {
        JoinedCells? joined = Together(agreeing, cell.RestV!.Value);
        double differenceV = (joined?.OpenV ?? agreeing.Average(other => other.RestV!.Value)) - cell.RestV.Value;
        return joined is { } known && OhmOf(cell) is { } ohm && LimitA(cell, known, differenceV) is { } limitA
            ? Math.Abs(differenceV) <= limitA * (ohm + known.Ohm + LinkOhm)
            : Math.Abs(differenceV) <= JoiningCautions.SmallDifferenceV;
    }
}
