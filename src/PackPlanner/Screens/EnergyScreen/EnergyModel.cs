using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.EnergyScreen;

/// <summary>Step 6: from the label to what reaches the controller, every loss named, and what each remedy would give.</summary>
internal sealed class EnergyModel(Desk desk) : IStep
{
    private static readonly string[] Asked = ["steadyA", "controllerLowV", "controllerHighV", "whPerKm", "temperatureDegC", "reserve", "linkMilliohm", "leadsMilliohm", "jointMilliohm", "ratedAh", "nominalV", "fullV", "emptyV", "cellDischargeA", "chargerA", "chargeTemperatureDegC", "peakA", "peakS", "cellMassKg", "cableM", "capacitanceMillifarad", "insulationOhm"];

    // Enough for ends within some per cent of the half width; the command line takes any number.
    private const int MostDraws = 10_000;
    private const int Seed = 1;

    private (StringFigures? Of, EnergyDraws? Draws) drawn;
    // Lines of a page of few rows, since some go on below.
    private const int Page = 8;

    private StringFigures? former;
    private readonly RowCursor cursor = new();
    private int top;

    public string Name => "Energy";

    public bool IsFilled => Answered() is not null;

    public StepPicture Picture => Answered() is { } known ? EnergyPicture.Of(known, desk.Job!.Givens, desk.Look) : EnergyPicture.Waiting(desk, Shown() is not null);

    public IReadOnlyList<KeyAction> Keys =>
    [
        new(KeyBook.Numbers, "load, limits", "changes the load, the controller's volts, Wh per km, temperature, reserve, cable and capacitors",
            () => desk.Job is null ? "no job is open; 1 Job opens one" : null, () => GivenField.Choose(desk, "numbers of this screen", Asked)),
        new(KeyBook.Remedy, "remedies", "shows what balancing and new groups would give, and which one change matters most", () => Answered() is null ? "nothing is counted yet" : null, ShowRemedies),
        new(KeyBook.HowSure, "how sure", "draws every reading ten thousand times and rides each pack; Esc stops it with what is done",
            () => Answered() is null ? "nothing is counted yet" : null, DrawReadings),
        ConductorAsk.Key(desk),
        new(KeyBook.Open, "explain", "explains the line under the cursor", () => WhereFrom() is null ? "no line is under the cursor" : null, Explain),
    ];

    public string Place
    {
        get => cursor.Place;
        set => cursor.Place = value;
    }

    public void Paint(Area body)
    {
        if (Shown() is not { } known)
        {
            Teach.Paint(body, EnergyPicture.Teaching);
            return;
        }

        // Draws of a pack that has changed since are nobody's answer.
        if (drawn.Of is not null && !ReferenceEquals(drawn.Of, known))
        {
            desk.Aside.Stop(this);
            drawn = default;
        }

        int width = body.Width >= 110 ? 76 : body.Width;
        PaintList(body.Part(0, 0, width, body.Height), Lines(known));
        if (body.Width < 110)
            return;
        body.Divide(width);
        PaintRemedies(body.Part(width + 2, 0, body.Width - width - 2, body.Height), known);
    }

    public bool Move(string key) => Shown() is { } known && cursor.Move(key, Names(Lines(known)), Page);

    public WhereFrom? WhereFrom() => Answered() is { } known ? EnergyLines.WhereFrom(known, Under(known), desk.Answers.LoadedOfLog, desk.Look) : null;

    public string? CopyText()
    {
        if (Answered() is not { } known)
            return null;
        EnergyLine line = Under(known);
        return $"{line.Name}: {line.Says} {line.Figure}".TrimEnd();
    }

    public MainTable Table() => Answered() is { } known
        ? new(
            ["name", "wh"],
            [["on the label", known.Budget.NominalWh], .. known.Budget.Losses.Select(loss => new object?[] { loss.Name, loss.Wh }), ["usable", known.Budget.UsableWh]])
        : MainTable.Empty;

    private StringFigures? Answered() => desk.Answers.Energy is { } known ? former = known : null;

    // Figures from before stay on the screen while they are counted anew, or what they rest on is.
    private StringFigures? Shown() => Answered() ?? (desk.Answers.IsEnergyOnItsWay ? former : null);

    // Losses, draws and volts come and go above a line; who reads it stays on it.
    private static IEnumerable<string> Names(IReadOnlyList<EnergyLine> lines) => lines.Select(line => line.Key);

    private EnergyLine Under(StringFigures known)
    {
        IReadOnlyList<EnergyLine> lines = Lines(known);
        cursor.Keep(Names(lines));
        return lines[cursor.Row];
    }

    private IReadOnlyList<EnergyLine> Lines(StringFigures known) =>
        EnergyLines.Of(known, ReferenceEquals(drawn.Of, known) ? drawn.Draws : null, desk.Answers.LoadedOfLog, desk.Job!.Givens, desk.Look);

    private void DrawReadings()
    {
        if (Answered() is not { } known)
            return;
        drawn = (known, null);
        desk.Aside.Start(this, "drawing readings", work =>
        {
            EnergyDraws? draws = EnergyDraws.Of(known.Request, MostDraws, Seed, new ToldSparingly<int>(done =>
            {
                work.Best = $"{done} of {MostDraws}";
                desk.Around.Back(desk.Around.Redraw);
            }), work.Stopped);
            return () =>
            {
                drawn = (known, draws);
                if (draws is null)
                    desk.Says = "Stopped before the first hundred draws: nothing can be said from them.";
            };
        });
    }

    // The list itself takes every row, so that what adds up stands together; the edge says that there is more.
    private void PaintList(Area list, IReadOnlyList<EnergyLine> lines)
    {
        cursor.Keep(Names(lines));
        int row = cursor.Row;
        (int Line, bool IsFirst, string Says)[] rows = [.. lines.SelectMany((line, index) =>
            Wrapped(list, line).Select((part, i) => (index, i == 0, part)))];
        (int first, int last) = (Array.FindIndex(rows, shown => shown.Line == row), Array.FindLastIndex(rows, shown => shown.Line == row));
        int page = Math.Min(rows.Length, list.Height);
        top = Math.Clamp(top, Math.Max(0, Math.Min(last - page + 1, first)), Math.Max(0, Math.Min(first, rows.Length - page)));
        for (int y = 0; y < page; y++)
            PaintRow(list, y, rows[top + y].Line, lines, rows[top + y].IsFirst, rows[top + y].Says);
        if (top > 0 && first != top)
            list.Write(1, 0, list.Look.Of("▴"), Ink.Accent);
        if (top + page < rows.Length && first != top + page - 1)
            list.Write(1, page - 1, list.Look.Of("▾"), Ink.Accent);
    }

    // A name that is long leaves less for where its figure comes from, and a figure of none leaves more.
    private static IReadOnlyList<string> Wrapped(Area area, EnergyLine line)
    {
        int room = area.Width - SaysAt(area, line) - (line.Figure.Length > 0 ? 13 : 1);
        return TextWidth.Wrap(area.Look.Of(line.Says), room) is { Count: > 0 } parts ? parts : [""];
    }

    private static int SaysAt(Area area, EnergyLine line) => Math.Max(35, 5 + TextWidth.Of(area.Look.Of(line.Name)));

    private void PaintRow(Area area, int y, int index, IReadOnlyList<EnergyLine> lines, bool isFirst, string says)
    {
        EnergyLine line = lines[index];
        if (isFirst && index == cursor.Row)
        {
            area.Write(1, y, ">", Ink.Accent | Ink.Bold);
            area.Cursor(1, y);
        }

        area.Write(SaysAt(area, line), y, says);
        area.OnClick(0, y, area.Width, () => cursor.GoTo(index, Names(lines)));
        if (!isFirst)
            return;
        Ink ink = line.IsTotal ? Ink.Bold : Ink.Plain;
        area.Write(3, y, area.Look.Of(line.Name), ink);
        if (line.Figure.Length > 0)
            area.Write(area.Width - 12, y, TextWidth.Fit(line.Figure, 11, right: true), ink);
    }

    private static void PaintRemedies(Area area, StringFigures known)
    {
        int y = 0;
        area.Write(0, y++, "what a remedy would give", Ink.Bold);
        foreach ((string what, string gives) in EnergyLines.Remedies(known.Budget, area.Look))
            y = PaintGain(area, y, what, gives);

        y++;
        area.Write(0, y++, "what one change would give or take", Ink.Bold);
        foreach ((string what, string gives) in EnergyLines.Changes(known.Budget, area.Look))
            y = PaintGain(area, y, what, gives);

        y++;
        foreach (NotChecked open in known.Open)
        {
            foreach (string part in TextWidth.Wrap(area.Look.Of($"not checked: {open.Why}"), area.Width - 1))
                area.Write(0, y++, part);
        }
    }

    // A name of which the end is cut can mean the opposite.
    private static int PaintGain(Area area, int y, string what, string gives)
    {
        area.WriteRight(y, gives);
        foreach (string part in TextWidth.Wrap(area.Look.Of(what), area.Width - 12))
            area.Write(0, y++, part);
        return y;
    }

    private void ShowRemedies()
    {
        if (Answered() is { } known)
            desk.Show(new TextOverlay(
                "what each remedy would give, and what matters most",
                [
                    .. EnergyLines.Remedies(known.Budget, desk.Look).Select(remedy => (remedy.Says, remedy.Word)), ("", ""), ("", "what one change would give or take, the largest first:"),
                    .. EnergyLines.Changes(known.Budget, desk.Look).Select(change => (change.Says, change.Word)),
                ]));
    }

    private void Explain()
    {
        if (WhereFrom() is { } from)
            desk.Show(new TextOverlay($"{from.Title}", from.Lines));
    }
}
