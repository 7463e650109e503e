using ScottPlot;
using SkiaSharp;

namespace PackPlanner.Formats.Pictures;

/// <summary>The one typeface of all pictures, carried in the program, so that a picture has the same bytes whatever fonts a machine has.</summary>
internal sealed class PictureFont : IFontResolver
{
    internal const string Family = "Picture Sans";

    private static readonly Lazy<SKTypeface> Plain = new(() => Load("DejaVuSans.ttf"));
    private static readonly Lazy<SKTypeface> Heavy = new(() => Load("DejaVuSans-Bold.ttf"));

    // Fonts are looked up in a list that belongs to the whole process: entered once, before the first picture.
    private static readonly Lazy<bool> Entered = new(() =>
    {
        Fonts.FontResolvers.Insert(0, new PictureFont());
        Fonts.Default = Family;
        Fonts.Sans = Family;
        return true;
    });

    /// <summary>The bold cut. Set at the label itself: a family by name is drawn in its plain cut.</summary>
    internal static SKTypeface Bold => Heavy.Value;

    /// <summary>The plain cut.</summary>
    internal static SKTypeface Regular => Plain.Value;

    internal static void Use() => _ = Entered.Value;

    public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        CreateTypeface(fontName, bold: false, italic: false);

    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
        fontName == Family ? Plain.Value : null;

    private static SKTypeface Load(string file)
    {
        using Stream held = typeof(PictureFont).Assembly.GetManifestResourceStream($"PackPlanner.Formats.Pictures.{file}")
            ?? throw new InvalidOperationException($"{file} is not in the program");
        using SKData data = SKData.Create(held);
        return SKTypeface.FromData(data);
    }
}
