namespace PackPlanner.Core.Fitting;

/// <summary>Cells in their places, before they are grouped.</summary>
/// <param name="Bodies">The cells.</param>
/// <param name="Kind">"hex", "square", "free" (relaxed), "slabs" (boxes) or "block".</param>
/// <param name="AngleRad">Direction of the rows of a regular nest; null when there are none.</param>
/// <param name="Regular">Whether a moulded holder would do: every layer one regular nest.</param>
internal sealed record Layout(IReadOnlyList<Body> Bodies, string Kind, double? AngleRad, bool Regular);
