using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>What holds for every cell of one chemistry until its own data sheet says otherwise.</summary>
public sealed record Chemistry
{
    /// <summary>Short trade name: LFP, NMC, NCA, LCO, LMO, LTO.</summary>
    public required string Name { get; init; }

    /// <summary>The electrodes in words.</summary>
    public required string Electrodes { get; init; }

    /// <summary>Voltage that the trade prints on the label.</summary>
    public required Reading<ElectricPotential> Nominal { get; init; }

    /// <summary>Highest charging voltage.</summary>
    public required Reading<ElectricPotential> Full { get; init; }

    /// <summary>Lowest voltage under load.</summary>
    public required Reading<ElectricPotential> Cutoff { get; init; }

    /// <summary>A cell that rests below this is not to be charged again.</summary>
    public required Reading<ElectricPotential> DoNotRecharge { get; init; }

    /// <summary>Lowest cell temperature for charging; null where only the data sheet can say.</summary>
    public Temperature? LowestCharging { get; init; }

    /// <summary>True where the negative electrode is graphite: lithium plates on it in the cold, and copper dissolves when it is emptied too far.</summary>
    public required bool HasGraphiteAnode { get; init; }

    /// <summary>True where a resting voltage between the ends tells little about charge.</summary>
    public required bool HasFlatCurve { get; init; }

    /// <summary>Resting voltage against charge.</summary>
    public required OpenCircuitCurve Curve { get; init; }

    /// <summary>Voltages that no reading of such a cell can have: below is a lost sample or a dead cell.</summary>
    public required (double LowestV, double HighestV) Physics { get; init; }

    /// <summary><see cref="Nominal"/> in volts.</summary>
    public double NominalV => Nominal.Value.Volts;

    /// <summary><see cref="Full"/> in volts.</summary>
    public double FullV => Full.Value.Volts;

    /// <summary>Volts above full from which caution 3 is raised. Common practice, no source.</summary>
    public const double OverFullV = 0.05;

    /// <summary><see cref="Cutoff"/> in volts.</summary>
    public double CutoffV => Cutoff.Value.Volts;

    /// <summary><see cref="DoNotRecharge"/> in volts.</summary>
    public double DoNotRechargeV => DoNotRecharge.Value.Volts;

    /// <inheritdoc/>
    public override string ToString() => Name;
}
