using PackPlanner.Screens;

namespace PackPlanner.Tests.Screens;

public class ScreenOptionsTests
{
    [Fact]
    public void No_words_ask_for_the_screens() => Assert.True(ScreenStart.IsAsked([]));

    [Theory]
    [InlineData("trike.job.json")]
    [InlineData("--ascii", "--color", "never", "trike.job.json")]
    [InlineData("--color=never")]
    [InlineData("--units", "us", "--decimal-out=comma")]
    public void A_job_file_and_options_of_looks_ask_for_the_screens(params string[] args) => Assert.True(ScreenStart.IsAsked(args));

    [Theory]
    [InlineData("matsch")]
    [InlineData("cells", "mine.csv")]
    [InlineData("--color", "pink")]
    [InlineData("a.job.json", "b.job.json")]
    public void Verbs_and_misspelt_words_do_not(params string[] args) => Assert.False(ScreenStart.IsAsked(args));

    [Fact]
    public void Looks_are_read()
    {
        ScreenOptions options = ScreenOptions.Read(["--ascii", "--color", "never", "--units=us", "--decimal-out", "comma", "x.json"])!;

        Assert.Equal(("x.json", "never", true, true, true), (options.Job, options.Color, options.Ascii, options.UsUnits, options.DecimalComma));
    }

    [Fact]
    public void Without_a_terminal_a_job_is_answered_with_the_verb_that_shows_it() =>
        Assert.Contains("packplanner job show trike.job.json", ScreenStart.NoTerminal("trike.job.json").Problem.Remedy);
}
