using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Fitting;

/// <summary>Where the cells go, how they are linked, and what is left over.</summary>
public sealed record FitAnswer
{
    /// <summary>All places found, each keeping every rule.</summary>
    public required IReadOnlyList<PlacedCell> Cells { get; init; }

    /// <summary>Whether what was asked fits; if not, <see cref="Reasons"/> is not empty.</summary>
    public required bool Fits { get; init; }

    /// <summary>Groups in series; null when none was asked.</summary>
    public int? Series { get; init; }

    /// <summary>Cells in each group; null when no groups could be made.</summary>
    public int? Parallel { get; init; }

    /// <summary>Cells that belong to a group; all when no series was asked.</summary>
    public int Used { get; init; }

    /// <summary>Mass of the cells used, kilograms; null when the mass of a cell is not known.</summary>
    public double? CellMassKg { get; init; }

    /// <summary>Mass of the cells used and the weighed parts, kilograms; null when the mass of a cell is not known.</summary>
    public double? PackMassKg { get; init; }

    /// <summary>Centre of mass of the cells used and the weighed parts; null when it cannot be told.</summary>
    public PointMm? CentreOfMass { get; init; }

    /// <summary>Centre of mass of the cells used alone; null without cells.</summary>
    public PointMm? CellsCentreOfMass { get; init; }

    /// <summary>Volume of the bare bodies of all places, litres.</summary>
    public double UsedVolumeL { get; init; }

    /// <summary>Volume of the cavity less the keep-outs, litres.</summary>
    public double CavityVolumeL { get; init; }

    /// <summary>Free distance left to -x, +x, -y, +y, -z, +z beyond the clearances, millimetres; empty without cells.</summary>
    public IReadOnlyList<double> MarginMm { get; init; } = [];

    /// <summary>No layout holds more; null when no useful bound is known.</summary>
    public int? Bound { get; init; }

    /// <summary>How the bound was proved, in words.</summary>
    public required string BoundMethod { get; init; }

    /// <summary>True only when the count equals the bound.</summary>
    public bool Proven { get; init; }

    /// <summary>Kind of nest: hex, square, free, slabs, block or none.</summary>
    public required string NestKind { get; init; }

    /// <summary>Direction of the rows of a regular nest, degrees; null when there are none.</summary>
    public double? NestAngleDeg { get; init; }

    /// <summary>Places of the best regular nest, which a moulded holder needs; null for boxes.</summary>
    public int? RegularCount { get; init; }

    /// <summary>Places when the cells are free to lie anywhere; null when it was not looked for.</summary>
    public int? FreeCount { get; init; }

    /// <summary>The layout that was passed over where places and group size pull two ways; null when one layout has most of both.</summary>
    public OtherLayout? Other { get; init; }

    /// <summary>Fewest neighbouring pairs between two groups joined by a plate; null without links.</summary>
    public int? NarrowestLink { get; init; }

    /// <summary>Neighbouring pairs between each group and the next; shape [series - 1].</summary>
    public IReadOnlyList<int> LinkPairs { get; init; } = [];

    /// <summary>Length of the plates over the least possible; null without links.</summary>
    public double? BusbarRatio { get; init; }

    /// <summary>Links made by cable: the number of the group before each.</summary>
    public IReadOnlyList<int> Jumpers { get; init; } = [];

    /// <summary>The groups in series order.</summary>
    public IReadOnlyList<PlacedGroup> Groups { get; init; } = [];

    /// <summary>Where the sense leads go, from pack minus on; one more than there are groups.</summary>
    public IReadOnlyList<SenseTap> Taps { get; init; } = [];

    /// <summary>The pack divided into boxes; empty when it is built in one.</summary>
    public IReadOnlyList<PackBox> Boxes { get; init; } = [];

    /// <summary>What passes through each opening.</summary>
    public IReadOnlyList<WayIn> WaysIn { get; init; } = [];

    /// <summary>Why it does not fit; never empty when <see cref="Fits"/> is false.</summary>
    public required IReadOnlyList<FitReason> Reasons { get; init; }

    /// <summary>Cautions that this layout raises.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    /// <summary>True when the search was stopped before its own end.</summary>
    public bool Stopped { get; init; }

    /// <summary>True when only regular nests and quick slabs were looked at: a longer search may find more places and larger groups.</summary>
    public bool FirstLook { get; init; }
}
