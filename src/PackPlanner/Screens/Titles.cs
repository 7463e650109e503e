using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens;

/// <summary>The title row: which job, what pack, which revision, when it was saved.</summary>
internal static class Titles
{
    private const int MostOfATitle = 30;

    internal static string Of(Desk desk)
    {
        if (desk.Open is not { } open)
            return "PackPlanner";
        JobGivens givens = open.Now.Givens;
        // What the pack is and its revision stay in view, however long the name is.
        List<string> parts = [TextWidth.CutMiddle(open.Now.Title, MostOfATitle) + (open.Now.IsDemo ? " (demo copy)" : "")];
        if (givens.Series is { } series)
            parts.Add(givens.Parallel is { } parallel ? $"{series}s{parallel}p" : $"{series}s");
        if (givens.Chemistry is { } chemistry)
            parts.Add(givens.WordOf("cellModel") is not { } model ? chemistry.Name
                : model.Contains(chemistry.Name, StringComparison.OrdinalIgnoreCase) ? model : $"{chemistry.Name} {model}");
        parts.Add($"rev {open.History.Revision.ToString(CultureInfo.InvariantCulture)}");
        return string.Join(" · ", parts);
    }

    internal static string Saved(Desk desk) => desk.Open switch
    {
        null => "",
        { NotSaved: not null } => "NOT SAVED",
        { SavedAt: { } at } => $"saved {at.ToString("HH:mm", CultureInfo.InvariantCulture)}",
        _ => "opened",
    };
}
