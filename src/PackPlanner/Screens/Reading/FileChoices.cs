using PackPlanner.Formats.Tables;

namespace PackPlanner.Screens.Reading;

/// <summary>What the user said about how a file is to be read.</summary>
/// <param name="Path">The file.</param>
/// <param name="Shown">What it is called in the job; a pasted table has no file of its own.</param>
internal sealed record FileChoices(string Path, string Shown)
{
    /// <summary>auto, point or comma.</summary>
    internal string Decimal { get; init; } = "auto";

    /// <summary>auto, discharge or charge.</summary>
    internal string CurrentSign { get; init; } = "auto";

    /// <summary>What was said of single columns.</summary>
    internal IReadOnlyList<ColumnChoice> Columns { get; init; } = [];

    /// <summary>Labels that differ from those of the job in zeros, case or blanks alone are taken as those.</summary>
    internal bool AsInJob { get; init; }

    /// <summary>They were made for an earlier file of the same shape.</summary>
    internal bool Remembered { get; init; }

    /// <summary>The user has seen a reading of this file, so what was remembered counts no more by itself.</summary>
    internal bool Seen { get; init; }

    /// <summary>The line under the cursor, to stand there again after a new reading; -1 for accept.</summary>
    internal int Cursor { get; init; } = -1;

    /// <summary>Whether anything was said.</summary>
    internal bool Any => Decimal != "auto" || CurrentSign != "auto" || Columns.Count > 0;

    /// <summary>With another word on one column.</summary>
    internal FileChoices With(ColumnChoice choice) => this with
    {
        Columns = [.. Columns.Where(other => other.Name != choice.Name), choice],
        Remembered = false,
        Seen = true,
    };

    /// <summary>With nothing said of one column.</summary>
    internal FileChoices Without(string column) => this with { Columns = [.. Columns.Where(other => other.Name != column)], Remembered = false, Seen = true };

    /// <summary>As the readers take it.</summary>
    internal ReadOptions Into(ReadOptions options) => options with
    {
        Decimal = Decimal,
        CurrentSign = CurrentSign,
        Columns = new ColumnChoices(Columns, Remembered ? "you, before" : "you"),
    };
}
