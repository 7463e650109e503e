using PackPlanner.Screens.Drawing;
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

    /// <inheritdoc/>
    protected override bool OnDrawingContent(DrawContext? context)
    {
        page = desk.Draw(Viewport.Width, Viewport.Height);
        for (int y = 0; y < page.Height; y++)
        {
            Move(0, y);
            for (int x = 0; x < page.Width;)
                x = DrawRun(x, y);
        }

        Cursor = page.Cursor is { } at
            ? new Cursor { Position = ViewportToScreen(new Point(at.X, at.Y)), Style = CursorStyle.Default }
            : new Cursor { Position = null };
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnKeyDown(Key key)
    {
        if (KeyNames.Of(key) is not { } name)
            return false;
        desk.Press(name);
        AfterInput();
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnPaste(string text)
    {
        desk.Paste(text);
        AfterInput();
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (mouse.Flags.HasFlag(MouseFlags.WheeledUp) || mouse.Flags.HasFlag(MouseFlags.WheeledDown))
        {
            string key = mouse.Flags.HasFlag(MouseFlags.WheeledUp) ? "Up" : "Down";
            for (int i = 0; i < 3; i++)
                desk.Press(key);
        }
        else if (mouse.Flags.HasFlag(MouseFlags.LeftButtonClicked) && mouse.Position is { } at)
        {
            desk.Click(page, at.X, at.Y);
        }
        else
        {
            return false;
        }

        AfterInput();
        return true;
    }

    private void AfterInput()
    {
        SetNeedsDraw();
        if (desk.IsLeaving)
            App?.RequestStop(this);
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
