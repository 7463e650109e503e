using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Screens.Reading;

/// <summary>A file that was read and waits to be accepted.</summary>
/// <param name="Question">What is asked: have I read your file right?</param>
/// <param name="Answer">One or two sentences on what was found.</param>
/// <param name="Kind">cells, tester-log or pack-log; empty for a document of ours.</param>
/// <param name="Columns">Each column and how it was read; empty for a document of ours.</param>
/// <param name="FirstValues">The first values of a column that was used, by its name.</param>
/// <param name="Account">What became of each row; null for a document of ours.</param>
/// <param name="Understood">What was understood and assumed.</param>
/// <param name="Take">The change that adds it.</param>
/// <param name="Step">Where to go after it was added, from 0.</param>
internal sealed record FileInHand(
    string Question,
    string Answer,
    string Kind,
    IReadOnlyList<ColumnReading> Columns,
    IReadOnlyDictionary<string, string> FirstValues,
    RowAccount? Account,
    IReadOnlyList<string> Understood,
    Func<Job, JobChange> Take,
    int Step)
{
    /// <summary>How many labels the job has in another spelling.</summary>
    internal int Spelt { get; init; }
}
