using PackPlanner.Core.Jobs;
using PackPlanner.Formats;

namespace PackPlanner.Screens;

/// <summary>The invented jobs, as copies to change as one likes.</summary>
internal static class DemoJobs
{
    internal static Outcome<JobHistory> Of(string name) =>
        Refusal.NoAnswer("no-demo", name, "the invented data are not in this build", "Give a file of your own.");

    internal static string FileName(string name) => name;

    internal static int FirstStep(string name) => name switch { "trike" => 1, "tractor" => 6, _ => 3 };
}
