using PackPlanner.Formats;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Reading;
using PackPlanner.Screens.Window;
using Terminal.Gui.App;
using Terminal.Gui.Configuration;
using Terminal.Gui.Drivers;

namespace PackPlanner.Screens;

/// <summary>Starts and ends the text screens: terminal, signals, the job that was open last.</summary>
internal static class ScreenStart
{
    /// <summary>Whether these words ask for the text screens: none, or one job file, with options that concern looks.</summary>
    internal static bool IsAsked(string[] args) =>
        ScreenOptions.Read(args) is { } options && (options.Job is null || LooksLikeJob(options.Job));

    /// <summary>The job that these words ask to open; null when they ask for something else.</summary>
    internal static string? JobAsked(string[] args) => IsAsked(args) ? ScreenOptions.Read(args)!.Job : null;

    /// <summary>What to do instead where there is no terminal.</summary>
    internal static Refusal NoTerminal(string job) => Refusal.CommandLine(
        "no-terminal", job, "the text screens need a terminal at both ends",
        $"packplanner job show {job} prints the job; packplanner help lists what else can be asked without a terminal.");

    /// <summary>Whether both ends are a terminal; without one the library would run for ever and show nothing.</summary>
    internal static bool HasTerminal => !Console.IsInputRedirected && !Console.IsOutputRedirected;

    /// <summary>Runs the screens until the user leaves or a signal ends them.</summary>
    /// <returns>0, or 128 plus the signal's number.</returns>
    internal static int Run(string[] args)
    {
        ScreenOptions options = ScreenOptions.Read(args)!;
        bool colour = options.Color switch
        {
            "never" => false,
            "always" => true,
            _ => !TerminalAbilities.HasFewColours(Environment.GetEnvironmentVariable) && TerminalEnvironmentDetector.DetectColorCapabilities().Capability is ColorCapabilityLevel.Colors256 or ColorCapabilityLevel.TrueColor,
        };
        Surroundings around = Surroundings.OfThisMachine();
        Desk desk = new(around, new Look(options.Ascii || (!OperatingSystem.IsWindows() && TerminalAbilities.IsPlain(Environment.GetEnvironmentVariable)), options.DecimalComma, options.UsUnits));
        using PastedFiles pasted = desk.Pasted;
        desk.Store.Resume(options.Job);
        return Run(desk, around, colour);
    }

    private static int Run(Desk desk, Surroundings around, bool colour)
    {
        // A turn every 25 ms: slower would be felt at the keys, quicker costs more of a core while nobody types.
        Application.MaximumIterationsPerSecond = 40;
        Driver.Force16Colors = true;
        DriverSettings.Defaults.SizeDetection = SizeDetectionMode.Polling;
        using IApplication app = QuietOutput.NewApplication(colour);
        app.Init();
        using PlannerWindow window = new(desk, colour);
        using EndingSignals signals = new();
        around.Back = action => app.Invoke(action);
        around.Redraw = window.SetNeedsDraw;
        around.Copy = text => ClipboardSequence.Write(app, text);
        app.Iteration += (_, _) =>
        {
            if (signals.ExitCode != 0)
                app.RequestStop();
        };
        app.AddTimeout(TimeSpan.FromMilliseconds(200), () =>
        {
            if (desk.IsWorking)
                window.SetNeedsDraw();
            return true;
        });
        app.Run(window, fault =>
        {
            desk.Says = FaultReport.Write(fault).Problem.Remedy;
            window.SetNeedsDraw();
            return true;
        });
        desk.Store.RememberPlaceNow();
        return signals.ExitCode;
    }

    // A word without a dash that names a file, or could only be one, is a job; anything else is a misspelt verb.
    private static bool LooksLikeJob(string word) =>
        File.Exists(word) || word.EndsWith(".json", StringComparison.OrdinalIgnoreCase);
}
