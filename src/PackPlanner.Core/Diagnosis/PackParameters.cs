namespace PackPlanner.Core.Diagnosis;

/// <summary>Places of a group's parameters after <see cref="PackModel.GroupAt"/>, and their units.</summary>
internal static class PackParameters
{
    /// <summary>Natural logarithm of capacity over rated.</summary>
    internal const int LogCapacity = 0;

    /// <summary>State of charge at the first row.</summary>
    internal const int Charge = 1;

    /// <summary>Cells, in units of <see cref="PackModel.UnitOhm"/>.</summary>
    internal const int Cells = 2;

    /// <summary>Joint, in units of <see cref="PackModel.UnitOhm"/>.</summary>
    internal const int Joint = 3;

    /// <summary>First term of the group's own stretching of the curve, in units of a point of charge.</summary>
    internal const int Warp = 4;

    /// <summary>Terms of stretching: sines that vanish when full and when empty.</summary>
    internal const int Warps = 5;

    /// <summary>First term of the group's own bending of the curve, in units of a millivolt.</summary>
    internal const int Bend = Warp + Warps;

    /// <summary>Terms of bending.</summary>
    internal const int Bends = 3;

    /// <summary>Leak, in units of 1 mA for each 10 Ah rated.</summary>
    internal const int Leak = Bend + Bends;

    /// <summary>First bleed, in units of <see cref="Leak"/>.</summary>
    internal const int Bleed = Leak + 1;

    /// <summary>Amperes in one unit of leak.</summary>
    internal static double LeakUnitA(double ratedAh) => ratedAh * 1e-4;
}
