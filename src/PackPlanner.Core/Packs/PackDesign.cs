using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Packs;

/// <summary>How a pack is meant to be joined: S groups in series, P cells in parallel in each.</summary>
/// <param name="Series">Groups in series, at least 1.</param>
/// <param name="Parallel">Cells in parallel in each group, at least 1.</param>
/// <param name="Model">The cell; null when not chosen.</param>
public sealed record PackDesign(int Series, int Parallel, CellModel? Model)
{
    /// <summary>Cells that the design takes.</summary>
    public int Cells => checked(Series * Parallel);

    /// <summary>The usual way of writing it, for example 13s9p.</summary>
    public string Notation => $"{Series}s{Parallel}p";
}
