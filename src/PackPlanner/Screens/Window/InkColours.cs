using PackPlanner.Screens.Drawing;
using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace PackPlanner.Screens.Window;

/// <summary>Inks as the terminal shows them: its own colours everywhere, one accent, and styles.</summary>
internal static class InkColours
{
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
        // Bright blue reads on light and on dark ground, with 16 colours and with more.
        Color front = colour && ink.HasFlag(Ink.Accent) ? new Color(ColorName16.BrightBlue) : Color.None;
        return new Attribute(front, Color.None, style);
    }
}
