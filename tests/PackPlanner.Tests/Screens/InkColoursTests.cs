using PackPlanner.Screens.Window;
using Terminal.Gui.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>The accent reads on light and on dark ground.</summary>
public class InkColoursTests
{
    [Fact]
    public void The_accent_stands_out_from_white_and_from_black_by_four_and_a_half_to_one()
    {
        double accent = Luminance(InkColours.Accent);

        Assert.InRange(1.05 / (accent + 0.05), 4.5, 21);
        Assert.InRange((accent + 0.05) / 0.05, 4.5, 21);
        // The formula as WCAG 2 states it: white on black is 21.
        Assert.Equal(21, (Luminance(new Color(255, 255, 255)) + 0.05) / (Luminance(new Color(0, 0, 0)) + 0.05), 9);
    }

    [Fact]
    public void Its_number_among_256_is_that_colour()
    {
        // Colours 16 to 231 are a cube of six steps in red, green and blue, each step 0, 95, 135, 175, 215 or 255.
        int[] steps = [0, 95, 135, 175, 215, 255];
        int at = InkColours.Accent256 - 16;

        Assert.Equal((steps[at / 36], steps[at / 6 % 6], steps[at % 6]), (InkColours.Accent.R, InkColours.Accent.G, InkColours.Accent.B));
    }

    [Fact]
    public void Without_colour_what_can_be_pressed_is_bold()
    {
        Assert.All(InkColours.All(colour: false), (ink, i) =>
        {
            Assert.Equal(Color.None, ink.Foreground);
            Assert.Equal((i & 3) != 0, ink.Style.HasFlag(TextStyle.Bold));
        });
        Assert.DoesNotContain(InkColours.All(colour: true), ink => ink.Background != Color.None);
    }

    // Relative luminance of WCAG 2.
    private static double Luminance(Color colour)
    {
        static double Linear(byte part) => part / 255.0 <= 0.03928 ? part / 255.0 / 12.92 : Math.Pow(((part / 255.0) + 0.055) / 1.055, 2.4);
        return (0.2126 * Linear(colour.R)) + (0.7152 * Linear(colour.G)) + (0.0722 * Linear(colour.B));
    }
}
