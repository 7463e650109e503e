using System.Globalization;
using System.Text;
using System.Text.Json;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Faults;

/// <summary>A label can hold anything that a file can hold; it must do no harm where it is shown.</summary>
public sealed class HostileLabelsTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-hostile-").FullName;

    /// <summary>Labels: escapes of a terminal, markup, formulas, a turn of the writing direction, lines, length.</summary>
    public static TheoryData<string> Labels { get; } =
    [
        "\u001b[31mred\u001b[0m", "\u001b]0;title\u0007", "\u009b2J", "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "=1+cmd|' /C calc'!A0",
        "+1+1", "@SUM(A1)", "-2+3", "a\u202Eb", "\u2066x\u2069", "two\nlines", "tab\there", "{0}", "%s%n", "../../x", new string('W', 10_000),
    ];

    [Theory]
    [MemberData(nameof(Labels))]
    public void Words_hold_no_character_that_steers_a_terminal(string label)
    {
        string table = Table(label);
        foreach (string[] line in (string[][])[["look", table], ["cells", table], ["cells", table, "--plain"], ["match", table, "--series", "2", "--parallel", "2"], ["share", table, "--load", "10A", "--link", "0.2mohm"]])
        {
            (_, string output, string notes) = Planner.Run(line);
            Assert.DoesNotContain(output + notes, Steers);
        }
    }

    [Theory]
    [MemberData(nameof(Labels))]
    public void A_table_holds_no_field_that_a_spreadsheet_would_reckon(string label)
    {
        (_, string csv, _) = Planner.Run("cells", Table(label), "--csv");
        Assert.All(csv.Split('\n'), line => Assert.DoesNotMatch("^\"?[=@]|^\"?[+-][^0-9.]", line));
        Assert.DoesNotContain(csv.ReplaceLineEndings("\n").Replace('\t', ' '), Steers);
    }

    [Theory]
    [MemberData(nameof(Labels))]
    public void Json_is_one_document_and_never_raw_control_characters(string label)
    {
        (_, string json, _) = Planner.Run("cells", Table(label), "--json");
        using JsonDocument document = JsonDocument.Parse(json);
        Assert.Equal("packplanner/cells", document.RootElement.GetProperty("schema").GetString());
        Assert.DoesNotContain(json, c => c != '\n' && char.IsControl(c));
    }

    [Theory]
    [MemberData(nameof(Labels))]
    public void Sheets_show_the_label_and_run_nothing(string label)
    {
        string job = Path.Combine(folder, "x.job.json");
        Assert.Equal(0, Planner.Run("job", "new", job, "chemistry=NMC", "series=2", "parallel=2").ExitCode);
        (int added, string said, _) = Planner.Run("job", "add", job, Table(label));
        Assert.True(added == 0, said);
        string paper = Path.Combine(folder, "paper");
        (int made, said, _) = Planner.Run("sheet", job, "--into", paper, "--date", "2026-01-01");
        Assert.True(made == 0, said);
        Assert.DoesNotContain(said, Steers);
        foreach (string file in Directory.EnumerateFiles(paper, "*", SearchOption.AllDirectories))
        {
            string text = file.EndsWith(".png", StringComparison.Ordinal) ? "" : File.ReadAllText(file);
            Assert.DoesNotContain('\u001b', text);
            if (!file.EndsWith(".csv", StringComparison.Ordinal))
                Assert.DoesNotMatch("<script>alert|<img src=x", text);
            else
                Assert.All(text.Split('\n').SelectMany(line => line.Split(',', ';')), field => Assert.DoesNotMatch("^\"?[=@]", field));
        }

        Assert.All(Directory.EnumerateFileSystemEntries(folder), entry => Assert.Contains(Path.GetFileName(entry), (string[])["cells.csv", "x.job.json", "paper"]));
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static bool Steers(char c) =>
        c != '\n' && (char.IsControl(c) || c is '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069'));

    private string Table(string label)
    {
        StringBuilder text = new("label,chemistry,capacity_Ah,resistance_mOhm,rest_V\n");
        for (int i = 1; i <= 6; i++)
        {
            string name = i == 3 ? $"\"{label.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : $"T00{i}";
            text.Append(CultureInfo.InvariantCulture, $"{name},NMC,{4.40 + 0.01 * i},{32.0 + 0.1 * i},3.62\n");
        }

        string file = Path.Combine(folder, "cells.csv");
        File.WriteAllText(file, text.ToString());
        return file;
    }
}
