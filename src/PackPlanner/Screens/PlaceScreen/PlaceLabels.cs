using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>Labels too long for the drawing, which would look alike when cut in the middle, said by what tells them apart.</summary>
/// <param name="labels">All labels of the pack.</param>
internal sealed class PlaceLabels(IReadOnlyCollection<string> labels)
{
    private readonly Dictionary<int, ILookup<string, string>> alike = [];

    /// <summary>The label in at most so many columns: its first sign, then what labels that begin like it do not share.</summary>
    internal string Short(string label, int width)
    {
        // Signs of two parts could be torn apart; such labels are cut in the middle as everywhere.
        if (TextWidth.Of(label) <= width || !label.All(char.IsAscii))
            return TextWidth.CutMiddle(label, width);
        if (!alike.TryGetValue(width, out ILookup<string, string>? begun))
            alike[width] = begun = labels.Where(known => known.Length > width && known.All(char.IsAscii)).Distinct().ToLookup(known => known[..(width / 2)]);
        string[] same = [.. begun[label[..(width / 2)]]];
        if (same.Length < 2)
            return TextWidth.CutMiddle(label, width);
        (int first, int last) = Shared(same);
        return $"{label[0]}…{TextWidth.CutMiddle(label[first..^last], width - 2)}";
    }

    // How many signs all of them begin with, and end with.
    private static (int First, int Last) Shared(string[] same)
    {
        (int first, int last, int shortest) = (0, 0, same.Min(label => label.Length));
        while (first < shortest && same.All(label => label[first] == same[0][first]))
            first++;
        while (last < shortest - first && same.All(label => label[^(last + 1)] == same[0][^(last + 1)]))
            last++;
        return (first, last);
    }
}
