using System.Globalization;
using System.Text.Json.Nodes;
using PackPlanner.Core.Fitting;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>Step 4: what goes into the space, drawn to scale, with what is left over or in the way.</summary>
internal sealed class CavityModel(Desk desk) : IStep
{
    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "how many cells fit, how they stand, what is left over, and why not more"),
        ("wants", "the inside size in mm, what must stay free, and the cell: a types them, i takes a case file"),
        ("without", "a sorter needs no space: 5 Place stands the groups side by side in a plain block"),
        ("verb", "packplanner fit CASE.json counts as the full search, with --quick as the first look; size NEED.json compares S, P, cells"),
    ];

    private readonly CavityList list = new(desk);
    private readonly TriedCount tried = new(desk);
    private int layer;
    private FloorView view;
    private bool onDrawing;
    private FitCase? draft;
    private (string? Text, FitCase? Case, IReadOnlyList<CasePart> Parts) typed = (null, null, []);
    private (double Width, double Depth) drawn;

    public string Name => "Cavity";

    public bool IsFilled => desk.Job?.FitCase is not null;

    public StepPicture Picture => CavityWords.Say(desk);

    public IReadOnlyList<KeyAction> Keys => CavityKeys.Of(desk, this);

    public string Place
    {
        get => string.Create(CultureInfo.InvariantCulture, $"{layer} {view.Zoom} {view.AcrossMm:0} {view.BackMm:0} {(onDrawing ? 1 : 0)} {list.Place}");
        set
        {
            string[] parts = value.Split(' ', 6);
            int[] kept = [.. parts.Take(5).Select(part => int.TryParse(part, CultureInfo.InvariantCulture, out int number) ? number : 0)];
            layer = Math.Max(0, kept[0]);
            if (parts.Length == 6)
                (view, onDrawing, list.Place) = (new FloorView(Math.Clamp(kept[1], 0, FloorView.Nearest), kept[2], kept[3]), kept[4] == 1, parts[5]);
        }
    }

    /// <summary>Whether arrows move the drawing rather than the list.</summary>
    internal bool IsOnDrawing => onDrawing;

    internal FloorView View => view;

    /// <summary>Layers of cells, one above the other; 0 while there are none.</summary>
    internal int LayerCount => desk.Job?.FitCase is not null && desk.Answers.Fit?.Answer is { } answer ? FloorDrawing.Layers(answer).Count : 0;

    /// <summary>The groups of the full search, under the cursor, where they are larger than those of the first look; null elsewhere.</summary>
    internal int? LargerUnder => !onDrawing && list.Under(Typed().Parts).Word == CavityFacts.FullSearch ? CavityWords.Larger(desk) : null;

    /// <summary>The part under the cursor; null on a line of the answer.</summary>
    internal CasePart? Under => !onDrawing && desk.Job?.FitCase is not null ? list.Under(Typed().Parts).Part : null;

    /// <summary>Stays on the part under the cursor while the answer comes and goes above it.</summary>
    internal void Hold() => list.Hold(Typed().Parts);

    public void Paint(Area body)
    {
        if (desk.Overlay is not FieldOverlay)
            Draft(null, null);
        FitAnswer? answer = desk.Job?.FitCase is null || draft is not null ? null : desk.Answers.Fit is { } known ? known.Answer : desk.Answers.FirstLook;
        if ((draft ?? Typed().Case) is not { } shown)
        {
            // A case that cannot be read can be mended part by part all the same.
            if (Typed().Parts.Count > 0)
                PaintList(body);
            else
                Teach.Paint(body, Teaching);
            return;
        }

        int left = Math.Max(30, body.Width - 40);
        KeepView(shown);
        IReadOnlyList<IReadOnlyList<PlacedCell>> layers = answer is not null ? FloorDrawing.Layers(answer) : [];
        layer = Math.Clamp(layer, 0, Math.Max(0, layers.Count - 1));
        bool drawn = FloorDrawing.Paint(body.Part(1, 1, left - 3, body.Height - 1), shown, layers.Count > 0 ? layers[layer] : [], draft is null ? view : default);
        string[] headings = [.. (drawn ? Headings(shown, layers.Count, body.Look) : ["cells too small to draw here; Tab, z nearer", "too small to draw; z nearer"]).Select(body.Look.Of)];
        body.Write(1, 0, TextWidth.Cut(headings.FirstOrDefault(heading => TextWidth.Of(heading) <= left - 4) ?? headings[^1], left - 4), onDrawing ? Ink.Bold : Ink.Plain);
        PaintList(body.Part(left - 2, 0, body.Width - left + 2, body.Height));
        if (onDrawing)
            body.Cursor(1, 0);
    }

    public bool Move(string key)
    {
        if (desk.Job?.FitCase is null)
            return false;
        switch (key)
        {
            case "PgUp": layer++; return true;
            case "PgDn": layer = Math.Max(0, layer - 1); return true;
            case "Up" or "Down" or "Left" or "Right" when onDrawing:
                if (Typed().Case is { } fitCase)
                    Pan(fitCase, key);
                return true;
            default: return list.Move(key, Typed().Parts);
        }
    }

    public WhereFrom? WhereFrom() => desk.Answers.Fit is { Case: not null, Answer: { } answer }
        ? CavityWhereFrom.Of(answer, desk.Answers.MostPlaces, list.Under(Typed().Parts), desk.Look)
        : null;

    public string? CopyText() => desk.Answers.Fit?.Answer is { } answer ? CavityWords.Copied(desk, answer, desk.Answers.MostPlaces) : null;

    public MainTable Table() => desk.Answers.Fit?.Answer is { } answer ? FitWords.Table(answer) : MainTable.Empty;

    internal void NextPane() => onDrawing = !onDrawing;

    internal void Zoom(bool nearer) => view = nearer ? view.Nearer : view.Farther;

    /// <summary>Takes the case as it is being typed, and the words it is told apart by.</summary>
    internal void Draft(FitCase? made, string? text)
    {
        draft = made;
        tried.Try(made, text);
    }

    private void Pan(FitCase fitCase, string key)
    {
        SightLines sight = new(fitCase);
        ((double lowX, double highX), (double lowY, double highY)) = (sight.Extent(Axis.X), sight.Extent(Axis.Y));
        if (view.Zoom == 0)
        {
            desk.Says = "All of it is shown; z goes nearer, then the arrows move the view.";
            return;
        }

        const double Share = 0.25;
        view = view.Moved(key switch { "Left" => -Share, "Right" => Share, _ => 0 }, key switch { "Down" => -Share, "Up" => Share, _ => 0 }, highX - lowX, highY - lowY);
    }

    // Nearness to one space means nothing in another.
    private void KeepView(FitCase shown)
    {
        SightLines sight = new(shown);
        ((double lowX, double highX), (double lowY, double highY)) = (sight.Extent(Axis.X), sight.Extent(Axis.Y));
        if (draft is null && drawn != default && drawn != (highX - lowX, highY - lowY))
            view = default;
        if (draft is null)
            drawn = (highX - lowX, highY - lowY);
    }

    private void PaintList(Area area) => list.Paint(area, Typed().Parts, !onDrawing, () => onDrawing = false);

    // Said shorter where there is less room.
    private string[] Headings(FitCase shown, int layers, Look look)
    {
        SightLines sight = new(shown);
        ((double lowX, double highX), (double lowY, double highY)) = (sight.Extent(Axis.X), sight.Extent(Axis.Y));
        string size = $"{look.Bare(highX - lowX, 0)} x {look.Length(highY - lowY, 0)}";
        string keepOut = shown.KeepOuts.Count > KeepOutsOutside.Of(shown).Count ? "; # keep-out" : "";
        if (draft is not null)
            return [$"as typed{tried.Words}, from above, {size}{keepOut}", $"as typed{tried.Words}, {size}{keepOut}"];
        string which = layers > 1 ? $"layer {layer + 1} of {layers}, " : "";
        string near = view.Zoom > 0 ? $", {1 << view.Zoom} times" : "";
        return [$"{which}from above, {size}{near}{keepOut}", $"{which}{size}{near}{keepOut}", $"{which}{size}{near}"];
    }

    // The case as it stands in the job, which can be drawn before places have been found in it.
    private (FitCase? Case, IReadOnlyList<CasePart> Parts) Typed()
    {
        string? text = desk.Job?.FitCase?.Text;
        if (!ReferenceEquals(typed.Text, text))
        {
            FitCase? known = text is not null && JobFit.Case(desk.Job!).Is(out FitCase? read, out _) ? read : null;
            IReadOnlyList<int> outside = known is null ? [] : KeepOutsOutside.Of(known);
            typed = (text, known, desk.Job is { } job && TypedCase.Of(job) is JsonObject parts
                ? [.. CasePart.Of(parts).Select(part => part with { IsOutside = part.Kind == CasePartKind.KeepOut && outside.Contains(part.Index) })] : []);
        }

        return (typed.Case, typed.Parts);
    }
}
