namespace PackPlanner.Core.Fitting;

/// <summary>What passes through one opening.</summary>
/// <param name="Opening">Its name.</param>
/// <param name="PackPasses">Whether the finished block of cells passes as it stands.</param>
/// <param name="CellPasses">Whether a single cell passes, turned as need be.</param>
/// <param name="PackShortMm">How much the opening is too small for the block, the worse direction; null when it passes.</param>
/// <param name="OrderIn">Numbers of the cells, the one furthest from the opening first; empty when no cell passes.</param>
/// <param name="TerminalRoomMm">Smallest free distance before a terminal or cell end on the side of the opening; null when not known.</param>
/// <param name="Text">The same in words.</param>
public sealed record WayIn(
    string Opening, bool PackPasses, bool CellPasses, double? PackShortMm, IReadOnlyList<int> OrderIn, double? TerminalRoomMm, string Text);
