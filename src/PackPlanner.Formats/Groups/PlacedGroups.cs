using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Groups;

/// <summary>Groups of measured cells that are to be put into a cavity.</summary>
public sealed class PlacedGroups
{
    private readonly string file;
    private readonly string[][] groups;

    private PlacedGroups(string file, string[][] groups, IReadOnlyList<string> understood) => (this.file, this.groups, Understood) = (file, groups, understood);

    /// <summary>What was assumed in reading them, a sentence each.</summary>
    public IReadOnlyList<string> Understood { get; }

    /// <summary>Reads the groups.</summary>
    /// <param name="file">The JSON answer of match, or a table with cell and group.</param>
    /// <param name="options">How tables are read.</param>
    /// <returns>The groups 1..series, all of one size; or what is wrong with them.</returns>
    public static Outcome<PlacedGroups> Read(string file, ReadOptions options)
    {
        if (!GroupingFile.Read(file, options).Is(out GroupingRead? read, out Refusal? why))
            return why;
        var groups = read.Pairs.GroupBy(pair => pair.Group).OrderBy(group => group.Key).Select(group => (Number: group.Key, Cells: group.Select(pair => pair.Cell).ToArray())).ToArray();
        int gap = Array.FindIndex(groups, group => group.Number != Array.IndexOf(groups, group) + 1);
        if (gap >= 0)
            return Refusal.Input("groups-not-numbered", file, $"group {gap + 1} is missing, the next is {groups[gap].Number}", "Number the groups from 1 in series order.");
        var odd = groups.FirstOrDefault(group => group.Cells.Length != groups[0].Cells.Length);
        return odd.Cells is not null
            ? Refusal.Input("groups-differ", file, $"group {odd.Number} has {odd.Cells.Length} cells, group 1 has {groups[0].Cells.Length}", "Give all groups as many cells.")
            : new PlacedGroups(file, [.. groups.Select(group => group.Cells)], read.Understood);
    }

    /// <summary>The case with as many groups and cells in parallel as were named.</summary>
    /// <param name="fitCase">What the case says.</param>
    /// <param name="caseFile">Its file, for messages.</param>
    /// <returns>The case; refused when it asks for other numbers.</returns>
    public Outcome<FitCase> Asked(FitCase fitCase, string caseFile)
    {
        ArgumentNullException.ThrowIfNull(fitCase);
        int series = groups.Length, parallel = groups[0].Length;
        if ((fitCase.Series ?? series) != series || (fitCase.Parallel ?? parallel) != parallel)
            return Refusal.Input("groups-contradict-case", caseFile,
                $"pack asks for {fitCase.Series?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "any number"} in series and {fitCase.Parallel?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "any number"} in parallel, {file} holds {series} groups of {parallel}",
                $"Leave pack.series and pack.parallel out, or write {series} and {parallel}.");
        return fitCase with { Series = series, Parallel = parallel };
    }

    /// <summary>Which cell goes to which place: in the order of the file, from the back row to the front and from left to right.</summary>
    /// <param name="answer">The places.</param>
    /// <returns>Labels by the number of the place.</returns>
    public IReadOnlyDictionary<int, string> Labels(FitAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        Dictionary<int, string> labels = [];
        foreach (PlacedGroup group in answer.Groups)
        {
            foreach ((PlacedCell place, string label) in JobPlaces.ByHand(answer.Cells.Where(cell => cell.Group == group.Group)).Zip(groups[group.Group - 1]))
                labels[place.Cell] = label;
        }

        return labels;
    }
}
