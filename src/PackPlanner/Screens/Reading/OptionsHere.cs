namespace PackPlanner.Screens.Reading;

/// <summary>Where a screen takes what a sentence of the reader asks for by an option of the command line.</summary>
internal static class OptionsHere
{
    private static readonly (string Option, string Here)[] Places =
    [
        ("--column", "Enter on the line of a column"),
        ("--decimal", "a line below"),
        ("--current-sign", "a line below"),
        ("--rated-ah", "\"rated Ah\" in 1 Job"),
        ("--chemistry", "\"chemistry\" in 1 Job"),
        ("--series", "\"series\" in 1 Job"),
    ];

    /// <summary>One sentence for all options that the sentences name; none where they name none.</summary>
    internal static IEnumerable<string> Told(IEnumerable<string> sentences)
    {
        string all = string.Join('\n', sentences);
        string[] told = [.. Places.Where(place => all.Contains(place.Option, StringComparison.Ordinal)).Select(place => $"{place.Option} is {place.Here}")];
        return told.Length == 0 ? [] : [$"On this screen {string.Join("; ", told)}."];
    }
}
