using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.JobScreen;

/// <summary>First start: three ways in, jobs there are, invented data.</summary>
internal sealed class WaysIn(Desk desk)
{
    private static readonly string[] Scenes = ["trike", "tractor", "scooter"];

    private int row = 4;
    private int scene;

    internal StepPicture Picture => new(
        "What are you doing today?",
        "Nothing is open. Pick a line, or name files: packplanner cells mine.csv",
        row switch
        {
            0 => "Enter: name the job, then give its table",
            1 => "Enter: name the job, then give its log",
            2 => "Enter: name the job, then type or add its space",
            3 => desk.Store.Recent().Count == 0 ? "No job yet: pick another line" : "Enter: choose one of your jobs",
            _ => $"New here? Enter: a copy of the {Scenes[scene]} to change",
        })
    { Short = "Nothing is open. Pick a line." };

    internal IReadOnlyList<KeyAction> Keys =>
    [
        new(KeyBook.Open, "take this line", "takes the line under the cursor", Take),
        new(KeyBook.Move, "choose", "up and down choose a line, left and right a scene", () => { }),
    ];

    internal void Paint(Area body)
    {
        int jobs = desk.Store.Recent().Count;
        // A narrow terminal has room for the same, said shorter.
        bool wide = body.Width >= 80;
        (string What, string Needs)[] lines =
        [
            ("Sort used cells", wide ? "needs one table: label, Ah (or mAh), best also milliohm" : "a table: label, Ah, best also mΩ"),
            ("Find lost range", wide ? "needs one log of a ride or charge with volts per cell" : "a log with volts per cell"),
            ("Fit a space", wide ? "needs the inside size in mm and the voltage you want" : "the inside size, the voltage wanted"),
            ("Open a job", jobs == 0 ? wide ? $"none yet; yours will lie in {desk.Around.JobsFolder}" : "none yet" : wide ? $"{jobs} in {desk.Around.JobsFolder}" : $"{jobs} of yours"),
        ];
        for (int i = 0; i < lines.Length; i++)
        {
            PaintMark(body, i);
            body.Write(3, i, lines[i].What, i == row ? Ink.Bold : Ink.Plain);
            body.Write(23, i, TextWidth.Cut(body.Look.Of(lines[i].Needs), body.Width - 24));
            OnClick(body, i);
        }

        PaintMark(body, 4);
        body.Write(3, 4, "Invented data", row == 4 ? Ink.Bold : Ink.Plain);
        OnClick(body, 4);
        int x = 22;
        for (int i = 0; i < Scenes.Length; i++)
        {
            int number = i;
            string shown = i == scene ? $"‹ {Scenes[i]} ›" : $"  {Scenes[i]}  ";
            int end = body.Write(x, 4, shown, i == scene ? Ink.Accent | Ink.Bold : Ink.Plain);
            body.OnClick(x, 4, end - x, () => (row, scene) = (4, number));
            x = end;
        }

        const string Keys = "←→ choose, Enter: a copy";
        body.Write(x + 1, 4, x + 1 + TextWidth.Of(body.Look.Of(Keys)) <= body.Width ? Keys : "←→");
        if (body.Height > 8)
            PaintScene(body.From(6));
    }

    internal bool Move(string key)
    {
        switch (key)
        {
            case "Up": row = Math.Max(0, row - 1); return true;
            case "Down": row = Math.Min(4, row + 1); return true;
            case "Home": row = 0; return true;
            case "End": row = 4; return true;
            case "Left": scene = Math.Max(0, scene - 1); return true;
            case "Right": scene = Math.Min(Scenes.Length - 1, scene + 1); return true;
            default: return false;
        }
    }

    private void PaintScene(Area area)
    {
        string[] words = scene switch
        {
            0 => ["trike    150 salvaged cells, a tray of 310 x 190 x 95 mm:", "         sort them, group them, place them, see how far it goes."],
            1 => ["tractor  16 flat LFP cells that lost a quarter of their range:", "         which part is it, and what comes back if it is mended?"],
            _ => ["scooter  an empty floor with a frame tube through it:", "         what fits, and what are the choices?"],
        };
        for (int i = 0; i < words.Length; i++)
            area.Write(3, i, words[i]);
        area.Write(3, words.Length, "         Invented: no measured cell stands behind a figure.");
    }

    private void PaintMark(Area body, int line)
    {
        if (line != row)
            return;
        body.Write(1, line, ">", Ink.Accent | Ink.Bold);
        body.Cursor(1, line);
    }

    private void OnClick(Area body, int line) => body.OnClick(0, line, body.Width, () =>
    {
        if (row == line)
            Take();
        row = line;
    });

    // As the other ways in ask for their file at once.
    private void AskSpace()
    {
        desk.GoTo(3);
        desk.Press(KeyBook.Add.Key);
    }

    private void Take()
    {
        switch (row)
        {
            case 0: JobCommands.AskNew(desk, "my cells", () => FileChooser.Ask(desk)); break;
            case 1: JobCommands.AskNew(desk, "my pack", () => FileChooser.Ask(desk)); break;
            case 2: JobCommands.AskNew(desk, "my space", AskSpace); break;
            case 3: JobCommands.AskOpen(desk); break;
            default: desk.Store.Demo(Scenes[scene]); break;
        }
    }
}
