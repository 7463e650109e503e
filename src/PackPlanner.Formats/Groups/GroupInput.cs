using PackPlanner.Core.Cells;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Groups;

/// <summary>What the verbs on groups were given: one JSON object, or rows of tables.</summary>
public sealed record GroupInput
{
    /// <summary>The files as the user named them, for messages.</summary>
    public required string Name { get; init; }

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
    /// <param name="options">How to read tables, and standard input.</param>
    /// <returns>The input, or why it cannot be read.</returns>
    public static Outcome<GroupInput> Open(IReadOnlyList<string> files, ReadOptions options)
    {
        string name = string.Join(", ", files);
        Func<Stream>? standardInput = options.StandardInput;
        if (files.Contains("-") && standardInput is not null)
        {
            // Standard input can be read once only, and it is looked at twice.
            if (!InputBytes.Read("-", standardInput).Is(out byte[]? bytes, out Refusal? unread))
                return unread;
            standardInput = () => new MemoryStream(bytes);
        }

        bool[] json = [.. files.Select(file => JsonLook.IsJson(file, standardInput))];
        if (json.Contains(true) && files.Count > 1)
            return Refusal.Input("files-mixed", name, "a JSON file was named together with others", "Name one JSON file alone, or tables only.");
        if (json is [true])
            return JsonInput.Open(files[0], standardInput).Is(out JsonInput? input, out Refusal? why)
                ? new GroupInput { Name = name, Case = input }
                : why;
        ReadOptions again = options with { StandardInput = standardInput };
        if (files.Select(file => WhyNoTable(file, again)).FirstOrDefault(why => why is not null) is { } log)
            return log;
        return CellTables.Read(files, again).Is(out CellTableReading? reading, out Refusal? refused)
            ? new GroupInput { Name = name, Rows = reading.Rows, Account = reading.Account, Understood = reading.Understood }
            : refused;
    }

    // The rows of a log are moments; read as a table they would be groups by the thousand.
    private static Refusal? WhyNoTable(string file, ReadOptions options) => !FileLooks.KindOf(file, options).Is(out string? kind, out _) ? null : kind switch
    {
        "tester-log" => Refusal.Input("log-not-groups", file, "this is the log of a tester, of one cell; groups or cells with their figures were expected",
            "Count it first: packplanner cells LOG gives Ah and milliohm for a row of the table."),
        "pack-log" => Refusal.Input("log-not-groups", file, "this is the log of a pack; groups or cells with their figures were expected",
            "Diagnose it first: packplanner diagnose LOG --json --output pack.json, and give pack.json."),
        _ => null,
    };

    /// <summary>The one chemistry that the rows name.</summary>
    /// <param name="asked">The chemistry that the user named; wins over a silent table.</param>
    /// <returns>The chemistry, null when nobody names one; or a refusal where two are named.</returns>
    public Outcome<ChemistryFound> ChemistryOf(Chemistry? asked)
    {
        if (Case?.Raw("chemistry") is { ValueKind: System.Text.Json.JsonValueKind.String } named)
            return Agreed(asked, [named.GetString()!]);
        return Agreed(asked, [.. Rows.Where(row => row.Chemistry is not null).Select(row => row.Chemistry!).Distinct()]);
    }

    private Outcome<ChemistryFound> Agreed(Chemistry? asked, string[] named)
    {
        string? unknown = named.FirstOrDefault(name => Chemistries.Find(name) is null);
        if (unknown is not null)
            return Refusal.Input("unknown-chemistry", Name, $"\"{unknown}\" is not a chemistry that is known here", ChemistryNames.Remedy(unknown));
        Chemistry[] found = [.. named.Select(name => Chemistries.Find(name)!).Concat(asked is null ? [] : [asked]).Distinct()];
        return found.Length > 1
            ? Refusal.Input("two-chemistries", Name, $"two chemistries are named: {string.Join(" and ", found.Select(chemistry => chemistry.Name))}",
                "They never belong into one pack: work on each by itself. (caution-06)")
            : new ChemistryFound(found.FirstOrDefault());
    }
}

/// <summary>A chemistry, or none.</summary>
/// <param name="Chemistry">Null when nobody names one.</param>
public sealed record ChemistryFound(Chemistry? Chemistry);
