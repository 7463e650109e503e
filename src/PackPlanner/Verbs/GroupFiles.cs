using System.CommandLine;
using PackPlanner.Core.Cells;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>Opens what a verb on groups was given: a JSON answer or case, or tables.</summary>
internal static class GroupFiles
{
    /// <summary>--rated-ah of the verbs that need it for nothing but units.</summary>
    internal static readonly Option<string?> RatedAh = new("--rated-ah") { Description = "capacity when new of what a row or log shows, such as 2.5Ah: tells Ah from mAh, and A from mA, where no unit is written" };

    /// <summary>--rated-ah as typed; null when not given or wrong.</summary>
    internal static double? RatedAhOf(VerbCall call)
    {
        double? rated = call.Quantity<ElectricCharge>(RatedAh, "a charge", "2.5Ah")?.AmpereHours;
        if (rated <= 0)
            call.Refuse(RatedAh.Name, $"{rated} Ah is no capacity", "Give the Ah of one cell, or of one group, when new.");
        return rated;
    }

    /// <summary>Opens the files with the options of this call.</summary>
    internal static Outcome<GroupInput> Open(VerbCall call, IReadOnlyList<string> files, Chemistry? chemistry, double? ratedAh) =>
        GroupInput.Open(files, call.ReadOptions() with { Chemistry = chemistry, RatedAh = ratedAh });
}
