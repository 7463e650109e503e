namespace PackPlanner.Screens.Drawing;

/// <summary>How a piece of text stands out. Always a second signal: a word or mark says the same.</summary>
[Flags]
internal enum Ink
{
    /// <summary>The terminal's own colours.</summary>
    Plain = 0,

    /// <summary>The one accent: where you are and what you can press.</summary>
    Accent = 1,

    /// <summary>Bold: hold, headings.</summary>
    Bold = 2,

    /// <summary>Reverse: reject, the field that takes text.</summary>
    Reverse = 4,

    /// <summary>Underlined: cautions.</summary>
    Underline = 8,
}
