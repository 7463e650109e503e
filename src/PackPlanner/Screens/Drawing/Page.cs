using System.Text;

namespace PackPlanner.Screens.Drawing;

/// <summary>One whole screen as signs and inks, with the places that can be clicked and where the cursor stands.</summary>
internal sealed class Page
{
    private readonly string[] signs;
    private readonly Ink[] inks;
    private readonly List<(int X, int Y, int Width, int Height, Action Run)> targets = [];

    internal Page(int width, int height, Look look)
    {
        Width = width;
        Height = height;
        Look = look;
        signs = new string[width * height];
        Array.Fill(signs, " ");
        inks = new Ink[width * height];
    }

    internal int Width { get; }

    internal int Height { get; }

    internal Look Look { get; }

    /// <summary>Where the terminal's own cursor belongs: on the item in focus, so that a screen reader follows.</summary>
    internal (int X, int Y)? Cursor { get; set; }

    internal Area Whole => new(this, 0, 0, Width, Height);

    /// <summary>What stands in one place: a sign, or nothing where the wide sign before it reaches over.</summary>
    internal (string Sign, Ink Ink) At(int x, int y) => (signs[(y * Width) + x], inks[(y * Width) + x]);

    internal void Set(int x, int y, string sign, Ink ink)
    {
        signs[(y * Width) + x] = Look.Ascii && !System.Text.Ascii.IsValid(sign) ? Look.Of(sign)[..1] : sign;
        inks[(y * Width) + x] = ink;
    }

    internal void Append(int x, int y, Rune mark) => signs[(y * Width) + x] += mark.ToString();

    internal void AddTarget(int x, int y, int width, int height, Action run) => targets.Add((x, y, width, height, run));

    /// <summary>What a click on this place does; the one drawn last wins.</summary>
    internal Action? TargetAt(int x, int y) => targets
        .LastOrDefault(t => x >= t.X && x < t.X + t.Width && y >= t.Y && y < t.Y + t.Height).Run;

    /// <summary>The signs alone, a line a row, blanks at line ends removed.</summary>
    internal string ToText()
    {
        StringBuilder text = new();
        for (int y = 0; y < Height; y++)
            text.Append(string.Concat(signs.AsSpan(y * Width, Width)).TrimEnd()).Append('\n');
        return text.ToString();
    }

    /// <summary>The inks alone: a letter where something stands out (a accent, b bold, r reverse, u underlined), a line a row.</summary>
    internal string ToInks()
    {
        StringBuilder text = new();
        for (int y = 0; y < Height; y++)
        {
            StringBuilder line = new();
            for (int x = 0; x < Width; x++)
                line.Append(Letter(inks[(y * Width) + x]));
            text.Append(line.ToString().TrimEnd()).Append('\n');
        }

        return text.ToString();
    }

    private static char Letter(Ink ink) => ink switch
    {
        Ink.Plain => ' ',
        _ when ink.HasFlag(Ink.Reverse) => 'r',
        _ when ink.HasFlag(Ink.Underline) => 'u',
        _ when ink.HasFlag(Ink.Bold) => 'b',
        _ => 'a',
    };
}
