using System.Text;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>An answer for people: its own lines, what was understood and set aside, then its cautions.</summary>
public static class AnswerWords
{
    /// <summary>Puts the parts of an answer together.</summary>
    /// <param name="words">The verb's own lines.</param>
    /// <param name="answer">The answer, for what every answer carries.</param>
    /// <returns>Lines that end in a line feed.</returns>
    public static string Of(IReadOnlyList<string> words, Answer answer)
    {
        StringBuilder text = new();
        foreach (string line in words)
            text.Append(OneLine.Of(line)).Append('\n');
        if (answer.RowsRead is { } read)
            text.Append('\n').Append($"{read} rows read: {answer.RowsUsed} used, {read - answer.RowsUsed} set aside.\n");
        foreach (SetAsideCount aside in answer.RowsSetAsideCounts ?? [])
            text.Append($"  {aside.Count} x {OneLine.Of(aside.Reason)}, first in line {aside.FirstLine}\n");
        foreach (string line in LostSamples(answer.SamplesSetAside ?? []))
            text.Append("  ").Append(line).Append('\n');
        foreach (string sentence in answer.Understood)
            text.Append("  ").Append(OneLine.Of(sentence)).Append('\n');
        AddCautions(text, answer.Cautions);
        return text.ToString();
    }

    /// <summary>Columns that lost as many values for the same reason from the same line on stand in one line.</summary>
    private static IEnumerable<string> LostSamples(IReadOnlyList<SamplesSetAside> lost) => lost.GroupBy(l => (l.Count, l.Kind, l.FirstLine)).Select(alike =>
    {
        string[] columns = [.. alike.Select(l => OneLine.Of(l.Column))];
        string of = columns.Length == 1 ? $"of {columns[0]}" : columns.Length < 4 ? $"each of {string.Join(", ", columns)}" : $"in each of {columns.Length} columns, {columns[0]} to {columns[^1]},";
        return $"{alike.Key.Count} values {of} left out: {OneLine.Of(alike.Key.Kind)}, first in line {alike.Key.FirstLine}";
    });

    /// <summary>Cautions that ask for the same stand together, and what they ask for stands once.</summary>
    private static void AddCautions(StringBuilder text, IReadOnlyList<CautionJson> cautions)
    {
        for (int i = 0; i < cautions.Count; i++)
        {
            CautionJson caution = cautions[i];
            bool goesOn = i > 0 && Alike(cautions[i - 1], caution), last = i + 1 == cautions.Count || !Alike(caution, cautions[i + 1]);
            text.Append($"{(goesOn ? "" : "\n")}{caution.Signal} {caution.Code}, {OneLine.Of(caution.Where)}: {OneLine.Of(caution.Saw)}\n");
            if (last)
                text.Append($"  why     {caution.Why}\n  do      {OneLine.Of(caution.Do)}\n  do not  {caution.DoNot}\n");
        }
    }

    private static bool Alike(CautionJson one, CautionJson other) =>
        (one.Signal, one.Code, one.Why, one.Do, one.DoNot) == (other.Signal, other.Code, other.Why, other.Do, other.DoNot);
}
