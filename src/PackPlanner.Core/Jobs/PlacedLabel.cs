using PackPlanner.Core.Fitting;

namespace PackPlanner.Core.Jobs;

/// <summary>A place of the layout with the cell that goes there.</summary>
/// <param name="Place">The place.</param>
/// <param name="Position">Its group's position in the series, from 1 at pack minus; null for a spare place.</param>
/// <param name="Label">The cell; null for a spare place, or while no cells are grouped.</param>
/// <param name="PlusUp">True where the plus end faces up; null for a spare place, a cell that lies, and where a terminal face holds both poles.</param>
/// <param name="Turned">The user turned it over against the layout, so that its poles stand the other way.</param>
public sealed record PlacedLabel(PlacedCell Place, int? Position, string? Label, bool? PlusUp, bool Turned = false)
{
    /// <summary>Where the plus pole lies, of a box along its terminal face, of a lying round cell at which end: "+x", "-x", "+y" or "-y"; null for a cell that stands and a spare place.</summary>
    public string? PlusToward => Place is { Plus: [('+' or '-') and var sign, 'x' or 'y'] plus }
        ? Turned ? (sign == '+' ? "-" : "+") + plus[1] : plus
        : null;
}
