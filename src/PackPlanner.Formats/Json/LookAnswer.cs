using System.Text.Json.Serialization;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>look --json</c> prints.</summary>
/// <param name="Files">One for each file.</param>
public sealed record LookAnswer(IReadOnlyList<LookFile> Files) : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/look";

    /// <summary>The answer for files that were looked at.</summary>
    /// <param name="looks">In the order of the files.</param>
    /// <returns>With the account of all rows.</returns>
    public static LookAnswer From(IReadOnlyList<FileLook> looks) => RowAccount.Together(looks.Select(look => look.Account)).Fill(
        new LookAnswer([.. looks.Select(look => LookFile.From(look.Shape))])
        {
            Understood = [.. looks.SelectMany(look => looks.Count > 1 ? look.Understood.Select(sentence => $"{look.Shape.File}: {sentence}") : look.Understood)],
        });
}

/// <summary>How one file was read.</summary>
/// <param name="File">As the user named it.</param>
/// <param name="Kind">cells, tester-log, pack-log or unknown.</param>
/// <param name="Layout">wide, long or steps.</param>
/// <param name="Delimiter">A comma, semicolon or bar as itself, or tab.</param>
/// <param name="DecimalMark">point or comma.</param>
/// <param name="Encoding">The text's encoding.</param>
/// <param name="HeadingLine">Line of the heading; null where there is none.</param>
/// <param name="Columns">From the left.</param>
/// <param name="CurrentSign">discharge-positive, charge-positive, unsigned or null.</param>
/// <param name="Groups">Series groups of a pack log; null else.</param>
/// <param name="Rows">Rows used.</param>
/// <param name="Gaps">Times without rows.</param>
public sealed record LookFile(
    string File, string Kind, string Layout, string Delimiter, string DecimalMark, string Encoding, int? HeadingLine,
    IReadOnlyList<LookColumn> Columns, string? CurrentSign, int? Groups, int Rows, IReadOnlyList<LookGap> Gaps)
{
    internal static LookFile From(FileShape shape) => new(
        shape.File, shape.Kind, shape.Layout, shape.Separator, shape.DecimalMark, shape.Encoding, shape.HeadingLine,
        [.. shape.Columns.Select(column => new LookColumn(column.Name, column.ReadAs, column.Unit, column.SetBy))],
        shape.CurrentSign, shape.Groups, shape.Rows, [.. shape.Gaps.Select(gap => new LookGap(gap.AtTimeS, gap.Seconds))]);
}

/// <summary>How one column was read.</summary>
/// <param name="Name">The heading.</param>
/// <param name="ReadAs">What it was read as.</param>
/// <param name="Unit">Its unit in the file.</param>
/// <param name="SetBy">Why.</param>
public sealed record LookColumn(string Name, string ReadAs, string? Unit, string SetBy);

/// <summary>A time without rows.</summary>
/// <param name="AtTimeS">Seconds from the start to the last row before it.</param>
/// <param name="Seconds">How long it lasted.</param>
public sealed record LookGap(double AtTimeS, double Seconds);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(LookAnswer))]
public sealed partial class LookAnswerContext : JsonSerializerContext;
