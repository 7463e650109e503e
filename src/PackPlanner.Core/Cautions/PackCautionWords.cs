namespace PackPlanner.Core.Cautions;

/// <summary>What to beware of in building, charging and moving a pack: caution-18 to caution-34.</summary>
internal static class PackCautionWords
{
    internal static IReadOnlyList<CautionEntry> All { get; } =
    [
        new(
            "caution-18", SignalWord.Warning, "welding cylindrical cells",
            "Cylindrical cells stand on a weld or placement sheet.",
            "The can is negative right up to the rim round the positive button; a strip across the shoulder is a short.",
            "Put an insulating ring on every positive end, keep strips off the shoulder, practise on dead cells.",
            "Do not solder to a cell.",
            "CommonPractice"),
        new(
            "caution-19", SignalWord.Warning, "sense taps",
            "A sense-tap sheet is used.",
            "A tap in the wrong place puts several cells' volts across one input of the monitor.",
            "Measure every tap first: each step within 0.1 V of its group and of the right sign, from pack minus within 0.1 V or 0.5 %, whichever is more.",
            "One reading outside: stop, do not plug in.",
            "CommonPractice"),
        new(
            "caution-20a", SignalWord.Danger, "a cell the wrong way round",
            "Before the second side of a parallel group is joined.",
            "One reversed cell is a dead short through its neighbours.",
            "Measure from the joined side to every free end: all of one sign, and within the joining limit.",
            "Do not trust the wrapper's colour or the drawing.",
            "Kirchhoff; CommonPractice"),
        new(
            "caution-20b", SignalWord.Danger, "a group the wrong way round",
            "Before each series link.",
            "A reversed group makes the pack read low by twice its volts and is destroyed under load; a link across live volts closes a loop.",
            "The two points that a link will join must read 0 V, and their signs must match the sheet.",
            "Do not lay a link while a steady voltage stands between its ends.",
            "Kirchhoff; CommonPractice"),
        new(
            "caution-21", SignalWord.Warning, "short-circuit current above 1 kA",
            "Volts over the sum of the 1 kHz resistances and links is above 1000 A; where unknown, twice the DC figure.",
            "A dropped tool at this current melts and throws metal.",
            "Rings and watches off, insulated tools, cover finished parts; choose the fuse's breaking capacity above this figure and have a qualified person check it.",
            "Do not choose the breaking capacity from the DC figure.",
            "Kirchhoff; CommonPractice"),
        new(
            "caution-22", SignalWord.Caution, "no fuse for each cell",
            "More than four small cells stand in parallel and no cell or link fuse is stated.",
            "If one cell shorts, all the others feed it.",
            "Consider a fuse or a fusible link for each cell.",
            "Do not rely on the main fuse for this: its current does not pass there.",
            "Kirchhoff; CommonPractice"),
        new(
            "caution-23", SignalWord.Warning, "protection not stated",
            "Fuse, disconnect, pre-charge or a BMS with a cut-off for each group is not ticked.",
            "Each of them stops a different accident.",
            "Plan all four; sizes are for the makers' data and a qualified person.",
            "Do not ride it without them.",
            "CommonPractice"),
        new(
            "caution-24", SignalWord.Warning, "cell current above its rating",
            "The hardest-worked cell's share of the load exceeds its aged rating.",
            "It heats and ages ahead of the others, and takes the group with it.",
            "More cells in parallel, a smaller current, or a grouping with more even currents.",
            "Do not average the current over the group and call it enough.",
            "Gogoana2014; Kirchhoff"),
        new(
            "caution-25", SignalWord.Caution, "no room to swell",
            "Prismatic or pouch cells without clamping or swelling allowance, or rigid bars between them.",
            "They grow as they age; rigid bars tear terminals, free cells part.",
            "Follow the cell maker's clamping force, leave the allowance, use flexible links.",
            "Do not clamp harder than the maker says.",
            "CommonPractice"),
        new(
            "caution-26", SignalWord.Warning, "vents or terminals in a bad direction",
            "Vents or terminals face the rider, the wiring or a sealed space, or there is no way out for gas and water.",
            "A venting cell blows hot, poisonous, burning gas there.",
            "Turn the cells or fit a baffle, and give gas and water a way out.",
            "Do not seal the box tight round them.",
            "CommonPractice"),
        new(
            "caution-27", SignalWord.Caution, "heavy box",
            "A box weighs more than 25 kg.",
            "It injures backs and fingers, and a dropped pack is a damaged pack.",
            "Two people or a hoist; consider two boxes.",
            "Do not lift it over your own feet.",
            "CommonPractice"),
        new(
            "caution-28", SignalWord.Warning, "first charge",
            "The first charge of a new or changed pack.",
            "Every mistake in it shows now.",
            "Outdoors, watched, at half rate, nothing that burns near; feel and measure every group.",
            "Do not leave it, and do not charge overnight.",
            "CommonPractice"),
        new(
            "caution-29", SignalWord.Warning, "rejected cells, storage and transport",
            "A reject list is printed, or packing or transport is mentioned.",
            "Taped or not, damaged cells can still burn days later, and carriers' rules are strict.",
            "Tape the terminals, keep them in a non-burning bin outdoors; damaged cells need the special packing of this year's rules and do not fly.",
            "Do not put them in household waste or post them.",
            "UnTransport"),
        new(
            "caution-30", SignalWord.Notice, "outside what was measured",
            "The result lies outside the measured range of current, temperature or charge.",
            "It is an extrapolation, not a promise.",
            "Measure at the conditions of use, and put the figure in.",
            "Do not plan the last kilometre on it.",
            "CommonPractice"),
        new(
            "caution-31", SignalWord.Warning, "pack above the controller's highest volts",
            "The pack at full charge is above the highest volts that the controller allows.",
            "Its capacitors and switches can burst, or fail closed so that the motor runs by itself; braking into a full pack lifts the volts further.",
            "Fewer groups in series, or a controller that is made for these volts.",
            "Do not connect it to a full pack to see whether it holds.",
            "CommonPractice"),
        new(
            "caution-32", SignalWord.Warning, "charger that does not suit the pack",
            "The charger's end volts are more than 0.5 % above those of the full pack, or its current above what the cells may be charged with.",
            "It goes on charging past full, or heats and plates the cells on the way; only the monitor would stand between that and a fire.",
            "Set the charger lower or take another one; the data sheet of the cells comes first.",
            "Do not leave it to the monitor to end a charge.",
            "CommonPractice"),
        new(
            "caution-33", SignalWord.Warning, "a group that is not read",
            "A channel of the log never holds the volts of a cell, or keeps one reading while the other groups move.",
            "The protection is blind to that group: it can be driven empty, reversed or past full, and nothing stops it.",
            "Measure it with a meter; mend the sense wire, its contact or the monitor, and log again.",
            "Do not charge or ride on what the other groups show.",
            "CommonPractice"),
        new(
            "caution-34", SignalWord.Caution, "a way in that is too small",
            "No opening of the space lets the finished pack through, or not even one cell.",
            "What is forced through is dented, torn or shorted on the edge, with no way back.",
            "Plan a larger way in or another one, and measure it again, before anything is bought or built.",
            "Do not force cells through or bend the edge while they are inside.",
            "CommonPractice"),
    ];
}
