using System.Text;

namespace PackPlanner.Screens.Drawing;

/// <summary>A rectangle of a page. Writing is clipped to it, so that no part of a screen can spoil another.</summary>
internal readonly record struct Area(Page Page, int X, int Y, int Width, int Height)
{
    internal Look Look => Page.Look;

    /// <summary>A rectangle inside this one, clipped.</summary>
    internal Area Part(int x, int y, int width, int height)
    {
        int left = Math.Clamp(x, 0, Width);
        int top = Math.Clamp(y, 0, Height);
        return new(Page, X + left, Y + top, Math.Clamp(width, 0, Width - left), Math.Clamp(height, 0, Height - top));
    }

    /// <summary>The rows from <paramref name="y"/> on.</summary>
    internal Area From(int y) => Part(0, y, Width, Height - y);

    /// <summary>Writes words, clipped at the right edge.</summary>
    /// <returns>The column after the last sign.</returns>
    internal int Write(int x, int y, string words, Ink ink = Ink.Plain)
    {
        if (y < 0 || y >= Height)
            return x;
        int at = x;
        int last = -1;
        foreach (Rune rune in Look.OfCut(words).EnumerateRunes())
        {
            int width = TextWidth.Of(rune);
            if (width == 0)
            {
                if (last >= 0)
                    Page.Append(X + last, Y + y, rune);
                continue;
            }

            if (at + width > Width)
                break;
            if (at >= 0)
            {
                Page.Set(X + at, Y + y, rune.ToString(), ink);
                if (width == 2)
                    Page.Set(X + at + 1, Y + y, "", ink);
                last = at;
            }

            at += width;
        }

        return at;
    }

    /// <summary>Draws a line from top to bottom between what is left and right of it.</summary>
    internal void Divide(int x)
    {
        for (int y = 0; y < Height; y++)
            Write(x, y, "│");
    }

    /// <summary>Writes words that end at the right edge.</summary>
    internal void WriteRight(int y, string words, Ink ink = Ink.Plain)
    {
        string shown = Look.Of(words);
        Write(Math.Max(0, Width - TextWidth.Of(shown)), y, shown, ink);
    }

    internal void Rule(int y) => Write(0, y, new string('─', Width));

    /// <summary>Blanks the whole area, for what is laid over something.</summary>
    internal void Clear()
    {
        for (int y = 0; y < Height; y++)
            Write(0, y, new string(' ', Width));
    }

    internal void OnClick(int x, int y, int width, Action run)
    {
        Area part = Part(x, y, width, 1);
        if (part.Width > 0 && part.Height > 0)
            Page.AddTarget(part.X, part.Y, part.Width, part.Height, run);
    }

    internal void Cursor(int x, int y) => Page.Cursor =
        (X + Math.Clamp(x, 0, Math.Max(0, Width - 1)), Y + Math.Clamp(y, 0, Math.Max(0, Height - 1)));
}
