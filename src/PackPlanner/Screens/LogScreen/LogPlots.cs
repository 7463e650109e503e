using System.Runtime.CompilerServices;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Plots;

namespace PackPlanner.Screens.LogScreen;

/// <summary>The plots above the tables of the Log step: volts, volts against the median, drop of each group, groups at rest.</summary>
internal sealed class LogPlots
{
    private static readonly string[] Names = ["volts", "against the median", "drop of each group", "at rest"];

    // Two logs beside one another leave each so little.
    private const int Narrow = 60;

    private readonly SortedSet<int> chosen = [];
    private readonly ConditionalWeakTable<RideLog, KeptRests> rests = [];
    private readonly ConditionalWeakTable<RideLog, KeptCurves> curves = [];
    private int kind;
    private int rest;

    /// <summary>What part of the time is shown, and whether the plot has the keys.</summary>
    internal PlotWindow Window { get; } = new();

    /// <summary>Another log of the job is drawn at the right.</summary>
    internal bool IsBeside { get; set; }

    internal string NextName => Names[(kind + 1) % Names.Length];

    internal void Next() => kind = (kind + 1) % Names.Length;

    /// <summary>Moves in time; at rest, to the rest before or after.</summary>
    internal bool Move(string key)
    {
        if (kind != 3 || key is not ("Left" or "Right"))
            return Window.Move(key);
        rest += key == "Left" ? -1 : 1;
        return true;
    }

    /// <summary>Why moving shows nothing else; null where it may.</summary>
    internal string? WhyNotMoved => kind switch
    {
        0 or 1 when Window.IsWhole => "All of the time is shown: z looks nearer, then left and right move in it.",
        2 => "The drop of each group is that of the whole log: there is no time to move in.",
        _ => null,
    };

    /// <summary>Asks which groups are drawn; none ticked: the one under the cursor.</summary>
    internal void Choose(Desk desk, int groups) => desk.Show(new ListOverlay(
        desk, "groups drawn; none ticked: the one under the cursor",
        () => [.. Enumerable.Range(1, groups).Select(group => new ListItem($"group {group}", chosen.Contains(group) ? "drawn" : "", () => Tick(group)))],
        staysOpen: true));

    /// <summary>One log's plot.</summary>
    /// <param name="area">Where.</param>
    /// <param name="log">The log.</param>
    /// <param name="known">What was found in it; null when that is not known yet, and then nothing that needs it is drawn.</param>
    /// <param name="ratedAh">Rated capacity of a group; null when not known.</param>
    /// <param name="fallback">Groups to draw when none was chosen.</param>
    /// <param name="which">Names the log where a job has several, with a colon; blank else.</param>
    internal void Paint(Area area, RideLog log, RideDiagnosis? known, double? ratedAh, IReadOnlyList<int> fallback, string which)
    {
        int[] groups = [.. (chosen.Count > 0 ? chosen.AsEnumerable() : fallback).Where(group => group <= log.Groups)];
        string named = groups.Length == 0 ? "" : $"group{(groups.Length > 1 ? "s" : "")} {string.Join(", ", groups)} ";
        switch (kind)
        {
            case 0:
                Head(area, "V", $"{which}{named}{(named.Length > 0 ? "and " : "")}median m{Window.Words}");
                BrailleCurves.Paint(area.From(1), Volts(log, groups), "h");
                break;
            case 1:
                Head(area, "mV", $"{which}{named}less the median{Window.Words}");
                BrailleCurves.Paint(area.From(1), LogCurves.Apart(Volts(log, groups)), "h");
                break;
            case 2:
                PaintDrops(area, known, groups, which);
                break;
            default:
                PaintRest(area, log, ratedAh, groups, which);
                break;
        }
    }

    // Every row of a log is looked at for its dives; a key that changes nothing of it must not do that again.
    private IReadOnlyList<BrailleCurves.Curve> Volts(RideLog log, int[] groups)
    {
        string of = $"{string.Join(' ', groups)} {Window.From:R} {Window.To:R}";
        if (!curves.TryGetValue(log, out KeptCurves? kept) || kept.Of != of)
            curves.AddOrUpdate(log, kept = new KeptCurves(of, LogCurves.Of(log, groups, Window.From, Window.To)));
        return kept.Curves;
    }

    /// <summary>The volts alone, for a log of which nothing is known yet.</summary>
    internal void PaintVolts(Area area, RideLog log, string which)
    {
        Head(area, "V", $"{which}median m{Window.Words}");
        BrailleCurves.Paint(area.From(1), Volts(log, []), "h");
        area.Cursor(0, 0);
    }

    private void PaintDrops(Area area, RideDiagnosis? known, int[] groups, string which)
    {
        if (known?.Loaded is not { CurrentA: > 0 } loaded)
        {
            Head(area, "", $"{which}drop of each group: {(known is null ? "the log is not judged yet" : "the log shows no steps of current")}");
            return;
        }
        double[] drops = [.. known.Groups.Select(g => g.ResistanceMilliohm?.Value * loaded.CurrentA ?? double.NaN)];
        double median = known.MedianMilliohm * loaded.CurrentA ?? double.NaN;
        Head(area, "mV", $"{which}drop{(area.Width < Narrow ? "" : " of each group")} at {area.Look.Figure(loaded.CurrentA, 0)} A{(area.Width < Narrow ? ", m" : " against the median m,")} {area.Look.Figure(median, 0)} mV");
        MedianStrip.Paint(area.From(1), [.. drops.Select(drop => drop - median)], "mV", groups);
    }

    private void PaintRest(Area area, RideLog log, double? ratedAh, int[] groups, string which)
    {
        IReadOnlyList<LogRest> found = ratedAh is > 0 ? RestsOf(log, ratedAh.Value) : [];
        if (found.Count == 0)
        {
            Head(area, "", $"{which}at rest: the log has no rest of a minute");
            return;
        }
        rest = Math.Clamp(rest, 0, found.Count - 1);
        LogRest at = found[rest];
        Head(area, "mV", $"{which}rest {rest + 1} of {found.Count}, {area.Look.Figure(at.FromS / 3600, 2)} h{(area.Width < Narrow ? "," : $", {area.Look.Figure(at.LengthS / 60, 0)} min, less the median")} m {area.Look.Figure(at.MedianV, 3)} V");
        MedianStrip.Paint(area.From(1), [.. at.ApartV.Select(v => 1000 * v)], "mV", groups);
    }

    private void Head(Area area, string unit, string words)
    {
        if (Window.HasFocus)
            area.Write(0, 0, ">", Ink.Accent | Ink.Bold);
        area.Write(Window.HasFocus ? 1 : 0, 0, unit, Ink.Bold);
        area.Write(4, 0, TextWidth.Cut(area.Look.Of(words), area.Width - 6), Window.HasFocus ? Ink.Accent | Ink.Bold : Ink.Plain);
    }

    private void Tick(int group)
    {
        if (!chosen.Remove(group))
            chosen.Add(group);
    }

    // Asked for once, not at each drawing. Readings that are stated anew make another log; nothing is kept of one that is gone.
    private IReadOnlyList<LogRest> RestsOf(RideLog log, double ratedAh)
    {
        KeptRests kept = rests.GetOrCreateValue(log);
        if (kept.RatedAh != ratedAh)
            (kept.RatedAh, kept.Rests) = (ratedAh, LogRest.Of(log, ratedAh));
        return kept.Rests;
    }

    private sealed record KeptCurves(string Of, IReadOnlyList<BrailleCurves.Curve> Curves);

    private sealed class KeptRests
    {
        internal double RatedAh { get; set; }

        internal IReadOnlyList<LogRest> Rests { get; set; } = [];
    }
}
