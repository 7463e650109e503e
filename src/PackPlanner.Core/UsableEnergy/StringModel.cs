using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>A request turned into the strings that are discharged: which charge each group starts with, and how it is scaled.</summary>
internal sealed class StringModel
{
    private readonly EnergyRequest request;

    /// <param name="request">The string and its load.</param>
    /// <param name="curve">The curve of a request with the same limits, which need not be built again.</param>
    internal StringModel(EnergyRequest request, OpenCircuitCurve? curve = null)
    {
        this.request = request;
        Curve = curve ?? request.Chemistry.Curve.Between(request.CountedFromV, request.CountedToV);
        TopFraction = request.ChargedToV >= request.CountedFromV ? 1 : Curve.FractionAt(request.ChargedToV);
        ResistanceOhm = MissingResistances.Taken(request.Groups) is { } milliohm ? [.. milliohm.Select(each => each / 1000)] : null;
        CapacityAh = [.. request.Groups.Select((group, g) => AtRestAh(group.CapacityAh, ResistanceOhm?[g]))];
    }

    /// <summary>Resting volts with 1 at the charge limit and 0 at the cut-off of the tests.</summary>
    internal OpenCircuitCurve Curve { get; }

    /// <summary>State of charge at the volts that the pack is charged to.</summary>
    internal double TopFraction { get; }

    /// <summary>Ampere-hours between the ends of the curve, shape [groups].</summary>
    internal double[] CapacityAh { get; }

    /// <summary>Ohms, shape [groups]; null when nothing is known of any. Unknown ones are taken from the others.</summary>
    internal double[]? ResistanceOhm { get; }

    /// <summary>Links between the groups, joints and leads, ohms; null when none of them is known.</summary>
    internal double? LinkOhm => request.LinkMilliohm is null && request.LeadsMilliohm is null && request.JointsMilliohm is null
        ? null
        : request.BesideCellsMilliohm / 1000;

    /// <summary>The string as it is now: charged until its first group is full.</summary>
    internal SeriesString Now() => String(CapacityAh, Offsets(TopFraction), withCells: true, withLinks: true);

    /// <summary>The string with every group full.</summary>
    internal SeriesString Balanced() => String(CapacityAh, All(TopFraction), withCells: true, withLinks: true);

    internal SeriesString String(double[] capacityAh, double[] start, bool withCells, bool withLinks, double capacityFactor = 1, double ohmFactor = 1) => new()
    {
        Curve = Curve,
        CapacityAh = capacityFactor == 1 ? capacityAh : [.. capacityAh.Select(ah => ah * capacityFactor)],
        StartFraction = start,
        CellOhm = withCells && ResistanceOhm is not null ? [.. ResistanceOhm.Select(ohm => ohm * ohmFactor)] : new double[capacityAh.Length],
        LinkOhm = withLinks ? LinkOhm ?? 0 : 0,
    };

    internal double[] All(double value)
    {
        double[] all = new double[request.Groups.Count];
        Array.Fill(all, value);
        return all;
    }

    /// <summary>State of charge of each group once the first of them stands at <paramref name="top"/>.</summary>
    internal double[] Offsets(double top)
    {
        if (request.Groups.All(group => group.StateOfChargeFraction is null))
            return All(top);
        double[] moment = [.. request.Groups.Select(group => group.StateOfChargeFraction
            ?? throw new ArgumentException("Either all groups have a state of charge or none."))];
        double addedAh = moment.Zip(CapacityAh, (fraction, ah) => (top - fraction) * ah).Min();
        return [.. moment.Zip(CapacityAh, (fraction, ah) => fraction + addedAh / ah)];
    }

    /// <summary>The groups with the weakest ones replaced by the median one.</summary>
    internal SeriesString Replaced(int count, out IReadOnlyList<int> replaced)
    {
        int[] weakest = [.. Enumerable.Range(0, CapacityAh.Length).OrderBy(g => CapacityAh[g]).ThenBy(g => g).Take(count)];
        double[] capacityAh = [.. CapacityAh];
        double[]? ohms = ResistanceOhm is null ? null : [.. ResistanceOhm];
        foreach (int g in weakest)
        {
            capacityAh[g] = Robust.Median(CapacityAh);
            if (ohms is not null)
                ohms[g] = Robust.Median(ResistanceOhm!);
        }

        replaced = [.. weakest.Select(g => request.Groups[g].Number)];
        return new SeriesString
        {
            Curve = Curve,
            CapacityAh = capacityAh,
            StartFraction = All(TopFraction),
            CellOhm = ohms ?? new double[capacityAh.Length],
            LinkOhm = LinkOhm ?? 0,
        };
    }

    // A current that leaves half of the charge was none that a capacity is tested with: the figure is then taken as it stands.
    private const double MostLeft = 0.5;

    // A test at a current stopped while some charge was left: what the same cell holds at rest is more.
    private double AtRestAh(double testedAh, double? ohm)
    {
        if (request.TestCurrentA is not > 0 || ohm is null)
            return testedAh;
        double left = LoadedEnd(Curve, request.TestCurrentA.Value, ohm.Value, request.TestCutoffV ?? request.EndsAtV);
        return left > MostLeft ? testedAh : testedAh / (1 - left);
    }

    /// <summary>State of charge at which a group's loaded volts meet a cut-off; 1 when they begin below it.</summary>
    internal static double LoadedEnd(OpenCircuitCurve curve, double loadA, double ohm, double cutoffV)
    {
        double Above(double fraction) => curve.VoltsAt(fraction) - loadA * ohm * ResistanceLaw.AtCharge(fraction) - cutoffV;
        double low = Math.Min(0, curve.FractionAt(cutoffV)) - 0.001;
        double high = 1;
        if (Above(high) <= 0)
            return 1;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            if (Above(middle) > 0)
                high = middle;
            else
                low = middle;
        }

        return high;
    }
}
