using System.Text.Json;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Runs a case through the command line and has the checker look at the answer.</summary>
internal static class FitRun
{
    /// <summary>The answer, after every rule was checked. Ten million steps are enough for small cases and keep the tests short.</summary>
    internal static (int ExitCode, JsonElement Answer) Checked(string caseJson, params string[] options)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(caseJson, ["fit", "-", "--json", .. options.Contains("--work") ? options : ["--work", "10", .. options]]);
        using JsonDocument document = JsonDocument.Parse(output);
        JsonElement answer = document.RootElement.Clone();
        Assert.Equal("packplanner/fit", answer.GetProperty("schema").GetString());
        Assert.Empty(PlacementChecker.Faults(caseJson, answer));
        return (exitCode, answer);
    }

    /// <summary>A case in a rectangular cavity for round cells standing along z.</summary>
    internal static string RoundCells(double x, double y, double z, double diameter, double length, string extra = "") => FormattableString.Invariant(
        $$"""
        {"cavity":{"parts":[{"box":[0,0,0,{{x}},{{y}},{{z}}]}]},
         "cell":{"name":"test","shape":"cylinder","diameterMm":{{diameter}},"lengthMm":{{length}},"massG":45,"axes":["z"]}{{extra}}}
        """);
}
