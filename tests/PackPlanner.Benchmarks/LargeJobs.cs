using System.Diagnostics;
using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Benchmarks;

/// <summary>Jobs and desks for measuring the screens, made in folders of their own.</summary>
internal static class LargeJobs
{
    internal const int Cells = 10_000;
    internal const int LogRows = 300_000;
    internal const int Groups = 16;

    internal static string Folder() => Directory.CreateTempSubdirectory("packplanner-targets").FullName;

    internal static Desk DeskIn(string folder, Queue<Action> back) => new(
        new Surroundings
        {
            Now = () => DateTime.Now,
            JobsFolder = Path.Combine(folder, "jobs"),
            LastJobFile = Path.Combine(folder, "last-job.txt"),
            Aside = action => Task.Run(action),
            Tidy = Surroundings.GiveBack,
            Back = action =>
            {
                lock (back)
                    back.Enqueue(action);
            },
        },
        new Look());

    // The last change may still be on its way to the disk.
    internal static void Remove(string folder)
    {
        for (int tries = 0; Directory.Exists(folder); tries++)
        {
            try
            {
                Directory.Delete(folder, recursive: true);
            }
            catch (IOException) when (tries < 20)
            {
                Thread.Sleep(100);
            }
        }
    }

    // Answers come back on this thread, as they do in the program.
    internal static void Await(Desk desk, Queue<Action> back)
    {
        long from = Stopwatch.GetTimestamp();
        do
        {
            desk.Draw(80, 24);
            while (true)
            {
                Action? next;
                lock (back)
                    back.TryDequeue(out next);
                if (next is null)
                    break;
                next();
            }
            Thread.Sleep(5);
        }
        while (desk.IsWorking && Stopwatch.GetElapsedTime(from).TotalSeconds < 120);
    }

    internal static string MakeLarge(string folder)
    {
        Desk making = DeskIn(folder, new());
        OpenCells(making, Cells, series: 16, parallel: 10);
        making.Do(JobChanges.AddLog(new JobLog(new JobSource("s2", "season.csv", new string('0', 64), SourceKind.PackLog, ["invented"]), Season(), 0)));
        return making.Open!.File;
    }

    internal static RideLog Season()
    {
        double[] time = new double[LogRows], current = new double[LogRows];
        double[][] volts = [.. Enumerable.Range(0, Groups).Select(_ => new double[LogRows])];
        double drawnAh = 0;
        for (int i = 0; i < LogRows; i++)
        {
            time[i] = i;
            bool rest = i % 600 < 60;
            current[i] = rest ? 0 : i / 7200 % 2 == 0 ? 10 + (i * 7 % 13) : -16;
            drawnAh = Math.Clamp(drawnAh + (current[i] / 3600), 0, 40);
            for (int g = 0; g < Groups; g++)
                volts[g][i] = Math.Round(4.15 - (1.0 * drawnAh / 42) - (current[i] * 0.003) - (g * 0.0002), 3);
        }

        return new RideLog { TimeS = time, CurrentA = current, GroupV = volts, UsualStepS = 1, Source = "season.csv" };
    }

    internal static void OpenCells(Desk desk, int cells, int series, int parallel, int repeats = 0)
    {
        desk.Store.New("Large lot");
        CellRow[] rows = [.. Enumerable.Range(1, cells).Select(i => new CellRow
        {
            Label = $"T{i:00000}",
            File = "cells.csv",
            Line = i + 1,
            CapacityAh = 3.8 + (0.001 * (i * 7919 % 1000)),
            CapacityStepAh = 0.001,
            ResistanceMilliohm = 30 + (0.01 * (i * 104729 % 900)),
            ResistanceKind = ResistanceKind.Dc,
            RestV = 3.6 + (0.001 * (i % 50)),
            Slot = ((i % 4) + 1).ToString(CultureInfo.InvariantCulture),
        })];
        if (repeats > 0)
            rows = [.. rows, .. rows.Where((_, i) => i % repeats == 0).Select((row, i) => row with
            {
                Line = cells + i + 2,
                CapacityAh = row.CapacityAh + (0.002 * ((i % 7) - 3)),
                Slot = (((i + 1) % 4) + 1).ToString(CultureInfo.InvariantCulture),
            })];
        desk.Do(JobChanges.AddTable(new JobTable(new JobSource("s1", "cells.csv", new string('0', 64), SourceKind.Cells, ["invented"]), rows, 0)));
        foreach ((string key, JobValue value) in new (string, JobValue)[]
        {
            ("chemistry", new JobValue.Word("NMC")), ("ratedAh", new JobValue.Number(5)),
            ("series", new JobValue.Number(series)), ("parallel", new JobValue.Number(parallel)),
        })
            desk.Do(JobChanges.Set(key, new Given(value, Origin.You(desk.Today))));
    }
}
