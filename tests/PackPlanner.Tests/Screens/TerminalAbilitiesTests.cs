using PackPlanner.Screens;

namespace PackPlanner.Tests.Screens;

public class TerminalAbilitiesTests
{
    [Theory]
    [InlineData("LANG=C", true)]
    [InlineData("LANG=POSIX", true)]
    [InlineData("LANG=de_DE.ISO-8859-1", true)]
    [InlineData("LANG=de_DE.ISO-8859-15@euro", true)]
    [InlineData("LANG=C.UTF-8", false)]
    [InlineData("LANG=de_DE.utf8", false)]
    [InlineData("LANG=en_US", false)]
    [InlineData("", false)]
    [InlineData("LANG=C LC_ALL=C.UTF-8", false)]
    [InlineData("LANG=C.UTF-8 LC_CTYPE=C", true)]
    [InlineData("LANG=C.UTF-8 LC_ALL=", false)]
    public void Signs_are_ascii_where_the_locale_is_not_of_unicode(string environment, bool plain) =>
        Assert.Equal(plain, TerminalAbilities.IsPlain(Of(environment)));

    [Theory]
    [InlineData("TERM=vt100", true)]
    [InlineData("TERM=vt220", true)]
    [InlineData("TERM=xterm-16color", true)]
    [InlineData("TERM=xterm-16color COLORTERM=truecolor", false)]
    [InlineData("TERM=xterm-256color", false)]
    [InlineData("TERM=xterm", false)]
    [InlineData("TERM=screen-256color", false)]
    public void A_terminal_named_as_one_of_few_colours_is_shown_none(string environment, bool few) =>
        Assert.Equal(few, TerminalAbilities.HasFewColours(Of(environment)));

    private static Func<string, string?> Of(string environment) => name =>
        environment.Split(' ').Select(pair => pair.Split('=')).FirstOrDefault(pair => pair[0] == name)?[1];
}
