using PackPlanner.Screens.Drawing;
using Terminal.Gui.Drawing;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Attribute = Terminal.Gui.Drawing.Attribute;
using Point = System.Drawing.Point;

namespace PackPlanner.Screens.Window;

/// <summary>The one view of the program: shows the desk's page, passes keys, clicks and pasted text on to it.</summary>
internal sealed class PlannerWindow : Runnable
{
    private readonly Desk desk;
    private readonly Attribute[] inks;
    private Page page;

    /// <param name="desk">What is shown.</param>
    /// <param name="colour">False for no colour code at all.</param>
    internal PlannerWindow(Desk desk, bool colour)
    {
        this.desk = desk;
        inks = InkColours.All(colour);
        page = desk.Draw(80, 24);
        Width = Dim.Fill();
        Height = Dim.Fill();
        CanFocus = true;
        SetScheme(InkColours.Scheme());
    }

    /// <summary>The page as it was drawn last.</summary>
    internal Page Page => page;

    // The page covers all of the window, and what it had in common with the one before stays in the terminal.
    /// <inheritdoc/>
    protected override bool OnClearingViewport() => true;

    /// <inheritdoc/>
    protected override bool OnDrawingContent(DrawContext? context)
    {
        page = DrawOrTell();
        // Over a slow line a key should cost what it changed, not the whole screen.
        Cell[,]? shown = App?.Driver?.Contents;
        for (int y = 0; y < page.Height; y++)
        {
            if (!Stands(shown, y))
                DrawRow(y);
        }

        Cursor = page.Cursor is { } at
            ? new Cursor { Position = ViewportToScreen(new Point(at.X, at.Y)), Style = CursorStyle.Default }
            : new Cursor { Position = null };
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnKeyDown(Key key)
    {
        if (key == Key.L.WithCtrl)
        {
            // As everywhere in a terminal: somebody else has written over the screen.
            App?.Driver?.ClearContents();
            SetNeedsDraw();
            return true;
        }

        if (KeyNames.Of(key) is not { } name)
            return false;
        Guarded(() => desk.Press(name));
        return true;
    }

    // The library hands a paste to a view that has asked for the command of that name; the application is told of each.
    /// <inheritdoc/>
    protected override void OnIsRunningChanged(bool newIsRunning)
    {
        base.OnIsRunningChanged(newIsRunning);
        if (App is not { } app)
            return;
        if (newIsRunning)
            app.Paste += OnPasted;
        else
            app.Paste -= OnPasted;
    }

    // Terminals end a pasted line as the Enter key does.
    private void OnPasted(object? sender, PasteEventArgs pasted)
    {
        pasted.Handled = true;
        Guarded(() => desk.Paste(pasted.Text.ReplaceLineEndings("\n")));
    }

    /// <inheritdoc/>
    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (mouse.Flags.HasFlag(MouseFlags.WheeledUp) || mouse.Flags.HasFlag(MouseFlags.WheeledDown))
        {
            string key = mouse.Flags.HasFlag(MouseFlags.WheeledUp) ? "Up" : "Down";
            Guarded(() =>
            {
                for (int i = 0; i < 3; i++)
                    desk.Press(key);
            });
        }
        else if (mouse.Flags.HasFlag(MouseFlags.LeftButtonClicked) && mouse.Position is { } at)
        {
            Guarded(() => desk.Click(page, at.X, at.Y));
        }
        else
        {
            return false;
        }

        return true;
    }

    // A fault of ours must not cost the user his place: it is told on the screen, its details go to a file.
    private void Guarded(Action input)
    {
        try
        {
            input();
        }
        catch (Exception fault)
        {
            Tell(fault);
        }

        SetNeedsDraw();
        if (desk.IsLeaving)
            App?.RequestStop(this);
    }

    private Page DrawOrTell()
    {
        try
        {
            return desk.Draw(Viewport.Width, Viewport.Height);
        }
        catch (Exception fault)
        {
            Tell(fault);
            Page told = new(Math.Max(1, Viewport.Width), Math.Max(1, Viewport.Height), desk.Look);
            told.Whole.Write(0, 0, "This screen could not be drawn; another step (1-8) or q still works.");
            told.Whole.Write(0, 1, desk.Says!);
            return told;
        }
    }

    private void Tell(Exception fault)
    {
        Core.Problem problem = FaultReport.Write(fault).Problem;
        desk.CloseAll();
        desk.Says = $"{problem.Why}. {problem.Remedy}";
    }

    // Whether the row stands in what the library keeps of the terminal; it empties that itself when the size changes.
    private bool Stands(Cell[,]? shown, int y)
    {
        if (shown is null || y >= shown.GetLength(0) || page.Width > shown.GetLength(1))
            return false;
        for (int x = 0; x < page.Width; x++)
        {
            (string sign, Ink ink) = page.At(x, y);
            if (shown[y, x].Grapheme != sign || shown[y, x].Attribute != inks[(int)ink])
                return false;
        }

        return true;
    }

    private void DrawRow(int y)
    {
        Move(0, y);
        for (int x = 0; x < page.Width;)
            x = DrawRun(x, y);
    }

    // Signs of one ink that follow one another are written together.
    private int DrawRun(int x, int y)
    {
        Ink ink = page.At(x, y).Ink;
        int end = x;
        System.Text.StringBuilder run = new();
        while (end < page.Width && page.At(end, y).Ink == ink)
            run.Append(page.At(end++, y).Sign);
        SetAttribute(inks[(int)ink]);
        AddStr(x, y, run.ToString());
        return end;
    }
}
