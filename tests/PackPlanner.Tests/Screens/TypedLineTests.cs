using PackPlanner.Screens.Overlays;

namespace PackPlanner.Tests.Screens;

/// <summary>A line of text being typed.</summary>
public class TypedLineTests
{
    [Theory]
    [InlineData("Ctrl+U", "three", 0)]
    [InlineData("Ctrl+K", "one  two ", 9)]
    [InlineData("Ctrl+W", "one  three", 5)]
    [InlineData("Ctrl+A", "one  two three", 0)]
    [InlineData("Ctrl+E", "one  two three", 14)]
    [InlineData("Home", "one  two three", 0)]
    [InlineData("End", "one  two three", 14)]
    [InlineData("Ctrl+H", "one  twothree", 8)]
    [InlineData("Ctrl+D", "one  two hree", 9)]
    [InlineData("Ctrl+B", "one  two three", 8)]
    [InlineData("Ctrl+F", "one  two three", 10)]
    public void Control_keys_do_what_they_do_in_a_shell(string key, string text, int at)
    {
        TypedLine line = new("one  two three");
        for (int i = 0; i < 5; i++)
            line.Press("Left");

        Assert.True(line.Press(key));

        Assert.Equal((text, at), (line.Text, line.At));
    }

    [Theory]
    [InlineData("Ctrl+U")]
    [InlineData("Ctrl+K")]
    [InlineData("Ctrl+W")]
    [InlineData("Ctrl+H")]
    [InlineData("Ctrl+D")]
    [InlineData("Backspace")]
    [InlineData("Delete")]
    public void An_empty_line_stays_empty(string key)
    {
        TypedLine line = new("");

        Assert.True(line.Press(key));

        Assert.Equal(("", 0), (line.Text, line.At));
    }

    [Theory]
    [InlineData("Ctrl+X")]
    [InlineData("Tab")]
    [InlineData("PgUp")]
    [InlineData("\u0001")]
    [InlineData("\u007f")]
    [InlineData("\u001b")]
    [InlineData("")]
    public void What_is_no_sign_types_nothing(string key)
    {
        TypedLine line = new("a");

        Assert.False(line.Press(key));

        Assert.Equal("a", line.Text);
    }
}
