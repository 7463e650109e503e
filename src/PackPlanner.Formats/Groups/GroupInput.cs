using PackPlanner.Core.Cells;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Groups;

/// <summary>What the verbs on groups were given: one JSON object, or rows of tables.</summary>
public sealed record GroupInput
{
    /// <summary>The object, when one JSON file was named; else null.</summary>
    public JsonInput? Case { get; private init; }

    /// <summary>Rows of the tables; empty for a JSON file.</summary>
    public IReadOnlyList<CellRow> Rows { get; private init; } = [];

    /// <summary>Rows read, used and set aside; null for a JSON file.</summary>
    public RowAccount? Account { get; private init; }

    /// <summary>How the tables were understood.</summary>
    public IReadOnlyList<string> Understood { get; private init; } = [];

    /// <summary>Opens what the user named.</summary>
    /// <param name="files">One JSON file, or tables; - is standard input.</param>
    /// <param name="standardInput">Opens standard input.</param>
    /// <returns>The input, or why it cannot be read.</returns>
    public static Outcome<GroupInput> Open(IReadOnlyList<string> files, Func<Stream> standardInput)
    {
        if (files.Count != 1)
            return Refusal.Input("not-json", string.Join(", ", files), "one JSON file was expected", "Name one case file.");
        if (!InputBytes.Read(files[0], standardInput).Is(out byte[]? bytes, out Refusal? why))
            return why;
        return JsonInput.Open(files[0] == "-" ? "-" : files[0], () => new MemoryStream(bytes)).Is(out JsonInput? input, out why)
            ? new GroupInput { Case = input }
            : why;
    }
}
