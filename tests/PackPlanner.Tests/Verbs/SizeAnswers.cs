using System.Text.Json;

namespace PackPlanner.Tests.Verbs;

/// <summary>The answer of size to a case that is typed.</summary>
internal static class SizeAnswers
{
    internal static JsonElement DesignOf(string json) => Of(json).GetProperty("design");

    internal static JsonElement Of(string json)
    {
        using JsonDocument answer = JsonDocument.Parse(Planner.RunWithInput(json, "size", "-", "--json").Output);
        return answer.RootElement.Clone();
    }
}
