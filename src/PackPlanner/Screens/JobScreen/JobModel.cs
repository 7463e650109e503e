using System.Globalization;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.JobScreen;

/// <summary>Step 1: the ways in while no job is open, then what the user knows about cells, pack and vehicle.</summary>
internal sealed class JobModel : IStep
{
    // Lines of a page of few rows.
    private const int Page = 8;

    private readonly Desk desk;
    private readonly WaysIn ways;
    private readonly RowCursor cursor = new();
    private int column;
    private int top;

    internal JobModel(Desk desk)
    {
        this.desk = desk;
        ways = new WaysIn(desk);
    }

    public string Name => "Job";

    public bool IsFilled => desk.Job is { } job && !job.Givens.Known.IsEmpty;

    public StepPicture Picture => desk.Job is { } job ? OfJob(job) : ways.Picture;

    public IReadOnlyList<KeyAction> Keys => desk.Job is null ? ways.Keys : FormKeys();

    public string Place
    {
        get => $"{column.ToString(CultureInfo.InvariantCulture)} {cursor.Place}";
        set
        {
            string[] halves = value.Split(' ', 2);
            column = int.TryParse(halves[0], CultureInfo.InvariantCulture, out int stored) ? Math.Max(0, stored) : 0;
            cursor.Place = halves.Length > 1 ? halves[1] : "";
        }
    }

    private IReadOnlyList<JobSource> Sources => desk.Job?.Sources ?? [];

    private int Rows => GivenRow.All.Count + Sources.Count;

    // A file that is taken out or comes back above another leaves the cursor on that other.
    private IEnumerable<string> Names => [.. GivenRow.All.Select(line => line.Keys[0]), .. Sources.Select(source => source.Id)];

    private int Row
    {
        get
        {
            cursor.Keep(Names);
            return cursor.Row;
        }
    }

    private GivenRow? Given => Row is var row && row < GivenRow.All.Count ? GivenRow.All[row] : null;

    private GivenEntry? Entry => Given?.Entries.ElementAt(Math.Min(column, Given.Keys.Count - 1));

    private JobSource? Source => Row is var row && row >= GivenRow.All.Count ? Sources[row - GivenRow.All.Count] : null;

    public void Paint(Area body)
    {
        if (desk.Job is not { } job)
        {
            ways.Paint(body);
            return;
        }

        int row = Row;
        int page = body.Height - 1;
        top = Math.Clamp(top, Math.Max(0, row - page + 1), Math.Max(0, Math.Min(row, Rows - page)));
        FormPainter.Headings(body);
        for (int line = 0; line < page && top + line < Rows; line++)
            PaintLine(body, line + 1, top + line, job);
        if (Rows > page)
            body.WriteRight(0, $"{top + 1}-{Math.Min(Rows, top + page)} of {Rows} ");
    }

    public bool Move(string key)
    {
        if (desk.Job is null)
            return ways.Move(key);
        int values = Given?.Keys.Count ?? 1;
        if (key is "Left" or "Right")
            column = Math.Clamp(Math.Min(column, values - 1) + (key == "Left" ? -1 : 1), 0, values - 1);
        else if (cursor.Move(key, Names, Page))
            column = 0;
        else
            return false;
        return true;
    }

    public WhereFrom? WhereFrom()
    {
        if (desk.Job is not { } job || Entry is not { } entry)
            return null;
        Given? given = job.Givens.Known.GetValueOrDefault(entry.Key);
        string value = GivenWords.Value(entry, job.Givens, desk.Look);
        List<(string, string)> lines = [];
        if (given is not null)
            lines.Add(("said by", GivenWords.Origin(given.From)));
        else if (GivenWords.FromChemistry(entry, job.Givens) is not null)
            lines.Add(("taken from", $"{job.Givens.Chemistry!.Name}: {job.Givens.Chemistry.Electrodes}; your data sheet may say otherwise, and then wins"));
        else
            lines.Add(("nobody", "has said it; unknown stays unknown"));
        lines.Add(("used for", $"without it: {entry.Without}"));
        return new WhereFrom($"{value} ({entry.What})", lines);
    }

    public string? CopyText() => desk.Job is { } job && Entry is { } entry
        ? $"{entry.What}: {GivenWords.Value(entry, job.Givens, desk.Look)}"
        : null;

    public MainTable Table() => new(
        ["what", "key", "value", "from"],
        [.. GivenCatalogue.All.Select(entry => new object?[]
        {
            entry.What, entry.Key, desk.Job is { } job ? GivenWords.Value(entry, job.Givens, new Look()) : "-",
            desk.Job?.Givens.Known.GetValueOrDefault(entry.Key) is { } given ? GivenWords.Origin(given.From) : "",
        })]);

    private StepPicture OfJob(Job job)
    {
        GivenRow[] first = [.. GivenRow.All.Where(line => line.IsFirst)];
        int known = first.Count(line => GivenWords.IsKnown(line, job.Givens));
        string file = desk.Open!.File;
        bool onlySpace = job is { FitCase: not null, Tables.IsEmpty: true, AddedRows.IsEmpty: true, Logs.IsEmpty: true };
        string next = onlySpace ? $"4 Cavity needs nothing more{OfCase()}{(job.Givens.Chemistry is null ? "; then the chemistry" : "")}"
            : job.Givens.Chemistry is null ? "Say the chemistry (Enter on its line), then how many in series"
            : job.Tables.IsEmpty && job.AddedRows.IsEmpty && job.Logs.IsEmpty && job.FitCase is null ? "Add a file: i (cell table, ride log or cavity), or go on by hand"
            : !job.Tables.IsEmpty ? "2 Cells needs nothing more" : "7 Log needs nothing more";
        return new StepPicture(
            "What should I know before I judge?",
            $"{known} of {first.Length} known. Unknown stays unknown: what hangs on it says not checked. Rev counts your changes. Kept in {file}",
            next,
            [.. JobCautions.Of(job.Givens)])
        { Short = $"{known} of {first.Length} known. What hangs on the rest says not checked." };
    }

    // A case may state what the form does not; read here, because asking the step for its answer would start the search.
    private string OfCase() => JobFit.Case(desk.Job!).Is(out FitCase? known, out _) && known.Series is { } series
        ? $" (its case says {series}s{(known.Parallel is { } parallel ? $"{parallel}p" : "")})" : "";

    private List<KeyAction> FormKeys()
    {
        List<KeyAction> keys = [];
        if (Entry is { Kind: GivenKind.YesNo } box)
            keys.Add(new(KeyBook.Mark, "tick", $"ticks {box.What}, then not there, then unknown", () => GivenField.Tick(desk, Entry!)));
        else if (Entry is { } entry)
            keys.Add(new(KeyBook.Open, "change", $"changes {entry.What}", () => GivenField.Ask(desk, Entry!.Key)));
        else if (Source is { } file)
            keys.Add(new(KeyBook.Open, "what was read", $"shows what was understood in {file.File}", () => ShowSource(file)));
        if (Given is { Keys.Count: > 1 })
            keys.Insert(0, new(KeyBook.LeftRight, "choose", "left and right choose the value on the line", () => { }));
        keys.Add(new(KeyBook.AddFile, "add a file", "adds a cell table, a log, a cavity or a grouping to this job", () => FileChooser.Ask(desk)));
        keys.Add(new(KeyBook.Delete, Source is null ? "" : "take out", "takes the file under the cursor out of the job",
            () => Source is null ? "the cursor stands on no file" : null,
            () => desk.Do(JobChanges.Remove(Source!))));
        return keys;
    }

    private void PaintLine(Area body, int y, int index, Job job)
    {
        bool here = index == cursor.Row;
        if (index < GivenRow.All.Count)
            FormPainter.Line(body, y, GivenRow.All[index], job.Givens, here ? column : null);
        else
            FormPainter.Source(body, y, Sources[index - GivenRow.All.Count], here);
        if (here)
            body.Cursor(1, y);
        body.OnClick(0, y, body.Width, () =>
        {
            if (Row == index)
                desk.Press(Entry is { Kind: GivenKind.YesNo } ? " " : "Enter");
            cursor.GoTo(index, Names);
        });
    }

    private void ShowSource(JobSource file) => desk.Show(new TextOverlay(
        $"{file.File}, as it was read",
        [("checksum", $"SHA-256 {file.Sha256}"), ("kind", FormPainter.Kind(file.Kind)), .. file.Understood.Select(line => ("read", line))]));
}
