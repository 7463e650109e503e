using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Where the user was, in the file.</summary>
internal static class ViewParts
{
    internal static JsonObject Write(JobView view)
    {
        JsonObject node = new() { ["step"] = view.Step };
        JsonObject rows = [];
        foreach ((int step, int row) in view.Row)
            rows[step.ToString(CultureInfo.InvariantCulture)] = row;
        JsonObject choices = [];
        foreach ((string name, string choice) in view.Choices)
            choices[name] = choice;
        node["row"] = rows;
        node["choices"] = choices;
        return node;
    }

    // A view that cannot be read is no reason to refuse a job: the start is shown instead.
    internal static JobView Read(JsonInput? view)
    {
        if (view is null)
            return JobView.Start;
        ImmutableSortedDictionary<int, int>.Builder rows = ImmutableSortedDictionary.CreateBuilder<int, int>();
        JsonInput? row = view.Part("row");
        foreach (string step in row?.Names ?? [])
        {
            if (int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && row!.Whole(step, 0) is { } at)
                rows[number] = at;
        }

        ImmutableSortedDictionary<string, string>.Builder choices = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        JsonInput? chosen = view.Part("choices");
        foreach (string name in chosen?.Names ?? [])
        {
            if (chosen!.Text(name) is { } choice)
                choices[name] = choice;
        }

        return new JobView { Step = Math.Clamp(view.Whole("step") ?? 1, 1, 8), Row = rows.ToImmutable(), Choices = choices.ToImmutable() };
    }
}
