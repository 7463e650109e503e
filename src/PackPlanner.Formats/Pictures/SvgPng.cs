using System.Globalization;
using System.Xml.Linq;
using SkiaSharp;

namespace PackPlanner.Formats.Pictures;

/// <summary>Our own drawings in SVG as PNG: rectangles, circles, paths and words in black and greys, which is all that they hold.</summary>
internal static class SvgPng
{
    // On paper: 200 dots an inch tell a ring from a line; type of 14 points is 39 dots high.
    private const double DotsPerMm = 200 / 25.4;
    private const int MostDots = 8000;

    /// <summary>The drawing on white, the same bytes each time.</summary>
    /// <param name="svg">A drawing whose view box is in millimetres of paper.</param>
    internal static byte[] Of(string svg)
    {
        XElement root = XElement.Parse(svg);
        double[] box = [.. Text(root, "viewBox")!.Split(' ').Select(Number)];
        float dots = (float)Math.Min(DotsPerMm, MostDots / Math.Max(box[2], box[3]));
        float type = Length(root, "font-size");
        // Words may be longer than a narrow drawing is wide.
        double wide = root.Elements("text").Where(part => Text(part, "text-anchor") == "start").Select(part => (double)(Length(part, "x") + Measure(part, type))).Append(box[2]).Max();
        SKImageInfo size = new((int)Math.Ceiling(wide * dots), (int)Math.Ceiling(box[3] * dots), SKColorType.Gray8, SKAlphaType.Opaque);
        using SKSurface surface = SKSurface.Create(size);
        SKCanvas canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        canvas.Scale(dots);
        foreach (XElement part in root.Elements())
            Draw(canvas, part, type);
        using SKImage image = surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static void Draw(SKCanvas canvas, XElement part, float type)
    {
        canvas.Save();
        Turn(canvas, Text(part, "transform"));
        using SKPaint ink = Stroke(part);
        switch (part.Name.LocalName)
        {
            case "rect": canvas.DrawRect(Length(part, "x"), Length(part, "y"), Length(part, "width"), Length(part, "height"), ink); break;
            case "circle": canvas.DrawCircle(Length(part, "cx"), Length(part, "cy"), Length(part, "r"), ink); break;
            case "path":
                using (SKPath path = SKPath.ParseSvgPathData(Text(part, "d")!))
                    canvas.DrawPath(path, ink);
                break;
            case "text": Words(canvas, part, type); break;
            default: throw new NotSupportedException($"{part.Name.LocalName} is not drawn");
        }

        canvas.Restore();
    }

    private static void Words(SKCanvas canvas, XElement part, float type)
    {
        using SKFont font = Font(part, type);
        using SKPaint ink = new() { IsAntialias = true, Color = SKColors.Black };
        float x = Length(part, "x"), y = Length(part, "y");
        if (Text(part, "textLength") is { } length)
        {
            float narrow = (float)Number(length) / font.MeasureText(part.Value);
            canvas.Scale(narrow, 1, x, y);
        }

        SKTextAlign align = Text(part, "text-anchor") switch { "middle" => SKTextAlign.Center, "end" => SKTextAlign.Right, _ => SKTextAlign.Left };
        canvas.DrawText(part.Value, x, y, align, font, ink);
    }

    // The type is five units high before it is scaled: letters rounded to whole units would stand apart.
    private static SKFont Font(XElement part, float type) => new(Text(part, "font-weight") == "bold" ? PictureFont.Bold : PictureFont.Regular, Text(part, "font-size") is { } own ? (float)Number(own) : type)
    {
        Subpixel = true,
        LinearMetrics = true,
        Hinting = SKFontHinting.None,
    };

    private static float Measure(XElement part, float type)
    {
        using SKFont font = Font(part, type);
        return font.MeasureText(part.Value);
    }

    private static SKPaint Stroke(XElement part)
    {
        SKPaint ink = new()
        {
            IsAntialias = true,
            IsStroke = true,
            Color = Text(part, "stroke") is { } colour ? SKColor.Parse(colour) : SKColors.Black,
            StrokeWidth = Text(part, "stroke-width") is { } width ? (float)Number(width) : 0,
        };
        if (Text(part, "stroke-dasharray") is { } dashes)
            ink.PathEffect = SKPathEffect.CreateDash([.. dashes.Split(' ').Select(dash => (float)Number(dash))], 0);
        return ink;
    }

    private static void Turn(SKCanvas canvas, string? transform)
    {
        if (transform is null)
            return;
        int open = transform.IndexOf('(', StringComparison.Ordinal);
        float[] by = [.. transform[(open + 1)..^1].Split(' ').Select(figure => (float)Number(figure))];
        if (transform.StartsWith("rotate", StringComparison.Ordinal))
            canvas.RotateDegrees(by[0], by[1], by[2]);
        else
            canvas.Translate(by[0], by[1]);
    }

    private static string? Text(XElement part, string name) => part.Attribute(name)?.Value;

    private static float Length(XElement part, string name) => (float)Number(Text(part, name)!);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
