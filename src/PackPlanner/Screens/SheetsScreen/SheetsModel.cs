using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.SheetsScreen;

/// <summary>Step 8: the sheets for the bench, with ticks; w writes the ticked ones.</summary>
internal sealed class SheetsModel(Desk desk) : IStep
{
    private const string Question = "What do I take to the bench?";

    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "paper for the bench: pick list, placement, taps, links, rejects, first charge"),
        ("wants", "a job with cells, groups or a space; what is unknown stays an empty box"),
        ("verb", "packplanner sheet JOB writes the same"),
    ];

    private const int Beside = 62;
    private const int TwoPanes = 110;

    private int row;
    private (Sheet? Sheet, SheetInput? Input, IReadOnlyList<string> Lines) preview = (null, null, []);

    public string Name => "Sheets";

    public bool IsFilled => desk.Job is { SheetsTicked.IsEmpty: false };

    public StepPicture Picture => Say();

    public IReadOnlyList<KeyAction> Keys => desk.Job is null ? [] :
    [
        new(KeyBook.Mark, "tick", "ticks the sheet, or takes the tick away", () => Why(Current), () => Tick(Current)),
        new(KeyBook.Write, "write the ticked", "writes the ticked sheets as HTML, tables and pictures", () => Ticked().Count == 0 ? "no sheet is ticked" : null, AskWrite),
        new(KeyBook.Open, "preview", "shows what the sheet will say", () => Why(Current), () => desk.Show(new PageOverlay($"{Current.Name}: {Current.Title}{Points}", Preview()))),
        new(KeyBook.MarkAll, "all", "ticks every sheet that can be made, or none", TickAll),
    ];

    public string Place
    {
        get => row.ToString(CultureInfo.InvariantCulture);
        set => row = int.TryParse(value, CultureInfo.InvariantCulture, out int stored) ? Math.Clamp(stored, 0, SheetCatalogue.All.Count - 1) : 0;
    }

    private Sheet Current => SheetCatalogue.All[row];

    private SheetInput? Input => desk.Answers.SheetInput;

    public void Paint(Area body)
    {
        if (desk.Job is not { } job)
        {
            Teach.Paint(body, Teaching);
            return;
        }

        if (body.Width >= TwoPanes)
        {
            PaintPreview(body.Part(Beside, 0, body.Width - Beside, body.Height));
            body = body.Part(0, 0, Beside, body.Height);
        }

        PaintList(body, job);
    }

    private void PaintPreview(Area area)
    {
        area.Divide(0);
        IReadOnlyList<string> lines = Why(Current) is { } why ? [$"{Current.Name}: not yet", .. TextWidth.Wrap(Current.Title, area.Width - 3), "", .. TextWidth.Wrap(why, area.Width - 3)]
            : [.. Preview().SelectMany(line => PageOverlay.Within(area.Look.Of(line), area.Width - 3))];
        int shown = lines.Count > area.Height ? area.Height - 1 : lines.Count;
        for (int y = 0; y < shown; y++)
            area.Write(2, y, TextWidth.Cut(area.Look.Of(lines[y]), area.Width - 3), y == 0 ? Ink.Bold : Ink.Plain);
        if (lines.Count > shown)
            area.WriteRight(area.Height - 1, $" {shown} of {lines.Count} lines, Enter: all ");
    }

    private void PaintList(Area body, Job job)
    {
        for (int y = 0; y < SheetCatalogue.All.Count && y < body.Height; y++)
        {
            Sheet sheet = SheetCatalogue.All[y];
            int number = y;
            if (y == row)
            {
                body.Write(1, y, ">", Ink.Accent | Ink.Bold);
                body.Cursor(1, y);
            }

            string? why = Why(sheet);
            body.Write(3, y, job.SheetsTicked.Contains(sheet.Name) ? "[x]" : why is null ? "[ ]" : " - ");
            body.Write(7, y, sheet.Name, y == row ? Ink.Bold : Ink.Plain);
            body.Write(21, y, TextWidth.Cut(body.Look.Of(why is null ? sheet.Title : $"not yet: {why}"), body.Width - 22));
            body.OnClick(0, y, body.Width, () =>
            {
                if (row == number)
                    desk.Press(" ");
                row = number;
            });
        }

        if (body.Height > SheetCatalogue.All.Count + 1)
            body.Write(3, SheetCatalogue.All.Count + 1, TextWidth.CutMiddle(body.Look.Of($"written into {Folder()}"), body.Width - 4));
    }

    public bool Move(string key)
    {
        int last = SheetCatalogue.All.Count - 1;
        switch (key)
        {
            case "Up": row = Math.Max(0, row - 1); return true;
            case "Down": row = Math.Min(last, row + 1); return true;
            case "Home" or "PgUp": row = 0; return true;
            case "End" or "PgDn": row = last; return true;
            default: return false;
        }
    }

    public WhereFrom? WhereFrom() => desk.Job is null || Why(Current) is not null ? null : new WhereFrom($"the sheet {Current.Name}",
    [
        ("figures", "those of the steps as they stand now: verdicts of 2 Cells, groups of 3 Groups, places and taps of 5 Place, energy of 6 Energy, findings of 7 Log; = there tells each"),
        ("rev", $"{desk.Open!.History.Revision}: counts your changes of the pack, not ticks, and stands on every sheet, so that an older print is told from a newer one"),
        ("unknown", "stays an empty box to be filled in by hand, never a nought"),
    ]);

    public string? CopyText() => $"{Current.Name}: {Current.Title}";

    public MainTable Table() => new(
        ["sheet", "what", "ticked", "whyNot"],
        [.. SheetCatalogue.All.Select(sheet => new object?[] { sheet.Name, sheet.Title, desk.Job?.SheetsTicked.Contains(sheet.Name), Why(sheet) })]);

    private StepPicture Say()
    {
        if (desk.Job is null)
            return new StepPicture(Question, "No job is open, so there is nothing to print.", "1 Job: open or begin a job first");
        int ready = SheetCatalogue.All.Count(sheet => Why(sheet) is null);
        int ticked = Ticked().Count;
        string soFar = desk.IsWorking ? " so far, other steps are still at work" : "";
        string answer = $"{ready} of {SheetCatalogue.All.Count} sheets can be made{soFar}; {ticked} ticked. Every page carries job, rev {desk.Open!.History.Revision} and date.";
        string next = ticked > 0 ? ticked == 1 ? "w writes the sheet that is ticked" : $"w writes the {ticked} sheets that are ticked"
            : ready == 0 ? (desk.IsWorking ? "Wait a moment: other steps are still at work" : "2 Cells, 4 Cavity or 7 Log first")
            : Why(Current) is null ? "Space ticks a sheet; then w writes"
            : $"Go to the sheet {SheetCatalogue.All.First(sheet => Why(sheet) is null).Name} with the arrows, Space ticks it; then w writes";
        return new StepPicture(Question, answer, next) { Short = $"{ready} of {SheetCatalogue.All.Count} sheets can be made; {ticked} ticked." };
    }

    private string? Why(Sheet sheet) => Input is not { } input ? desk.Answers.WhyNoSheets ?? "it is being made"
        : sheet.WhyNot(input) is not { } why ? null
        : input.Layout is null && desk.Answers.IsLookingForPlaces ? "places are being looked for" : why;

    // The preview shows what the page will say, and pages carry a point whatever is set here; only the tables beside them take the comma.
    private string Points => desk.Look.DecimalComma ? "   (pages print a decimal point, their CSV a comma)" : "";

    private IReadOnlyList<string> Preview()
    {
        if (Input is not { } input)
            return [];
        if (preview.Sheet != Current || !ReferenceEquals(preview.Input, input))
            preview = (Current, input, SheetPreview.Lines(Current, input));
        return preview.Lines;
    }

    private IReadOnlyList<Sheet> Ticked() => desk.Job is { } job
        ? [.. SheetCatalogue.All.Where(sheet => job.SheetsTicked.Contains(sheet.Name) && Why(sheet) is null)]
        : [];

    private void Tick(Sheet sheet) => desk.Do(JobChanges.TickSheet(sheet.Name, !desk.Job!.SheetsTicked.Contains(sheet.Name)));

    private void TickAll()
    {
        string[] ready = [.. SheetCatalogue.All.Where(sheet => Why(sheet) is null).Select(sheet => sheet.Name)];
        bool all = ready.All(desk.Job!.SheetsTicked.Contains);
        desk.Do(new JobChange(all ? "take all ticks away" : "tick all sheets", job => job with { SheetsTicked = all ? job.SheetsTicked.Clear() : job.SheetsTicked.Union(ready) }));
    }

    private string Folder() => Path.Combine(
        Path.GetDirectoryName(desk.Open!.File) ?? "", Path.GetFileName(desk.Open.File).Replace(".job.json", "", StringComparison.Ordinal), "sheets");

    private void AskWrite()
    {
        string folder = Folder();
        string[] there = Directory.Exists(folder) ? [.. Ticked().Where(sheet => File.Exists(Path.Combine(folder, sheet.Name + ".html"))).Select(sheet => sheet.Name)] : [];
        if (there.Length == 0)
            Write(folder);
        else
            desk.Show(new ListOverlay(desk, $"{folder} has {string.Join(", ", there)} already", () =>
            [
                new("leave it as it is", "", () => desk.Says = "Nothing was written."),
                new("write over it", "", () => Write(folder)),
            ]));
    }

    private void Write(string folder)
    {
        if (Input is not { } input)
            return;
        IReadOnlyList<Sheet> ticked = Ticked();
        if (SheetFiles.Write(folder, SheetFiles.Of(input, ticked, desk.Look.DecimalComma)).Is(out IReadOnlyList<string>? files, out Refusal? why))
            desk.Says = $"{files.Count} files in {Path.Combine(Path.GetFileName(Path.GetDirectoryName(folder)!), "sheets")}.{(input.Job.IsDemo ? " For a job of your own press : and type \"new job\"" : "")}";
        else
            desk.Store.Tell(why);
    }
}
