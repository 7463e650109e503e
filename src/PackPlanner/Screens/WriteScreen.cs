using System.Text;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>What w does: this screen's answer and table to a file, words or a table by the ending of its name.</summary>
internal static class WriteScreen
{
    internal static void Ask(Desk desk)
    {
        string folder = Path.GetDirectoryName(desk.Open!.File) ?? "";
        string name = Path.GetFileName(desk.Open.File).Replace(".job.json", "", StringComparison.Ordinal);
        string file = Path.Combine(folder, $"{name}-{desk.Step.Name.ToLowerInvariant()}.csv");
        desk.Show(new FieldOverlay(desk, "write to", ".csv writes the table, any other ending the answer in words.", file, path => WhyNot(Whole(path)) ?? WhyNoTable(desk, path), path => Take(desk, Whole(path))));
    }

    private static string Whole(string path) => Reading.TypedPath.Full(path, Environment.CurrentDirectory) ?? "";

    private static string? WhyNoTable(Desk desk, string path) => path.Trim().EndsWith(".csv", StringComparison.OrdinalIgnoreCase) && desk.Step.Table().Headings.Count == 0
        ? "This screen has no table yet; a name that ends in .txt writes its answer in words." : null;

    private static string? WhyNot(string path)
    {
        string trimmed = path.Trim();
        if (trimmed.Length == 0 || Directory.Exists(trimmed))
            return "Name a file, not a folder.";
        string? folder = Path.GetDirectoryName(Path.GetFullPath(trimmed));
        return folder is null || !Directory.Exists(folder) ? $"There is no folder {folder}." : null;
    }

    private static void Take(Desk desk, string path)
    {
        if (!File.Exists(path))
        {
            Write(desk, path);
            return;
        }

        // The one thing that undo cannot bring back, so it is asked for.
        desk.Show(new ListOverlay(desk, $"{path} exists", () =>
        [
            new("leave it as it is", "", () => desk.Says = "Nothing was written."),
            new("write over it", "", () => Write(desk, path)),
        ]));
    }

    private static void Write(Desk desk, string path)
    {
        try
        {
            WholeFile.Write(path, path.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)
                ? desk.Step.Table().ToCsv(desk.Look.DecimalComma)
                : Words(desk));
            desk.Says = $"written: {path}";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            desk.Says = $"{path} was not written: {OneLine.Of(fault.Message)} Name another place; nothing was changed.";
        }
    }

    private static string Words(Desk desk)
    {
        StepPicture picture = desk.Step.Picture;
        StringBuilder text = new();
        text.Append(desk.Title).Append("\n\n").Append(picture.Question).Append('\n').Append(picture.Answer).Append("\n\n");
        MainTable table = desk.Step.Table();
        text.Append(table.ToCsv(desk.Look.DecimalComma).Replace("\r\n", "\n", StringComparison.Ordinal)).Append('\n');
        text.Append("next: ").Append(picture.Next).Append('\n');
        foreach (Core.Cautions.Caution caution in Core.Cautions.Caution.InOrder(picture.Cautions))
        {
            text.Append($"\n{caution.Signal.ToString().ToUpperInvariant()} {caution.Code}, {caution.Where}: {caution.Saw}\n");
            text.Append($"  why     {caution.Entry.Why}\n  do      {caution.Do}\n  do not  {caution.Entry.DoNot}\n");
        }

        return desk.Look.Prose(text.ToString());
    }
}
