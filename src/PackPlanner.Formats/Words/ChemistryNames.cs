using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Words;

/// <summary>What to do about a chemistry that is not known here.</summary>
public static class ChemistryNames
{
    /// <summary>Names the nearest one and all of them.</summary>
    /// <param name="typed">What was written.</param>
    /// <returns>A sentence or two.</returns>
    public static string Remedy(string typed)
    {
        string[] known = [.. Chemistries.All.Select(chemistry => chemistry.Name)];
        string near = NearestName.Of(typed, known);
        return (NearestName.IsNear(typed, near) ? $"Did you mean {near}? " : "") + $"Use one of {string.Join(", ", known)}.";
    }
}
