using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>Labels too long for the drawing, said by what tells them apart: what all of them begin and end with is left out.</summary>
internal sealed class PlaceLabels
{
    private readonly int first;
    private readonly int last;

    /// <param name="labels">All labels of the pack.</param>
    internal PlaceLabels(IReadOnlyCollection<string> labels)
    {
        // Signs of two parts could be torn apart; such labels are cut in the middle as everywhere.
        if (labels.Count < 2 || labels.Any(label => !label.All(char.IsAscii)))
            return;
        string one = labels.First();
        int shortest = labels.Min(label => label.Length);
        while (first < shortest && labels.All(label => label[first] == one[first]))
            first++;
        while (last < shortest - first && labels.All(label => label[^(last + 1)] == one[^(last + 1)]))
            last++;
    }

    /// <summary>The label in at most so many columns.</summary>
    internal string Short(string label, int width)
    {
        if (TextWidth.Of(label) <= width || label.Length < first + last)
            return TextWidth.CutMiddle(label, width);
        string own = label[first..^last];
        (string before, string after) = (first > 0 ? "…" : "", last > 0 && TextWidth.Of(own) + 2 <= width ? "…" : "");
        return TextWidth.Of(before + own + after) <= width ? before + own + after : TextWidth.CutMiddle(own, width);
    }
}
