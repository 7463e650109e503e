using System.Globalization;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Grouping;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>Step 5: which cell stands where and which way up, the links, and the sense taps with their volts.</summary>
internal sealed class PlaceModel(Desk desk) : IStep
{
    private const string Question = "Where does each cell go, which way up, and how are the groups linked?";
    private const int TwoPanes = 110;

    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "a drawing to build from: group and sign of each cell, links, sense taps with their volts"),
        ("wants", "a space with places (4 Cavity) and series; cells stand in it as soon as there are groups (3 Groups)"),
        ("without", "no space: a types the size of a cell, and the groups stand side by side in a plain block"),
    ];

    private readonly TapTable taps = new(desk);
    private int layer;
    private int row;
    private int column;
    private bool fromBelow;
    private bool onTaps;
    private int zoom;

    public string Name => "Place";

    public bool IsFilled => desk.Answers.Placed is not null;

    public StepPicture Picture => desk.Answers.Placed is { } pack ? Say(pack) : Waiting();

    public IReadOnlyList<KeyAction> Keys => desk.Answers.Placed is { } pack ? Known(pack)
        : desk.Job?.FitCase is null ? [PlainBlockAsk.Key(desk)] : [];

    public string Place
    {
        get => string.Create(CultureInfo.InvariantCulture, $"{layer} {row} {column} {taps.At} {(onTaps ? 1 : 0)} {zoom}");
        set
        {
            int[] kept = [.. value.Split(' ').Select(part => int.TryParse(part, CultureInfo.InvariantCulture, out int number) ? number : 0)];
            if (kept.Length >= 5)
                (layer, row, column, taps.At, onTaps) = (kept[0], kept[1], kept[2], kept[3], kept[4] == 1);
            zoom = kept.Length > 5 ? Math.Clamp(kept[5], PlaceDrawing.Farthest, PlaceDrawing.Nearest) : 0;
        }
    }

    public void Paint(Area body)
    {
        if (desk.Answers.Placed is not { } pack)
        {
            Teach.Paint(body, Teaching);
            return;
        }

        Keep(pack);
        if (body.Width >= TwoPanes)
        {
            int left = Math.Clamp(body.Width - 58, 60, 90);
            PaintDrawing(body.Part(0, 0, left - 1, body.Height), pack, focused: !onTaps);
            body.Divide(left);
            taps.Paint(body.Part(left + 1, 0, body.Width - left - 1, body.Height), pack, onTaps, () => onTaps = true);
        }
        else if (onTaps)
        {
            taps.Paint(body, pack, focused: true, () => onTaps = true);
        }
        else
        {
            PaintDrawing(body, pack, focused: true);
        }
    }

    public bool Move(string key)
    {
        if (desk.Answers.Placed is not { } pack)
            return false;
        Keep(pack);
        if (onTaps)
            return taps.Move(key, pack);
        IReadOnlyList<IReadOnlyList<PlacedCell>> rows = PlaceDrawing.Rows(pack.Layers[layer], fromBelow);
        switch (key)
        {
            case "Up": row = Math.Max(0, row - 1); return true;
            case "Down": row = Math.Min(rows.Count - 1, row + 1); return true;
            case "Left": column = Math.Max(0, Math.Min(column, rows[row].Count - 1) - 1); return true;
            case "Right": column = Math.Min(rows[row].Count - 1, column + 1); return true;
            case "Home": column = 0; return true;
            case "End": column = rows[row].Count - 1; return true;
            case "PgUp": layer = Math.Min(pack.Layers.Count - 1, layer + 1); return true;
            case "PgDn": layer = Math.Max(0, layer - 1); return true;
            default: return false;
        }
    }

    public WhereFrom? WhereFrom()
    {
        if (desk.Answers.Placed is not { } pack)
            return null;
        if (onTaps)
            return taps.WhereFrom(pack);
        PlacedCell cell = Under(pack);
        return new WhereFrom($"place {cell.Cell}",
        [
            ("middle", $"x {desk.Look.Length(cell.Centre.X)}, y {desk.Look.Length(cell.Centre.Y)}, z {desk.Look.Length(cell.Centre.Z)}"),
            ("group", pack.SeatOf(cell) is { } seat ? $"{seat} of {pack.Series}, counted from pack minus" : "a spare place: no cell is needed here"),
            ("rule", "cells of one group stand together, each group beside the next one, so that links are short"),
        ]);
    }

    public string? CopyText() => desk.Answers.Placed is { } pack ? PlaceWords.Of(pack, Under(pack), desk.Look) : null;

    public MainTable Table() => desk.Answers.Placed is { } pack
        ? new(
            ["place", "group", "cell", "xMm", "yMm", "zMm", "plusUp"],
            [.. pack.Answer.Cells.Select(cell => new object?[]
            {
                cell.Cell, pack.SeatOf(cell), pack.CellAt(cell)?.Label, cell.Centre.X, cell.Centre.Y, cell.Centre.Z, pack.IsPlusUp(cell),
            })])
        : MainTable.Empty;

    private StepPicture Waiting()
    {
        if (desk.Job is not { } job)
            return new StepPicture(Question, "No job is open.", "a: begin a job with a plain block; or 1 Job opens one");
        if (job.FitCase is null && !JobFit.IsAsked(job))
        {
            return job.Givens is { Series: not null, Parallel: not null }
                ? new StepPicture(Question, "There is no space to place cells in, and the size of a cell is not known for a plain block.", "a: type the size of a cell for a plain block, or 4 Cavity: describe the space")
                : new StepPicture(Question, "There is no space to place cells in yet, and no shape for a plain block.", "3 Groups, e: say series and parallel; or 4 Cavity: describe the space");
        }
        if (desk.Answers.Fit is not { } fit)
            return desk.Answers.WasStopped ? StepPicture.Stopped(Question, 5) : new StepPicture(Question, "Places are being looked for.", "Wait a moment, or go on: nothing is lost");
        return fit.Answer is { } answer
            ? new StepPicture(Question, answer.Series is null ? "How many groups stand in series is not known yet." : "It does not fit, so nothing can be placed.", answer.Series is null ? "4 Cavity, e: say series and parallel" : "4 Cavity: see what is in the way")
            : new StepPicture(Question, "The space cannot be read as it is described.", "4 Cavity says what is wrong with it");
    }

    private StepPicture Say(PlacedPack pack)
    {
        FitAnswer answer = pack.Answer;
        string links = answer.LinkPairs.Count == 0 ? ""
            : $" {pack.Series - 1} links, {(answer.Jumpers.Count == 0 ? "all between neighbours" : $"{answer.Jumpers.Count} of them by cable")}{(pack.Across.Count == 0 ? "" : $", {pack.Across.Count} from one side to the other")}, the narrowest over {answer.NarrowestLink} pair{(answer.NarrowestLink == 1 ? "" : "s")} of cells.";
        string cells = pack.HasGroups ? "" : desk.Answers.Groups is GroupingOutcome.Contradicts ? " The groups cannot be built as they stand: see 3 Groups."
            : desk.Answers.HasGroups ? " The groups are on their way." : " No cells yet: see 3 Groups.";
        int wrong = taps.Wrong(pack);
        string readings = wrong > 0 ? $"{wrong} tap reading{(wrong == 1 ? "" : "s")} outside: stop, do not plug in. "
            : taps.OfOthers(pack) is > 0 and { } old ? $"{old} tap reading{(old == 1 ? " is" : "s are")} of cells that have moved: measure again. " : "";
        string next = wrong > 0 ? "Find what is wrong at that tap before anything is plugged in"
            : onTaps ? "Enter types the reading of a tap; then 8 Sheets" : desk.Job!.Rows.Count == 0 ? $"Tab: the {pack.Series + 1} taps; 8 Sheets prints places only until there are cells"
            : $"Tab: the {pack.Series + 1} taps (where sense wires meet the pack); then 8 Sheets";
        string block = desk.Job!.FitCase is null ? "A plain block, no space is described: " : "";
        return new StepPicture(Question, $"{readings}{(pack.LeftOut is { } left ? left + " " : "")}{block}{answer.Used} cells in {pack.Layers.Count} layer{(pack.Layers.Count == 1 ? "" : "s")}, {pack.Series} groups.{links}{cells}", next, PlaceWords.Cautions(pack, desk.Job!))
        {
            Short = readings.Length > 0 ? readings : $"{(pack.LeftOut is null ? "" : "An exchange or turn no longer applies. ")}{(block.Length > 0 ? "Plain block: " : "")}{answer.Used} cells, {pack.Series} groups{(answer.Jumpers.Count > 0 ? $", {answer.Jumpers.Count} links by cable" : "")}.{cells}",
        };
    }

    private List<KeyAction> Known(PlacedPack pack) =>
    [
        new(KeyBook.NextPane, onTaps ? "drawing" : "taps", "goes between the drawing and the tap table", () => onTaps = !onTaps),
        .. onTaps ? [Enter(pack)] : pack.Layers.Count > 1 ? [new(KeyBook.Pages, "layer", "shows the layer above, or the one below", () => { })] : Array.Empty<KeyAction>(),
        new(KeyBook.OtherSide, fromBelow ? "from above" : "from below", "shows the other side, mirrored as it is when the pack is turned over", () => SeeOtherSide(pack)),
        new(KeyBook.ZoomIn, "nearer", "writes labels, then Ah, into the drawing",
            () => onTaps ? "the taps have the focus; Tab goes to the drawing" : zoom == PlaceDrawing.Nearest ? "it is as near as it gets" : null, () => zoom++),
        new(KeyBook.ZoomOut, "farther", "draws signs alone, so that more cells are seen at once",
            () => onTaps ? "the taps have the focus; Tab goes to the drawing" : zoom == PlaceDrawing.Farthest ? "it is as far as it gets" : null, () => zoom--),
        .. desk.Job!.FitCase is null ? [PlainBlockAsk.Key(desk)] : Array.Empty<KeyAction>(),
        new(KeyBook.Exchange, "exchange groups", "exchanges two matched groups between their places",
            () => !pack.HasGroups ? "there are no groups to exchange" : null, () => GroupsInPlace.AskExchange(desk, pack, pack.SeatOf(Under(pack)))),
        new(KeyBook.Turn, "turn the group", "turns the group under the cursor over, so that its other end faces you",
            () => onTaps ? "the taps have the focus; Tab goes to the drawing" : pack.SeatOf(Under(pack)) is null ? "the cursor stands on a spare place" : null, () => GroupsInPlace.Turn(desk, pack.SeatOf(Under(pack))!.Value)),
        new(KeyBook.Swap, "other end", "puts pack minus at the other end; every cell then stands the other way up",
            () => GroupsInPlace.SwapEnds(desk)),
        .. onTaps ? [] : new[] { Enter(pack) },
        new(KeyBook.Numbers, "links", "changes what is known of links and insulation",
            () => GivenField.Choose(desk, "numbers of this screen",
                ["linkMilliohm", "insulationOhm", "cellFuse", "clamping", "vents", .. desk.Job!.FitCase is null ? ["blockColumns", "cellGapMm"] : Array.Empty<string>()])),
        ConductorAsk.Key(desk),
    ];

    // With the taps in focus this is what one is here for, so it stands first.
    private KeyAction Enter(PlacedPack pack) => onTaps
        ? new(KeyBook.Open, "type a reading", "types what the meter shows at this tap; it is judged at once", () => taps.Type(pack))
        : new(KeyBook.Open, "open", "shows the place under the cursor", () => OpenPlace(pack));

    private void Keep(PlacedPack pack)
    {
        layer = Math.Clamp(layer, 0, pack.Layers.Count - 1);
        IReadOnlyList<IReadOnlyList<PlacedCell>> rows = PlaceDrawing.Rows(pack.Layers[layer], fromBelow);
        row = Math.Clamp(row, 0, rows.Count - 1);
        column = Math.Clamp(column, 0, rows[row].Count - 1);
        taps.Keep(pack);
    }

    // The cursor stays on its cell, which stands at the other hand then.
    private void SeeOtherSide(PlacedPack pack)
    {
        (int cell, fromBelow) = (Under(pack).Cell, !fromBelow);
        column = PlaceDrawing.Rows(pack.Layers[layer], fromBelow)[row].ToList().FindIndex(known => known.Cell == cell);
    }

    private PlacedCell Under(PlacedPack pack)
    {
        Keep(pack);
        return PlaceDrawing.Rows(pack.Layers[layer], fromBelow)[row][column];
    }

    private void PaintDrawing(Area area, PlacedPack pack, bool focused)
    {
        FitCase fitCase = desk.Answers.Fit!.Case!;
        int? seat = pack.SeatOf(Under(pack));
        int beside = PlaceDrawing.ColumnsWanted(pack.Layers[layer], zoom) + 2;
        IReadOnlyList<string> facts = area.Width - beside >= PlaceFacts.Width
            ? PlaceFacts.Lines(pack.Answer, fitCase, seat is { } here ? Matched(pack, here) : null, seat, desk.Look) : [];
        IReadOnlyList<string> side = PlaceSide.Lines(fitCase, pack, desk.Look, area.Width - 4);
        // The side view stands where the drawing and the figures leave room for it.
        int rows = Math.Max(facts.Count, PlaceDrawing.RowsWanted(pack.Layers[layer], zoom));
        IReadOnlyList<string> links = TextWidth.Wrap(area.Look.Of(PlaceWords.Links(pack, fromBelow)), area.Width - 2, Math.Clamp(area.Height - 2 - rows, 1, 4));
        int room = area.Height - 2 - links.Count;
        int below = room - rows >= side.Count ? side.Count : 0;
        string inView = PlaceDrawing.Paint(area.Part(0, 1, area.Width, room - below), pack, layer, fromBelow, (row, column), zoom, focused, desk.Look);
        PlaceHeading.Paint(area, pack, layer, fromBelow, inView);
        for (int i = 0; i < facts.Count && i < room - below; i++)
            area.Write(beside, 1 + i, facts[i]);
        for (int i = 0; i < below; i++)
            area.Write(2, 1 + room - below + i, side[i]);
        if (focused)
            area.Write(1, 1 + room, ">", Ink.Accent | Ink.Bold);
        area.Write(3, 1 + room, TextWidth.Cut(area.Look.Of(PlaceWords.Of(pack, Under(pack), desk.Look)), area.Width - 4));
        for (int i = 0; i < links.Count; i++)
            area.Write(1, 2 + room + i, links[i]);
    }

    private MatchedGroup? Matched(PlacedPack pack, int seat) =>
        desk.Answers.Groups is GroupingOutcome.Matched { Pack: { } matched } && pack.GroupOf(seat) is { } group
            ? matched.Groups.FirstOrDefault(known => known.Number == group.Number) : null;

    private void OpenPlace(PlacedPack pack)
    {
        if (WhereFrom() is { } from)
            desk.Show(new TextOverlay(PlaceWords.Of(pack, Under(pack), desk.Look), from.Lines));
    }
}
