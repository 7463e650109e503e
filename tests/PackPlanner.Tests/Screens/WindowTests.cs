using PackPlanner.Screens.Window;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;

namespace PackPlanner.Tests.Screens;

/// <summary>The program's one window in the library's own driver without a terminal.</summary>
[Collection(nameof(OneTerminalAtATime))]
public class WindowTests
{
    [Fact]
    public void What_the_driver_shows_is_the_page()
    {
        using Bench bench = new();
        using Terminal terminal = new(bench);

        Assert.Equal(Trimmed(bench.Text()), Trimmed(terminal.Text));
    }

    [Fact]
    public void Keys_reach_the_desk_and_the_screen_follows()
    {
        using Bench bench = new();
        bench.OpenLot();
        using Terminal terminal = new(bench);

        terminal.Press((Key)'2');
        Assert.Contains("[2 Cells]", terminal.Text);
        terminal.Press(Key.CursorDown, (Key)'?');
        Assert.Contains("keys of Cells", terminal.Text);
        terminal.Press(Key.Esc);
        Assert.DoesNotContain("keys of Cells", terminal.Text);
        Assert.False(bench.Desk.IsLeaving);
    }

    [Fact]
    public void A_key_sends_the_rows_that_it_changed_and_no_others()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");
        using Terminal terminal = new(bench);

        terminal.Press(Key.CursorDown);

        // The mark leaves one row and comes to the next.
        Assert.InRange(terminal.Sent.Length, 80, 2 * 80);
        Assert.Contains("T001", terminal.Sent);
        Assert.Contains(">   T002", terminal.Sent);
        Assert.Equal(Trimmed(bench.Text()), Trimmed(terminal.Text));
        terminal.Press(Key.L.WithCtrl);
        Assert.InRange(terminal.Sent.Length, 23 * 80, 24 * 80);
        Assert.Equal(Trimmed(bench.Text()), Trimmed(terminal.Text));
    }

    [Fact]
    public void Typed_capitals_and_signs_arrive_as_typed()
    {
        using Bench bench = new();
        bench.OpenLot();
        using Terminal terminal = new(bench);
        terminal.Press((Key)':');

        terminal.Press([.. "Ah<4.1=U".Select(letter => (Key)letter)]);

        Assert.Contains("Ah<4.1=U", terminal.Text);
    }

    [Fact]
    public void Control_keys_edit_a_field_and_junk_keys_type_nothing()
    {
        using Bench bench = new();
        bench.OpenLot();
        using Terminal terminal = new(bench);
        terminal.Press((Key)':');
        terminal.Press([.. "join check".Select(letter => (Key)letter)]);

        terminal.Press(Key.W.WithCtrl);
        Assert.Contains("join  ", terminal.Text);
        Assert.DoesNotContain("join check ", terminal.Text.Split('\n')[6]);
        terminal.Press(Key.A.WithCtrl, (Key)'x', Key.E.WithCtrl, (Key)'y');
        Assert.Contains("xjoin y", terminal.Text);
        terminal.Press(Key.U.WithCtrl);
        string before = terminal.Text;
        Assert.DoesNotContain("xjoin", before);

        Key[] junk = [.. "ginoprstvxyz".Select(letter => new Key(letter).WithCtrl), .. "abxuk".Select(letter => new Key(letter).WithAlt), Key.F1, Key.F5, Key.F12, Key.InsertChar, Key.Tab.WithShift, Key.CursorUp.WithCtrl, new Key((KeyCode)0x1c), new Key((KeyCode)0x7f)];
        foreach (Key key in junk.Where(key => key != Key.Q.WithCtrl))
            terminal.Press(key);

        Assert.Equal(TypedRow(before), TypedRow(terminal.Text));
        Assert.False(bench.Desk.IsLeaving);

        static string TypedRow(string text) => text.Split('\n').First(line => line.Contains(" of ", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_pasted_reaches_the_field_and_a_table_is_read()
    {
        using Bench bench = new();
        bench.OpenLot();
        using Terminal terminal = new(bench);
        terminal.Press((Key)':');

        terminal.Paste("join che");
        Assert.Contains("join che ", terminal.Text);
        terminal.Press(Key.Esc);
        terminal.Paste("label,Ah\rP1,2.5\rP2,2.6\r");

        Assert.Contains("2 cells", terminal.Text);
    }

    [Fact]
    public void A_click_reaches_what_lies_under_it()
    {
        using Bench bench = new();
        bench.OpenLot();
        using Terminal terminal = new(bench);
        int x = terminal.Text.Split('\n')[1].IndexOf("3 Groups", StringComparison.Ordinal);

        terminal.Click(x, 1);

        Assert.Contains("[3 Groups]", terminal.Text);
    }

    [Theory]
    [InlineData(60, 18)]
    [InlineData(120, 36)]
    [InlineData(20, 5)]
    public void The_page_follows_the_size_of_the_terminal(int width, int height)
    {
        using Bench bench = new();
        bench.OpenLot();
        using Terminal terminal = new(bench);

        terminal.Resize(width, height);

        Assert.Equal(Trimmed(bench.Text(width, height)), Trimmed(terminal.Text));
    }

    [Fact]
    public void Without_colour_no_colour_code_is_sent_and_states_are_still_told_apart()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");
        using Terminal terminal = new(bench, colour: false);

        string codes = terminal.Ansi;

        // The terminal's own colours, 39 and 49, are codes of colour too.
        Assert.DoesNotMatch(@"\u001b\[[0-9;]*(3[0-9]|4[0-9]|9[0-7]|10[0-7])[;0-9]*m", codes);
        Assert.Matches(@"\u001b\[[0-9;]*7m", codes);
    }

    [Fact]
    public void The_accent_is_the_only_colour_that_is_sent_and_the_ground_is_never_painted()
    {
        using Bench bench = new();
        bench.OpenLot();
        using Terminal terminal = new(bench);

        string[] colours = [.. System.Text.RegularExpressions.Regex.Matches(terminal.Ansi, @"\u001b\[([34][0-9]|9[0-7]|10[0-7])(;[0-9;]*)?m").Select(code => code.Value).Distinct()];

        Assert.Equal(["\u001b[38;5;63m", "\u001b[39m"], colours.Order(StringComparer.Ordinal));
    }

    private static string Trimmed(string text) => string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd())).TrimEnd();

    private sealed class Terminal : IDisposable
    {
        private readonly SynchronizationContext? saved = SynchronizationContext.Current;
        private readonly IApplication app;
        private readonly PlannerWindow window;
        private readonly Action end;

        internal Terminal(Bench bench, bool colour = true)
        {
            app = QuietOutput.NewApplication(colour, new VirtualTimeProvider());
            app.Init(DriverRegistry.Names.ANSI);
            // Where this fails the library has changed: the program then runs with its own output, and says more than it needs.
            Assert.IsType<QuietOutput>(app.Driver!.GetOutput());
            app.Driver!.SetScreenSize(80, 24);
            window = new PlannerWindow(bench.Desk, colour);
            SessionToken token = app.Begin(window)!;
            end = () => app.End(token);
            // The library leaves its own context on the thread; tests go on without it.
            SynchronizationContext.SetSynchronizationContext(saved);
            app.LayoutAndDraw(true);
        }

        internal string Text => app.Driver!.ToString()!;

        /// <summary>The signs that went to the terminal last, without their codes.</summary>
        internal string Sent => System.Text.RegularExpressions.Regex.Replace(app.Driver!.GetOutput().GetLastOutput(), @"\u001b\[[0-9;?]*[A-Za-z]", "");

        internal string Ansi => app.Driver!.ToAnsi();

        internal void Press(params Key[] keys)
        {
            foreach (Key key in keys)
                app.InjectKey(key);
            app.LayoutAndDraw();
        }

        internal void Paste(string text)
        {
            app.RaisePasteEvent(text);
            app.LayoutAndDraw();
        }

        internal void Click(int x, int y)
        {
            app.InjectSequence(InputInjectionExtensions.LeftButtonClick(new System.Drawing.Point(x, y)));
            app.LayoutAndDraw();
        }

        internal void Resize(int width, int height)
        {
            app.Driver!.SetScreenSize(width, height);
            app.LayoutAndDraw(true);
        }

        public void Dispose()
        {
            end();
            window.Dispose();
            app.Dispose();
            SynchronizationContext.SetSynchronizationContext(saved);
        }
    }
}

/// <summary>The library's settings belong to the whole process, so these tests run by themselves.</summary>
[CollectionDefinition(nameof(OneTerminalAtATime), DisableParallelization = true)]
public class OneTerminalAtATime;
