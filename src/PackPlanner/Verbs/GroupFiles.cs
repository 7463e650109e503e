using PackPlanner.Core.Cells;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;

namespace PackPlanner.Verbs;

/// <summary>Opens what a verb on groups was given: a JSON answer or case, or tables.</summary>
internal static class GroupFiles
{
    /// <summary>Opens the files with the options of this call.</summary>
    internal static Outcome<GroupInput> Open(VerbCall call, IReadOnlyList<string> files, Chemistry? chemistry) =>
        GroupInput.Open(files, call.ReadOptions() with { Chemistry = chemistry });
}
