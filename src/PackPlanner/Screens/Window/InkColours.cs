using PackPlanner.Screens.Drawing;
using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace PackPlanner.Screens.Window;

/// <summary>Inks as the terminal shows them: its own colours everywhere, one accent, and styles.</summary>
internal static class InkColours
{
    /// <summary>
    /// Colour 63 of 256, a blue that stands out from white as from black by 4.5 to 1. None of a terminal's first 16 does: their bright blue is as
    /// each terminal paints it, 4.1 to 4.4 on black where it is read on white. A terminal of 16 colours is shown none.
    /// </summary>
    internal const int Accent256 = 63;

    /// <summary>The same as it is painted, where the library chooses the code.</summary>
    internal static readonly Color Accent = new(0x5f, 0x5f, 0xff);

    /// <summary>The attribute of each combination of inks.</summary>
    internal static Attribute[] All(bool colour)
    {
        Attribute[] all = new Attribute[16];
        for (int ink = 0; ink < all.Length; ink++)
            all[ink] = Of((Ink)ink, colour);
        return all;
    }

    /// <summary>A scheme without any colour, so that nothing that the library draws itself paints over the user's own.</summary>
    internal static Scheme Scheme() => new(Of(Ink.Plain, colour: false));

    private static Attribute Of(Ink ink, bool colour)
    {
        TextStyle style = TextStyle.None;
        if (ink.HasFlag(Ink.Bold))
            style |= TextStyle.Bold;
        if (ink.HasFlag(Ink.Reverse))
            style |= TextStyle.Reverse;
        if (ink.HasFlag(Ink.Underline))
            style |= TextStyle.Underline;
        // Without a colour what can be pressed still stands out.
        if (ink.HasFlag(Ink.Accent) && !colour)
            style |= TextStyle.Bold;
        Color front = colour && ink.HasFlag(Ink.Accent) ? Accent : Color.None;
        return new Attribute(front, Color.None, style);
    }
}
