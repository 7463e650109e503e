using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>demo --json</c> prints: the key figures of each part of a whole job on invented data.</summary>
public sealed record DemoAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/demo";

    /// <summary>trike, tractor or scooter.</summary>
    public required string Name { get; init; }

    /// <summary>The job's title.</summary>
    public required string Title { get; init; }

    /// <summary>Always true: nothing of it was measured.</summary>
    public bool Invented { get; } = true;

    /// <summary>Which cells may be used; null where the job has none.</summary>
    public DemoCellsJson? Cells { get; init; }

    /// <summary>The groups; null where the job has no cells.</summary>
    public DemoMatchJson? Match { get; init; }

    /// <summary>Where the cells go; null where the job has no cavity.</summary>
    public DemoFitJson? Fit { get; init; }

    /// <summary>The best choice of S and P; null where nothing was asked.</summary>
    public DemoSizeJson? Size { get; init; }

    /// <summary>What can be used; null where the job has no groups.</summary>
    public DemoEnergyJson? Energy { get; init; }

    /// <summary>What limits the pack; null where the job has no log.</summary>
    public DemoLogJson? Log { get; init; }

    /// <summary>The most useful next step.</summary>
    public required string Next { get; init; }

    /// <summary>Files written by --into.</summary>
    public IReadOnlyList<string> Files { get; init; } = [];
}

/// <summary>Verdicts.</summary>
/// <param name="Total">Cells.</param>
/// <param name="Use">May be used.</param>
/// <param name="Hold">Wait for a repeat.</param>
/// <param name="Reject">Are not used.</param>
/// <param name="MedianCapacityAh">Median over all cells with a usable figure.</param>
public sealed record DemoCellsJson(int Total, int Use, int Hold, int Reject, double? MedianCapacityAh);

/// <summary>Groups.</summary>
/// <param name="Series">Groups in series.</param>
/// <param name="Parallel">Cells in parallel.</param>
/// <param name="MinGroupAh">Smallest group.</param>
/// <param name="SpreadAh">Largest less smallest.</param>
/// <param name="MinGroupBoundAh">No grouping has a larger smallest group.</param>
/// <param name="ProvenOptimal">Whether that is proven.</param>
/// <param name="Spare">Usable cells that are left over.</param>
public sealed record DemoMatchJson(
    int Series, int Parallel, double MinGroupAh, double SpreadAh, double MinGroupBoundAh, bool ProvenOptimal, int Spare);

/// <summary>Places.</summary>
/// <param name="Fits">Whether what was asked fits.</param>
/// <param name="Series">Groups in series; null when none was asked.</param>
/// <param name="Parallel">Cells in parallel; null when no groups could be made.</param>
/// <param name="Places">Places found.</param>
/// <param name="Used">Cells that belong to a group.</param>
/// <param name="Bound">No layout holds more; null when no useful bound is known.</param>
/// <param name="CellMassKg">Mass of the cells used.</param>
public sealed record DemoFitJson(bool Fits, int? Series, int? Parallel, int Places, int Used, int? Bound, double? CellMassKg);

/// <summary>A choice of S and P.</summary>
/// <param name="Series">Groups in series.</param>
/// <param name="Parallel">Cells in parallel.</param>
/// <param name="Cell">Model.</param>
/// <param name="EnergyUsableWh">Usable energy.</param>
/// <param name="RangeKm">Range.</param>
/// <param name="PackMassKg">Mass of the pack.</param>
public sealed record DemoSizeJson(int Series, int? Parallel, string Cell, double? EnergyUsableWh, double? RangeKm, double? PackMassKg);

/// <summary>Energy.</summary>
/// <param name="NominalWh">On the label.</param>
/// <param name="UsableWh">At the controller.</param>
/// <param name="SpreadWh">Half the width of the 90 % range.</param>
/// <param name="RangeKm">At the stated use; null when no use is known.</param>
public sealed record DemoEnergyJson(double NominalWh, double UsableWh, double SpreadWh, double? RangeKm);

/// <summary>A log.</summary>
/// <param name="Rows">Rows used.</param>
/// <param name="Groups">Groups in the log.</param>
/// <param name="Findings">What was found, worst first.</param>
/// <param name="UsableAhNow">Usable charge now; null when it cannot be told.</param>
public sealed record DemoLogJson(int Rows, int Groups, IReadOnlyList<string> Findings, double? UsableAhNow);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(DemoAnswer))]
public sealed partial class DemoAnswerContext : JsonSerializerContext;
