using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;

namespace PackPlanner.Screens;

/// <summary>The invented jobs, as copies to change as one likes.</summary>
internal static class DemoStart
{
    internal static Outcome<JobHistory> Of(string name) => DemoJobs.Of(name);

    /// <summary>Where a copy opens, from 0: on the step that its scene is about.</summary>
    internal static int FirstStep(string name) => name switch { "trike" => 1, "tractor" => 6, _ => 3 };
}
