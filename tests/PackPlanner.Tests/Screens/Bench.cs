using PackPlanner.Core.Cells;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>The screens without a terminal: a desk in a folder of its own, a clock that stands, work done at once.</summary>
internal sealed class Bench : IDisposable
{
    internal static readonly DateTime Noon = new(2026, 11, 2, 12, 0, 0);

    /// <summary>A full search that tests have the time for.</summary>
    internal static readonly FitEffort FullSearch = new(2);

    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-screens").FullName;

    internal Bench(Look? look = null)
    {
        Desk = NewDesk(look);
    }

    internal Desk Desk { get; private set; }

    internal string JobsFolder => Path.Combine(folder, "jobs");

    /// <summary>Another desk on the same disk, as after a kill.</summary>
    internal Desk NewDesk(Look? look = null) => new(Around(() => Noon), look ?? new Look());

    /// <summary>
    /// The same job on a desk whose long work looks at <paramref name="whenTold"/> each time it tells how far it is: then it has certainly not ended.
    /// Each look at the clock is a second later, so that the work has long run when the screen is drawn.
    /// </summary>
    internal Desk SlowDesk(int step, Action<Desk> whenTold)
    {
        DateTime now = Noon;
        Desk? desk = null;
        desk = new Desk(
            Around(() => now = now.AddSeconds(1)) with
            {
                Redraw = () =>
                {
                    if (desk!.Work is { Best.Length: > 0 })
                        whenTold(desk);
                },
            },
            new Look());
        desk.Use(Desk.Open!, step);
        return desk;
    }

    /// <summary>A desk that has come back after the program was killed.</summary>
    internal void Restart()
    {
        Desk = NewDesk();
        Desk.Store.Resume(null);
    }

    internal void Press(params string[] keys)
    {
        foreach (string key in keys)
            Desk.Press(key);
    }

    internal void Type(string text) => Press([.. text.Select(letter => letter.ToString())]);

    internal string Text(int width = 80, int height = 24) => Desk.Draw(width, height).ToText();

    /// <summary>Step Log of the invented tractor.</summary>
    internal static Bench TractorsLog()
    {
        Bench bench = new();
        bench.Desk.Store.Demo("tractor");
        bench.Press("7");
        return bench;
    }

    /// <summary>A job with an invented lot: capacities and resistances by a rule, so that figures can be checked by hand.</summary>
    internal void OpenLot(int cells = 12, int? series = 4, int? parallel = 2)
    {
        Assert.True(Desk.Store.New("Test lot"));
        CellRow[] rows = [.. Enumerable.Range(1, cells).Select(i => new CellRow
        {
            Label = $"T{i:000}",
            File = "cells.csv",
            Line = i + 1,
            CapacityAh = 4.4 + (0.01 * (i * 7 % 11)),
            CapacityStepAh = 0.001,
            ResistanceMilliohm = 30 + (0.5 * (i * 5 % 9)),
            ResistanceKind = ResistanceKind.Dc,
            RestV = 3.6 + (0.001 * (i % 5)),
            Slot = ((i % 4) + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
        })];
        rows[0] = rows[0] with { CapacityAh = 3.999 };
        rows[1] = rows[1] with { CapacityAh = 3.091 };
        Desk.Do(JobChanges.AddTable(new JobTable(new JobSource("s1", "cells.csv", new string('0', 64), SourceKind.Cells, ["invented"]), rows, 0)));
        Set("chemistry", new JobValue.Word("NMC"));
        Set("ratedAh", new JobValue.Number(5.0));
        if (series is { } s)
            Set("series", new JobValue.Number(s));
        if (parallel is { } p)
            Set("parallel", new JobValue.Number(p));
    }

    /// <summary>A job of a space alone, with a round cell of 21 x 70 mm.</summary>
    internal void TypeSpace(string inside)
    {
        Desk.Store.New("Space");
        Press("4", "a", "Enter");
        Type(inside);
        Press("Enter");
        Type("21 x 70");
        Press("Enter", "Enter");
        Assert.True(Desk.Job!.FitCase is not null, Text(120, 36));
    }

    internal void Set(string key, JobValue? value) => Desk.Do(JobChanges.Set(key, value is null ? null : new Given(value, new Origin("you", Standing.Measured, new DateOnly(2026, 11, 2)))));

    private Surroundings Around(Func<DateTime> now) => new()
    {
        Now = now,
        JobsFolder = JobsFolder,
        LastJobFile = Path.Combine(folder, "state", "last-job.txt"),
        Aside = action => action(),
        FullSearch = FullSearch,
    };

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
