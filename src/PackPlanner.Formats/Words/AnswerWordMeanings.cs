namespace PackPlanner.Formats.Words;

/// <summary>What the other words mean that stand in answers and on the screens by name: verdicts, signal words, events, ends, limits.</summary>
public static class AnswerWordMeanings
{
    internal const string Verdict = "verdict";
    private const string Signal = "signal word";
    private const string Event = "event of a log";
    private const string End = "how it ended";
    private const string Absent = "why a figure is absent";
    private const string Layout = "reason of fit";
    private const string Size = "limit or reason of size";
    private const string Origin = "whose limit";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<CodeMeaning> All { get; } =
    [
        new("use", Verdict, "no limit that was checked speaks against the cell; what was not checked stands beside it", "Keep it for the pack."),
        new("hold", Verdict, "a limit lies within the doubt of the reading, the capacity is missing, or the test was broken off", "Do what its reason says, then judge again; until then it goes into no pack."),
        new("reject", Verdict, "the cell is beyond a limit by more than the reading's doubt, or a caution forbids it", "Keep it out; what its caution says goes before all else."),
        new("danger", Signal, "it will kill or maim if it is not heeded", "Stop, and do what stands beside it before anything else."),
        new("warning", Signal, "it could kill or maim", "Do what stands beside it before you go on."),
        new("caution", Signal, "it could injure slightly", "Do what stands beside it."),
        new("notice", Signal, "it concerns property, or says that a check could not be made", "Read it; what was not checked is no pass."),
        new("ride-ended", Event, "a discharge of some length ended; its volts and who ended it stand beside it", "See which group was lowest: it limits the ride."),
        new("charge-ended", Event, "a charge of some length ended; its volts stand beside it", "See which group was highest: it ends the charge."),
        new("below-limit", Event, "a group was under its lowest volts while current flowed", "Find out why nothing cut off; see caution-15."),
        new("above-limit", Event, "a group was over its highest volts while current flowed", "Find out why nothing cut off; see caution-15."),
        new("gap-under-load", Event, "rows are missing while current flowed, so that charge passed uncounted", "Log without holes."),
        new("charged-cold", Event, "charge flowed into a cold pack", "Warm it before charging; see caution-11."),
        new("hot", Event, "a probe read hotter than cells bear", "Let it cool and find out why; see caution-12."),
        new("hot-on-charge", Event, "a probe read hot while charge flowed in", "Charge with less current, or cooler; see caution-12."),
        new("warmer-than-others", Event, "one probe read clearly warmer than the others under load", "Look at the joints near it; see caution-13."),
        new("warming-at-rest", Event, "a probe went on warming while no current flowed", "Take the pack outside and watch it; see caution-13."),
        new("not-read", Event, "a group's volts were not read, or stood still, for a while", "Look at its sense wire."),
        new("mirrored", Event, "two neighbours read wrong by opposite amounts, so that the sense wire between them reads wrong or is loose", "Look at that wire, and measure both groups with a meter; see caution-16."),
        new("cut-off", End, "the step ended at its voltage limit under full current", "Nothing: this is a whole test."),
        new("current-taper", End, "the step ended at its voltage limit, held there while the current fell", "Nothing: this is a whole charge."),
        new("aborted", End, "the step ended before its voltage limit, so that its charge is no capacity", "Repeat the test to its end."),
        new("cell-cut-off", End, "a group reaches the lowest volts of its cells first, under load", "Balance or strengthen that group to go further."),
        new("controller-low-voltage", End, "the whole pack reaches the controller's lowest volts before any group reaches its own", "Set the controller lower if it may be, or add groups in series."),
        new("time-limit", End, "the search was ended by --time-limit, with the best so far", "Leave the limit out for the same answer each time."),
        new("not-to-be-charged", Absent, "a caution forbids charging this cell or group, so that it gets no volts and no place", "Do what its caution says."),
        new("nothing-to-compare", Absent, "one group alone is told, and stands level with nothing", "Tell where the others stand."),
        new("too-early", Absent, "too few days passed between the two readings to tell self-discharge", "Read again after the days that the answer names."),
        new("coarse-meter", Absent, "the meter's last digit is coarser than what self-discharge would move", "Wait longer, or read with a finer meter."),
        new("flat-curve", Absent, "volts hardly change with charge there", "Count the charge instead."),
        new("rose", Absent, "the later reading is the higher one", "Let the cell rest before both readings."),
        new("no-curve", Absent, "the chemistry is not known", "Say --chemistry."),
        new("not-measured", Absent, "there are no two dated resting voltages", "Take them some weeks apart."),
        new("cell-too-large", Layout, "one cell with its clearances is larger than the space", "Use a smaller cell or a larger space."),
        new("keep-outs-fill-cavity", Layout, "the cells would fit if nothing else were in the space", "Move what is in the way."),
        new("outline-too-narrow", Layout, "no part of the space is wide enough for one cell with its clearances", "Use a smaller cell, or turn it."),
        new("too-few-places", Layout, "the space holds fewer cells than are needed", "Lower the number in parallel, or take a larger space."),
        new("no-series-path", Layout, "the places cannot be cut into groups that touch one after the other", "Change the order, or allow jumpers."),
        new("mass-over", Layout, "the pack weighs more than the stated limit", "Use fewer or lighter cells."),
        new("stopped-early", Layout, "the search was stopped before it had tried all that it would", "Let it look longer."),
        new("does-not-fit", Size, "the space does not take so many in series", "Run packplanner fit on it to see what is short."),
        new("series-open", Size, "neither the controller's volts nor the charger's nor S are given", "Give one of them."),
        new("controller-window", Size, "no number in series keeps within the controller's volts, full and empty", "Take another controller or cell."),
        new("charger-volts", Size, "no number in series suits this charger", "Take another charger."),
        new("charger-against-controller", Size, "the numbers that suit the charger are not those that suit the controller", "Change one of the two."),
        new("voltage-over-controller", Size, "the full pack has more volts than the controller bears", "Use fewer in series."),
        new("cutoff-under-controller", Size, "the controller stops before the cells are empty", "Use more in series, or set it lower if it may be."),
        new("charger-mismatch", Size, "the charger's volts are not those of the full pack", "Take a charger for this number in series."),
        new("cell-peak-current", Size, "a cell gives more at the peak than its data sheet allows", "Put more in parallel."),
        new("cell-continuous-current", Size, "a cell gives more all the time than its data sheet allows", "Put more in parallel."),
        new("range-short", Size, "the range wanted is not reached", "Put more in parallel."),
        new("touch-voltage", Size, "the full pack has volts that are dangerous to touch", "Have it done by somebody qualified; see caution-09."),
        new("fuse-too-small", Size, "the fuse named is smaller than 1.25 times the continuous current asks for", "Take the next rating, if wire and cells bear it."),
        new("fuse-over-cell-current", Size, "the fuse named lets more pass than the cells may give", "Take a smaller one, or more in parallel."),
        new("fuse-voltage", Size, "the fuse named is not rated for the volts of the full pack", "Take one with enough DC volts."),
        new("fuse-breaking", Size, "the fuse named cannot break the short-circuit current", "Take one of higher breaking capacity; see caution-21."),
        new("charge-too-cold", Size, "it is to be charged colder than the cell's data sheet allows", "Warm it before charging; see caution-11."),
        new("peak-power-short", Size, "the peak power takes more current than the controller gives", "Use more in series, or another controller."),
        new("speed-short", Size, "the speed wanted is not reached", "Use more volts, or another motor or gear."),
        new("regen-over-cell-charge", Size, "braking gives back more current than the cells may be charged with", "Lower it in the controller, or put more in parallel."),
        new("user", Origin, "you gave this limit", "Change your option to change it."),
        new("data-sheet", Origin, "the limit is the data sheet's", "Keep it."),
        new("chemistry", Origin, "the limit is that of the chemistry", "Keep it, or give the data sheet's."),
        new("lot-median", Origin, "the limit is taken from the middle of the lot, as none was given", "Give --rated-ah, --min-percent or --max-milliohm for one of your own."),
        new("common-practice", Origin, "the limit is what the trade commonly does; no source is known", "Give one of your own if you know better."),
    ];
}
