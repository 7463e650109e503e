using System.Globalization;
using System.Text.RegularExpressions;

namespace PackPlanner.Core.Cautions;

/// <summary>Cautions that many groups raise in the same words, but for the group and the figures, as one line; any other caution stands alone.</summary>
/// <param name="All">The cautions, in order; at least one.</param>
public sealed partial record AlikeCautions(IReadOnlyList<Caution> All)
{
    // Two are read as quickly as a line about them.
    private const int Fewest = 3;

    /// <summary>The first of them: code, signal word, why, do and do not are those of all.</summary>
    public Caution First => All[0];

    /// <summary>Where: of several how many groups.</summary>
    public string Where => All.Count == 1 ? First.Where : string.Create(CultureInfo.InvariantCulture, $"{All.Count} groups");

    /// <summary>What was seen, each figure from the least to the most.</summary>
    public string Saw => All.Count == 1 ? First.Saw : Merged();

    /// <summary>Puts cautions together.</summary>
    /// <param name="ordered">In order.</param>
    /// <returns>As they come; the cautions of several groups stand where the first of them stood.</returns>
    public static IReadOnlyList<AlikeCautions> Of(IReadOnlyList<Caution> ordered)
    {
        Dictionary<(string, SignalWord, string, string), Caution[]> many = ordered.Where(caution => OneGroup().IsMatch(caution.Where))
            .GroupBy(KeyOf).Where(alike => alike.Count() >= Fewest).ToDictionary(alike => alike.Key, alike => alike.ToArray());
        List<AlikeCautions> lines = [];
        foreach (Caution caution in ordered)
        {
            // Cells are looked at one by one.
            if (!OneGroup().IsMatch(caution.Where) || !many.TryGetValue(KeyOf(caution), out Caution[]? alike))
                lines.Add(new AlikeCautions([caution]));
            else if (ReferenceEquals(alike[0], caution))
                lines.Add(new AlikeCautions(alike));
        }

        return lines;
    }

    private static (string Code, SignalWord Signal, string Words, string Do) KeyOf(Caution caution) =>
        (caution.Code, caution.Signal, Figure().Replace(caution.Saw, "#"), caution.Do);

    private string Merged()
    {
        string[][] figures = [.. All.Select(caution => Figure().Matches(caution.Saw).Select(figure => figure.Value).ToArray())];
        int at = 0;
        return Figure().Replace(First.Saw, _ =>
        {
            string[] each = [.. figures.Select(of => of[at]).OrderBy(text => double.Parse(text, CultureInfo.InvariantCulture))];
            at++;
            return each[0] == each[^1] ? each[0] : $"{each[0]} to {each[^1]}";
        });
    }

    [GeneratedRegex("^group [0-9]+$")]
    private static partial Regex OneGroup();

    // A figure that stands alone: no part of a label, of a date or of a range.
    [GeneratedRegex(@"(?<![\w.,:/-])[0-9]+(?:\.[0-9]+)?(?![\w:/-])(?!\.[0-9])")]
    private static partial Regex Figure();
}
