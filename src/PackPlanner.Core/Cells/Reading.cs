using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>A figure, how well it repeats, and where it came from.</summary>
/// <typeparam name="TQuantity">The physical quantity.</typeparam>
/// <param name="Value">The figure itself.</param>
/// <param name="Spread">One standard deviation of a repeat; null when nobody knows.</param>
/// <param name="Standing">Measured, from a data sheet, or assumed.</param>
/// <param name="From">File and line, option, or source key: what the user is shown when he asks.</param>
public readonly record struct Reading<TQuantity>(TQuantity Value, TQuantity? Spread, Standing Standing, string From)
    where TQuantity : struct, IQuantity;
