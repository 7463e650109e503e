using System.Diagnostics;
using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Time;
using Terminal.Gui.Views;
using static PackPlanner.Benchmarks.LargeJobs;

namespace PackPlanner.Benchmarks;

/// <summary>How soon the screens answer: key to screen, first paint against an empty window, memory with a large job.</summary>
internal static class ScreensTargets
{
    /// <summary>Prints the whole table, or does one part of it in a process of its own.</summary>
    internal static void Run(IReadOnlyList<string> parts)
    {
        switch (parts)
        {
            case ["empty"]:
                PrintFirstPaint(null);
                break;
            case ["first"]:
                PrintFirstPaint(Folder());
                break;
            case ["keys"]:
                PrintKeys();
                break;
            case ["large", string folder]:
                Console.WriteLine(MakeLarge(folder));
                break;
            case ["memory", string file]:
                PrintMemory(file);
                break;
            case ["lot"]:
                PrintLot();
                break;
            default:
                PrintKeys();
                PrintLot();
                PrintRatio();
                PrintLarge();
                break;
        }
    }

    private static void PrintKeys()
    {
        string folder = Folder();
        Queue<Action> back = new();
        Desk desk = DeskIn(folder, back);
        OpenCells(desk, Cells, series: 20, parallel: 10);
        using ShownDesk shown = new(desk, 80, 24);
        Await(desk, back);
        Console.WriteLine($"{Cells} cells, key to screen, ms      least     p50     p95     worst    processor p50     p95");
        foreach ((int width, int height) in new[] { (80, 24), (120, 36) })
        {
            shown.Resize(width, height);
            for (int step = 0; step < 8; step++)
            {
                desk.GoTo(step);
                shown.Press(Key.CursorDown);
                Await(desk, back);
                Console.WriteLine(Row($"{width}x{height} {desk.Step.Name}", Times(shown, [Key.CursorDown, Key.CursorDown, Key.PageDown, Key.CursorUp, Key.CursorRight, Key.CursorLeft], 120)));
            }
        }

        // A key while the same cells are matched anew: 400 groups of 20 keep the search busy.
        desk.GoTo(1);
        desk.Do(JobChanges.Set("series", new Given(new JobValue.Number(400), Origin.You(desk.Today))));
        desk.Do(JobChanges.Set("parallel", new Given(new JobValue.Number(20), Origin.You(desk.Today))));
        shown.Press(Key.CursorDown);
        bool working = desk.IsWorking;
        Console.WriteLine(Row($"while matching{(working ? "" : " (ended before)")}", Times(shown, [Key.CursorDown, Key.CursorUp], 60)));
        shown.Press((Key)'s');
        Console.WriteLine(Row("sort (s, S)", Times(shown, [(Key)'s', (Key)'S'], 20)));
        Remove(folder);
    }

    // A lot of 1,000 cells of which every fourth was tested again in another slot: a limit, a value, and each taken back, until the new verdicts stand on the screen.
    private static void PrintLot()
    {
        string folder = Folder();
        Queue<Action> back = new();
        Desk desk = DeskIn(folder, back);
        OpenCells(desk, 1000, series: 20, parallel: 10, repeats: 4);
        using ShownDesk shown = new(desk, 120, 36);
        desk.GoTo(1);
        shown.Press(Key.CursorDown);
        Await(desk, back);
        int turn = 0;
        (double[] Clock, double[] Processor) Changed(Func<int, JobChange> change) => Times(
            () =>
            {
                desk.Do(change(turn++));
                shown.Press(Key.CursorDown);
                if (desk.Answers.IsJudging || desk.Answers.Lot is null)
                    throw new InvalidOperationException("The verdicts did not stand on the screen that followed the change.");
            },
            60);
        Console.WriteLine($"{desk.Job!.Rows.Count} tests of 1000 cells, change to new verdicts on the screen, ms; the groups follow aside, and their work counts as processor time");
        Console.WriteLine(Row("a limit is changed", Changed(i => JobChanges.Set("minShareOfRated", new Given(new JobValue.Number(0.75 + (0.001 * (i % 50))), Origin.You(desk.Today))))));
        Console.WriteLine(Row("a value is changed", Changed(i => JobChanges.Edit(new CellKey("T00500", 1, CellField.CapacityAh), new CellEdit(new JobValue.Number(4 + (0.001 * i)), Origin.You(desk.Today))))));
        Console.WriteLine(Row("a change is taken back", Times(
            () =>
            {
                shown.Press((Key)'u');
                shown.Press(Key.CursorDown);
            },
            60)));
        Remove(folder);
    }

    // Beside the clock the processor time of the whole process: on a machine that others keep busy the clock tells of them.
    private static (double[] Clock, double[] Processor) Times(ShownDesk shown, Key[] keys, int count)
    {
        int next = 0;
        return Times(() => shown.Press(keys[next++ % keys.Length]), count);
    }

    private static (double[] Clock, double[] Processor) Times(Action press, int count)
    {
        // The first keys also pay for the compiler; they are not what a user feels all day.
        for (int i = 0; i < 60; i++)
            press();
        double[] ms = new double[count];
        double[] worked = new double[count];
        for (int i = 0; i < count; i++)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            long from = Stopwatch.GetTimestamp();
            press();
            ms[i] = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
            worked[i] = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
        }

        Array.Sort(ms);
        Array.Sort(worked);
        return (ms, worked);
    }

    private static string Row(string what, (double[] Clock, double[] Processor) ms) => string.Create(
        CultureInfo.InvariantCulture,
        $"{what,-34}{ms.Clock[0],7:0.0} {At(ms.Clock, 0.5),7:0.0} {At(ms.Clock, 0.95),7:0.0} {ms.Clock[^1],9:0.0} {At(ms.Processor, 0.5),16:0.0} {At(ms.Processor, 0.95),7:0.0}");

    private static double At(double[] sorted, double share) => sorted[(int)(sorted.Length * share)];

    // Both in processes of their own, turn about, so that what the machine does beside falls on both.
    private static void PrintRatio()
    {
        List<double> empty = [], first = [];
        for (int i = 0; i < 9; i++)
        {
            empty.Add(double.Parse(Child("empty").Single(), CultureInfo.InvariantCulture));
            first.Add(double.Parse(Child("first").Single(), CultureInfo.InvariantCulture));
        }

        empty.Sort();
        first.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"first paint: empty window {empty[4]:0} ms, PackPlanner {first[4]:0} ms, ratio {first[4] / empty[4]:0.00} (medians of 9)"));
    }

    // The job is made by a process of its own, so that the one which is measured holds what a user's does and no more.
    private static void PrintLarge()
    {
        string folder = Folder();
        string file = Child("large", folder).Single();
        foreach (string line in Child("memory", file))
            Console.WriteLine(line);
        Remove(folder);
    }

    private static string[] Child(params string[] parts)
    {
        using Process child = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, [typeof(ScreensTargets).Assembly.Location, "screens", .. parts]) { RedirectStandardOutput = true })!;
        string text = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        return text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    private static void PrintFirstPaint(string? folder)
    {
        if (folder is null)
        {
            using IApplication app = Application.Create(new VirtualTimeProvider());
            app.Init(DriverRegistry.Names.ANSI);
            app.Driver!.SetScreenSize(80, 24);
            using Runnable window = new();
            app.Begin(window);
            app.LayoutAndDraw(true);
            Print();
            return;
        }

        Desk desk = DeskIn(folder, new());
        using ShownDesk shown = new(desk, 80, 24);
        Print();
        Remove(folder);

        static void Print() => Console.WriteLine((DateTime.Now - Process.GetCurrentProcess().StartTime).TotalMilliseconds.ToString("0.0", CultureInfo.InvariantCulture));
    }

    private static void PrintMemory(string file)
    {
        string folder = Folder();
        Queue<Action> back = new();
        Desk desk = DeskIn(folder, back);
        desk.Store.OpenFile(file);
        using ShownDesk shown = new(desk, 120, 36);
        for (int step = 0; step < 8; step++)
        {
            desk.GoTo(step);
            shown.Press(Key.CursorDown);
            Await(desk, back);
        }

        using Process me = Process.GetCurrentProcess();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"memory with {Cells} cells and a log of {LogRows} rows x {Groups} groups: {me.WorkingSet64 / 1e6:0} MB now, {me.PeakWorkingSet64 / 1e6:0} MB at most; job file {new FileInfo(file).Length / 1e6:0.0} MB; live {GC.GetTotalMemory(true) / 1e6:0} MB"));
        Remove(folder);
    }
}
