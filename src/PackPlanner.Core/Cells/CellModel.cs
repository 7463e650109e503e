using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>What a maker's data sheet says of a cell. Every figure that it does not give is null.</summary>
public sealed record CellModel
{
    /// <summary>Maker's designation.</summary>
    public required string Name { get; init; }

    /// <summary>The chemistry, null when the data sheet does not say.</summary>
    public Chemistry? Chemistry { get; init; }

    /// <summary>Rated capacity.</summary>
    public ElectricCharge? Rated { get; init; }

    /// <summary>Nominal voltage.</summary>
    public ElectricPotential? Nominal { get; init; }

    /// <summary>Highest charging voltage.</summary>
    public ElectricPotential? Full { get; init; }

    /// <summary>Lowest voltage under load.</summary>
    public ElectricPotential? Cutoff { get; init; }

    /// <summary>DC resistance, warm.</summary>
    public ElectricResistance? DcResistance { get; init; }

    /// <summary>Resistance at 1 kHz.</summary>
    public ElectricResistance? AcResistance { get; init; }

    /// <summary>Highest continuous discharge current.</summary>
    public ElectricCurrent? ContinuousDischarge { get; init; }

    /// <summary>Highest discharge current for seconds.</summary>
    public ElectricCurrent? PeakDischarge { get; init; }

    /// <summary>Highest charging current.</summary>
    public ElectricCurrent? HighestCharge { get; init; }

    /// <summary>Lowest cell temperature for charging.</summary>
    public Temperature? LowestCharging { get; init; }

    /// <summary>Mass of one cell.</summary>
    public Mass? Mass { get; init; }

    /// <summary>Outer form; null when not given.</summary>
    public FormFactor? Form { get; init; }
}
