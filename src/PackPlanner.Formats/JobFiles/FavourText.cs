using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.JobFiles;

/// <summary>What groups favour, as files and command lines name it.</summary>
public static class FavourText
{
    private static readonly (GroupsFavour Favour, string Name)[] All =
    [
        (GroupsFavour.EqualAh, "equal-ah"),
        (GroupsFavour.EvenCurrents, "even-currents"),
        (GroupsFavour.FewestMoves, "fewest-moves"),
    ];

    /// <summary>All names.</summary>
    public static IEnumerable<string> Names => All.Select(one => one.Name);

    /// <summary>The name of one.</summary>
    /// <param name="favour">What comes first.</param>
    /// <returns>Its name.</returns>
    public static string Of(GroupsFavour favour) => All.First(one => one.Favour == favour).Name;

    /// <summary>Reads a name.</summary>
    /// <param name="name">As it stands in a file or command line.</param>
    /// <returns>What it means; null for any other word.</returns>
    public static GroupsFavour? Read(string name) => All.Where(one => one.Name == name).Select(one => (GroupsFavour?)one.Favour).FirstOrDefault();
}
