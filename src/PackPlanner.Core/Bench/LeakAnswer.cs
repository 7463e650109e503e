namespace PackPlanner.Core.Bench;

/// <summary>Whether resting volts can tell how much charge a cell loses.</summary>
public enum LeakAnswer
{
    /// <summary>They can; the figure stands with its spread.</summary>
    Told,

    /// <summary>Not yet: the readings lie too close together, or the cell was still settling.</summary>
    TooEarly,

    /// <summary>Cannot tell: the meter shows too few digits for this time.</summary>
    CoarseMeter,

    /// <summary>Cannot tell: at this charge the resting volts hardly move with charge.</summary>
    FlatCurve,

    /// <summary>Cannot tell: the volts rose, so the cell was charged in between or still recovering from a discharge.</summary>
    Rose,

    /// <summary>Cannot be turned into charge: the chemistry is unknown.</summary>
    NoCurve,
}
