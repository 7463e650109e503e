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
        foreach (SamplesSetAside lost in answer.SamplesSetAside ?? [])
            text.Append($"  {lost.Count} values of {OneLine.Of(lost.Column)} left out: {OneLine.Of(lost.Kind)}, first in line {lost.FirstLine}\n");
        foreach (string sentence in answer.Understood)
            text.Append("  ").Append(OneLine.Of(sentence)).Append('\n');
        foreach (CautionJson caution in answer.Cautions)
        {
            text.Append($"\n{caution.Signal} {caution.Code}, {OneLine.Of(caution.Where)}: {OneLine.Of(caution.Saw)}\n");
            text.Append($"  why     {caution.Why}\n  do      {OneLine.Of(caution.Do)}\n  do not  {caution.DoNot}\n");
        }

        return text.ToString();
    }
}
