using PackPlanner.Core.Cells;
using UnitsNet;

namespace PackPlanner.Core.Packs;

/// <summary>Groups in series with the links between them.</summary>
/// <param name="Chemistry">One chemistry for the whole pack; two are never joined.</param>
/// <param name="Groups">In series order from pack minus.</param>
/// <param name="Link">Resistance of each series link; null when unknown.</param>
public sealed record Pack(Chemistry Chemistry, IReadOnlyList<ParallelGroup> Groups, ElectricResistance? Link);
