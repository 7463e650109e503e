using System.Text.RegularExpressions;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Reading;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Screens;

/// <summary>
/// Screens kept as text, with the inks beside them: regression values only. ACCEPT_GOLDEN=1 writes them anew; read the
/// difference before committing it.
/// </summary>
public partial class KeptScreensTests
{
    public static TheoryData<string, int, int> Kept
    {
        get
        {
            TheoryData<string, int, int> all = [];
            foreach (string name in new[] { "start", "job", "cells", "cells-where-from", "cells-cautions", "groups", "groups-keys", "commands", "energy", "energy-below", "reading", "reading-below", "cavity", "place", "taps", "log", "log-groups", "log-drop", "log-rest", "sheets", "cavity-choices", "cells-milliohm" })
            {
                all.Add(name, 80, 24);
                all.Add(name, 120, 36);
            }

            all.Add("cells", 60, 18);
            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Kept))]
    public void A_screen_is_as_it_was_kept(string name, int width, int height)
    {
        using Bench bench = new();
        GoTo(bench, name);

        Page page = bench.Desk.Draw(width, height);

        string text = WithoutFolders(page.ToText());
        // Figures of a diagnosis have kept answers of their own; here it is the layout that is kept.
        string shown = (name.StartsWith("log", StringComparison.Ordinal) ? Digits().Replace(text, "0") : text) + page.ToInks();
        string file = Repository.At("tests", "PackPlanner.Tests", "Golden", "Screens", $"{name}-{width}x{height}.txt");
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1")
            File.WriteAllText(file, shown);
        Assert.Equal(File.ReadAllText(file), shown);
    }

    // Where jobs lie depends on the machine, and how a line breaks depends on that.
    private static string WithoutFolders(string text) => InFolder().Replace(Lies().Replace(text, "$1(jobs)"), " Kept in (jobs)");

    [GeneratedRegex(@"(yours will lie in |written into |\d+ in (?=/|[A-Z]:))[^\s│]\S*[^\n│]*")]
    private static partial Regex Lies();

    [GeneratedRegex(@"\d")]
    private static partial Regex Digits();

    [GeneratedRegex(@"\s+Kept in[\s\S]*?(?=\n─)")]
    private static partial Regex InFolder();

    private static void SayHowItIsUsed(Bench bench)
    {
        foreach ((string key, double value) in new[]
        {
            ("steadyA", 6), ("peakA", 12), ("peakS", 20), ("cellMassKg", 0.069), ("linkMilliohm", 0.2), ("controllerLowV", 12.0), ("controllerHighV", 16.5),
            ("whPerKm", 9), ("cableM", 1.2), ("capacitanceMillifarad", 1), ("chargerA", 2), ("temperatureDegC", 8), ("reserve", 0.1),
        })
            bench.Set(key, new PackPlanner.Core.Jobs.JobValue.Number(value));
    }

    // Steps that need a space or a log are kept as the invented scenes show them.
    private static readonly Dictionary<string, (string Scene, string[] Keys)> Scenes = new()
    {
        ["cavity"] = ("scooter", ["4"]),
        ["cavity-choices"] = ("scooter", ["4", "Enter", "Down"]),
        ["sheets"] = ("trike", ["8", "Down", "Down", "Space"]),
        ["place"] = ("trike", ["5"]),
        ["taps"] = ("trike", ["5", "Tab", "Down"]),
        ["log"] = ("tractor", ["7"]),
        ["log-drop"] = ("tractor", ["7", "Tab", "t", "t"]),
        ["log-rest"] = ("tractor", ["7", "Tab", "t", "t", "t"]),
        ["log-groups"] = ("tractor", ["7", "t", "End"]),
    };

    private static void GoTo(Bench bench, string name)
    {
        if (name == "start")
            return;
        if (Scenes.TryGetValue(name, out (string Scene, string[] Keys) scene))
        {
            bench.Desk.Store.Demo(scene.Scene);
            bench.Press(scene.Keys);
            bench.Text();
            return;
        }

        bench.OpenLot();
        switch (name)
        {
            case "job": bench.Press("1", "Down", "Down"); break;
            case "cells": bench.Press("2"); break;
            case "cells-where-from": bench.Press("2", "="); break;
            case "cells-milliohm": bench.Press("2", "Right", "Right", "Right", "Right", "="); break;
            case "cells-cautions": bench.Press("2", "!"); break;
            case "groups": bench.Press("3", "Down"); break;
            case "groups-keys": bench.Press("3", "?"); break;
            case "energy":
                SayHowItIsUsed(bench);
                bench.Press("6");
                break;
            case "energy-below":
                SayHowItIsUsed(bench);
                bench.Press("6", "End");
                break;
            case "reading": ReadingStart.File(bench.Desk, Repository.Data("spellings", "logs", "charging-flag.csv")); break;
            case "reading-below":
                ReadingStart.File(bench.Desk, Repository.Data("spellings", "logs", "charging-flag.csv"));
                bench.Press("End");
                break;
            case "commands":
                bench.Press("3", ":");
                bench.Type("lock");
                break;
            default: throw new ArgumentException(name, nameof(name));
        }
    }
}
