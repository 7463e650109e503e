using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Sharing;

/// <summary>What happens on joining, and how to go about it.</summary>
/// <param name="Group">Number of the group, from 1.</param>
/// <param name="Cells">Each cell, in the order given.</param>
/// <param name="Order">Labels in the order of joining, without those that are not to be joined.</param>
/// <param name="WorstPair">The two cells that would drive most between them alone; null where no two can be compared.</param>
/// <param name="Cautions">Cautions 7 and 8.</param>
public sealed record JoinPlan(
    int Group, IReadOnlyList<JoinStep> Cells, IReadOnlyList<string> Order, JoinPair? WorstPair, IReadOnlyList<Caution> Cautions);

/// <summary>Two cells joined alone.</summary>
/// <param name="Giver">The fuller one.</param>
/// <param name="Receiver">The emptier one.</param>
/// <param name="InrushA">Amperes at the first instant.</param>
public sealed record JoinPair(string Giver, string Receiver, double InrushA);

/// <summary>One cell against the others.</summary>
public sealed record JoinStep
{
    /// <summary>What is written on it.</summary>
    public required string Label { get; init; }

    /// <summary>Amperes when it is joined to all the others, already in parallel; null when a reading is missing.</summary>
    public double? InrushA { get; init; }

    /// <summary>True when the current flows into it; null when unknown.</summary>
    public bool? Receives { get; init; }

    /// <summary>The current that its rating, or those of the others, allow; null when unknown.</summary>
    public double? LimitA { get; init; }

    /// <summary>Amperes when it is joined in the order of the plan; null for the first one and where unknown.</summary>
    public double? InOrderA { get; init; }

    /// <summary>It passes its limit on joining all others as they are: it has to be brought to their volts first.</summary>
    public bool IsLate => InrushA > LimitA;

    /// <summary>Volts to bring it to alone before joining; null where it is not to be charged or nothing is known.</summary>
    public double? BringToV { get; init; }

    /// <summary>Volts from where it rests to <see cref="BringToV"/>, above zero for charging; null where either is unknown.</summary>
    public double? BringByV { get; init; }

    /// <summary>True where it would take or give more than it may, and it is the one that lies off: it is brought to volts alone first.</summary>
    public bool IsBroughtAlone => InrushA > LimitA && Math.Abs(BringByV ?? 0) >= ReadingStepV;

    // What a bench meter's last digit on the sheet can tell.
    private const double ReadingStepV = 0.01;

    /// <summary>Resting volts between which it may be joined, within full and empty of its chemistry; null when the limit is unknown.</summary>
    public (double LowV, double HighV)? Within { get; init; }

    /// <summary>Volts that it may lie from the others to either side; null when the limit is unknown.</summary>
    public double? ApartV { get; init; }

    /// <summary>Resistor that would hold the current to the limit, ohms; 0 where none is needed; null when unknown.</summary>
    public double? ResistorOhm { get; init; }

    /// <summary>Hours through that resistor until it may be joined directly; null where the curve does not tell.</summary>
    public double? Hours { get; init; }

    /// <summary>Its place in the order, from 1; null where it is not to be joined.</summary>
    public int? Place { get; init; }

    /// <summary>Why it has no place: not-to-be-charged or no-resting-volts; null where it has one.</summary>
    public string? Reason { get; init; }
}
