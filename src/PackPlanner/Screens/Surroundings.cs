using PackPlanner.Core.Fitting;

namespace PackPlanner.Screens;

/// <summary>What the screens need of the world around them, so that tests can give another one.</summary>
internal sealed record Surroundings
{
    /// <summary>The clock.</summary>
    internal required Func<DateTime> Now { get; init; }

    /// <summary>The folder of the user's jobs.</summary>
    internal required string JobsFolder { get; init; }

    /// <summary>The file that remembers which job was open.</summary>
    internal required string LastJobFile { get; init; }

    /// <summary>The file that remembers how files of each shape were corrected.</summary>
    internal string ReadingsFile => Path.Combine(Path.GetDirectoryName(LastJobFile)!, "readings.txt");

    /// <summary>Runs something beside the screen.</summary>
    internal required Action<Action> Aside { get; init; }

    /// <summary>How long the full search for places looks.</summary>
    internal FitEffort FullSearch { get; init; } = FitEffort.Full;

    /// <summary>Brings something back to the screen's own thread.</summary>
    internal Action<Action> Back { get; set; } = action => action();

    /// <summary>Asks the terminal to draw again.</summary>
    internal Action Redraw { get; set; } = () => { };

    /// <summary>Gives memory back that a long work has left behind.</summary>
    internal Action Tidy { get; init; } = () => { };

    /// <summary>Puts words on the terminal's clipboard; false when it cannot.</summary>
    internal Func<string, bool> Copy { get; set; } = _ => false;

    /// <summary>The user's own machine.</summary>
    internal static Surroundings OfThisMachine() => new()
    {
        Now = () => DateTime.Now,
        JobsFolder = Path.Combine(Documents(), "PackPlanner"),
        LastJobFile = Path.Combine(StateFolder(), "packplanner", "last-job.txt"),
        Aside = action => Task.Run(action),
        Tidy = GiveBack,
    };

    /// <summary>Puts what is live together and gives the rest back to the system; keys wait some hundredths of a second for it, once.</summary>
    internal static void GiveBack() => GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);

    private static string Documents()
    {
        string folder = Environment.GetFolderPath(Environment.SpecialFolder.MyDocuments, Environment.SpecialFolderOption.DoNotVerify);
        return folder.Length > 0 ? folder : Environment.CurrentDirectory;
    }

    private static string StateFolder()
    {
        string? stated = Environment.GetEnvironmentVariable("XDG_STATE_HOME");
        if (!string.IsNullOrEmpty(stated) && Path.IsPathRooted(stated))
            return stated;
        return OperatingSystem.IsWindows()
            ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData)
            : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local", "state");
    }
}
