using System.Globalization;
using PackPlanner.Core.Fitting;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>Step 4: what goes into the space, drawn to scale, with what is left over or in the way.</summary>
internal sealed class CavityModel(Desk desk) : IStep
{
    private const string Question = "What goes into this space?";

    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "how many cells fit, how they stand, what is left over, and why not more"),
        ("wants", "the inside size in mm, what must stay free, and the cell: a types them, i takes a case file"),
        ("verb", "packplanner fit CASE.json answers the same; size NEED.json compares choices of S, P and cell"),
    ];

    private int layer;
    private int top;

    public string Name => "Cavity";

    public bool IsFilled => desk.Job?.FitCase is not null;

    public StepPicture Picture => Say();

    public IReadOnlyList<KeyAction> Keys => CavityKeys.Of(desk);

    public string Place
    {
        get => layer.ToString(CultureInfo.InvariantCulture);
        set => layer = int.TryParse(value, CultureInfo.InvariantCulture, out int stored) ? Math.Max(0, stored) : 0;
    }

    public void Paint(Area body)
    {
        if (desk.Answers.Fit is not { Case: { } fitCase, Answer: { } answer })
        {
            Teach.Paint(body, Teaching);
            return;
        }

        int layers = FloorDrawing.Layers(answer).Count;
        layer = Math.Clamp(layer, 0, Math.Max(0, layers - 1));
        int left = Math.Max(30, body.Width - 42);
        body.Write(1, 0, TextWidth.Cut(body.Look.Of($"floor from above{(layers > 1 ? $", layer {layer + 1} of {layers}" : "")}; o used  · spare{(fitCase.KeepOuts.Count > 0 ? "  # must stay free" : "")}"), left - 2));
        FloorDrawing.Paint(body.Part(1, 1, left - 2, body.Height - 1), fitCase, answer, layer);
        List<(string Word, string Says)> facts = Wrapped(CavityFacts.Of(fitCase, answer, body.Look), body.Width - left - 13, body.Look);
        top = Math.Clamp(top, 0, Math.Max(0, facts.Count - body.Height));
        for (int y = 0; y < body.Height && top + y < facts.Count; y++)
        {
            body.Write(left, y, facts[top + y].Word, Ink.Bold);
            body.Write(left + 12, y, facts[top + y].Says);
        }

        body.Cursor(left, 0);
    }

    public bool Move(string key)
    {
        if (desk.Answers.Fit?.Answer is null)
            return false;
        switch (key)
        {
            case "PgUp": layer++; return true;
            case "PgDn": layer = Math.Max(0, layer - 1); return true;
            case "Up": top = Math.Max(0, top - 1); return true;
            case "Down": top++; return true;
            default: return false;
        }
    }

    public WhereFrom? WhereFrom() => desk.Answers.Fit is { Case: not null, Answer: { } answer }
        ? new WhereFrom($"{answer.Cells.Count} places",
        [
            ("searched", $"regular nests at every angle and offset; best: {answer.NestKind}"),
            ("limit", answer.Bound is { } bound ? $"no layout holds more than {bound}: {answer.BoundMethod}" : "no useful limit could be proven"),
            ("more", "packplanner fit CASE.json looks longer: cells free to lie anywhere"),
        ])
        : null;

    public string? CopyText() => desk.Answers.Fit?.Answer is { } answer ? $"{answer.Cells.Count} places, {answer.Used} used" : null;

    public MainTable Table() => desk.Answers.Fit?.Answer is { } answer ? FitWords.Table(answer) : MainTable.Empty;

    private StepPicture Say()
    {
        if (desk.Job is null)
            return new StepPicture(Question, "No job is open.", "1 Job: open or begin a job first");
        if (desk.Answers.Fit is not { } known)
        {
            return desk.Job.FitCase is null
                ? new StepPicture(Question, "No space is described yet.", "a: type its inside size, or i: add a case file")
                : new StepPicture(Question, "Places are being looked for.", "Esc stops the search");
        }

        if (known.Answer is not { } answer)
            return new StepPicture(Question, $"{known.WhyNot!.Problem.Where}: {known.WhyNot.Problem.Why}.", known.WhyNot.Problem.Remedy);
        string count = answer.Bound is { } bound ? $"{answer.Cells.Count} places (proven limit {bound})" : $"{answer.Cells.Count} places";
        if (!answer.Fits)
        {
            FitReason reason = answer.Reasons[0];
            return new StepPicture(Question, $"{count}, but it does not fit: {reason.Text}", reason.Change ?? "a: change the space, or e: another shape", answer.Cautions);
        }

        string used = answer.Series is { } s ? $"; {s}s{answer.Parallel}p takes {answer.Used}, {answer.Cells.Count - answer.Used} left over" : "";
        string weight = answer.CellMassKg is { } kg ? $" The cells weigh {desk.Look.Mass(kg)}." : "";
        return new StepPicture(Question, $"{count}{used}.{weight}", answer.Series is null ? "e: say series and parallel, then 5 Place" : "5 Place: which cell goes where", answer.Cautions);
    }

    private static List<(string Word, string Says)> Wrapped(IReadOnlyList<(string Word, string Says)> facts, int width, Look look) =>
        [.. facts.SelectMany(fact => TextWidth.Wrap(look.Of(fact.Says), Math.Max(10, width)).Select((part, i) => (i == 0 ? fact.Word : "", part)))];
}
