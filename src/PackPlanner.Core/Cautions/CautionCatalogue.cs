namespace PackPlanner.Core.Cautions;

/// <summary>Every caution this program knows, in the order of its codes.</summary>
/// <remarks>
/// The words are starting points for people, not law: local codes and licensed practice come first. A caution can be
/// marked as read but never switched off. None of them calls anything safe.
/// </remarks>
public static class CautionCatalogue
{
    /// <summary>All entries, by code.</summary>
    public static IReadOnlyList<CautionEntry> All { get; } =
    [
        new(
            "caution-01", SignalWord.Warning, "deeply discharged cell",
            "A graphite-anode cell rests below 2.0 V, or an LTO cell below 1.5 V; from there up to the data-sheet cut-off it is held.",
            "Copper from the collector may have dissolved and settled where it can short the cell from inside; an LTO cell this low has left its data sheet.",
            "Set it aside, tape its terminals and send it to recycling. Between that limit and the cut-off: hold it and have its history settled first.",
            "Do not charge it, and do not put it in a group because it reads normal later.",
            "Guo2016; CommonPractice"),
        new(
            "caution-02", SignalWord.Danger, "negative voltage",
            "A cell reads below 0 V.",
            "Either the probes are swapped or the cell has been driven into reversal, which damages it inside.",
            "Measure again with the probes checked. If it is real, treat the cell as damaged.",
            "Never charge a cell that has been reversed.",
            "CommonPractice"),
        new(
            "caution-03", SignalWord.Warning, "above the charge limit",
            "A cell is more than 0.05 V above its charge limit at rest, or for more than 5 s while charging.",
            "An overcharged cell can vent and burn, and it has already aged.",
            "Stop the charge, find out why the balance or the charger let it pass. More than 0.15 V above: do not use the cell. Hot or hissing: leave and call the fire service.",
            "Do not go on charging to let the others catch up.",
            "CommonPractice"),
        new(
            "caution-04", SignalWord.Warning, "cell with a deep-discharge history",
            "The records show a deeply discharged cell that reads normal now.",
            "Reading normal again does not undo what happened to its collector.",
            "Reject it and mark it, so that it does not come back into the lot.",
            "Do not count it as good because its capacity test passed.",
            "Guo2016"),
        new(
            "caution-05", SignalWord.Warning, "damaged cell",
            "Somebody noted swollen, dented, leaking, smell, rust or torn wrap.",
            "Damage seen outside can mean a short, gas or lost insulation inside.",
            "Reject it. A cool swollen or leaking cell may be carried outside, away from anything that burns. Hot, hissing or smoking: leave, close the door, call the fire service.",
            "Do not press it flat, open it, puncture it or let gas out of it.",
            "CommonPractice"),
        new(
            "caution-06", SignalWord.Danger, "two chemistries",
            "Cells of two chemistries are asked for in one pack.",
            "Their voltage limits differ, so one of them would be overcharged or driven flat by the other.",
            "Build two packs, each with its own charger settings.",
            "There is no override for this.",
            "CommonPractice"),
        new(
            "caution-07", SignalWord.Warning, "current on joining",
            "The equalising current on joining exceeds the receiver's charge rating or the giver's discharge rating (half its Ah as amperes where unknown).",
            "The difference in volts drives a current that only the resistances limit.",
            "Bring the cell to the stated voltage first, alone, then join in the stated order.",
            "Do not bridge them with a bare wire to see what happens.",
            "Kirchhoff; CommonPractice"),
        new(
            "caution-08", SignalWord.Caution, "joining without enough data",
            "Resistance is unknown and the volts differ by more than 0.05 V; or LFP cells are to be joined.",
            "Without milliohm the current on joining cannot be told; and LFP cells of equal volts can hold very different charge.",
            "Measure the resistance, or let them equalise through a resistor; with LFP bring all to full by themselves first.",
            "Do not take equal volts for equal charge.",
            "CommonPractice"),
        new(
            "caution-09", SignalWord.Warning, "above 60 V DC",
            "The pack at full charge is above 60 V DC.",
            "From here on a touch can kill, and the pack cannot be switched off.",
            "Insulated gloves and tools, a maintenance disconnect, covers over every live part, local rules, trained people.",
            "Do not work on it alone or with jewellery on.",
            "Iso6469-4"),
        new(
            "caution-10", SignalWord.Danger, "insulation too low",
            "Recorded insulation is under 100 ohm for each volt of working voltage (500 where AC and DC join).",
            "Somewhere the pack touches the frame; with a second fault, or a hand, the circuit closes.",
            "Find and mend the leak before the vehicle is used.",
            "Do not rely on the frame being clean and dry.",
            "Iso6469-4; UnR100"),
        new(
            "caution-11", SignalWord.Warning, "charging in the cold",
            "Charging below 0 °C on a graphite anode, or below the data sheet's minimum; where anode, minimum or temperature is unknown the check was not made.",
            "On graphite the lithium plates as metal instead of going in, and stays dangerous afterwards.",
            "Warm the pack first; between 0 and 10 °C charge at a reduced current.",
            "Do not charge it outdoors in frost to save time.",
            "ColdPlating2026; Inr18650-26"),
        new(
            "caution-12", SignalWord.Caution, "hot cell",
            "A cell is above 45 °C while charging, or above 60 °C at any time.",
            "Heat ages a cell fast and is the first sign of worse.",
            "Stop, let it cool, find the cause before the next use.",
            "Do not go on because the volts look normal.",
            "CommonPractice"),
        new(
            "caution-13", SignalWord.Warning, "one cell warmer than its neighbours",
            "A cell is more than 10 K above its neighbours under load, or warms with no current flowing.",
            "A joint or a cell is turning energy into heat by itself; with no current flowing it may be about to burn.",
            "Under load: stop, cool down, look for the joint or the cell. Warming by itself, hot, hissing or smoking: leave, close the door, call the fire service.",
            "Do not open the box and do not handle a cell that warms by itself.",
            "CommonPractice"),
        new(
            "caution-14", SignalWord.Caution, "leaking charge",
            "A cell loses charge at rest clearly faster than its lot.",
            "In a parallel group it drains the others, and an internal short can grow.",
            "Hold it and measure again after another week. If it is also warm: leave it and call the fire service.",
            "Never put it into a parallel group.",
            "CommonPractice"),
        new(
            "caution-15", SignalWord.Warning, "limit passed while current flowed",
            "In the log a cell is beyond its low or high limit by more than 20 mV for more than 5 s with current on.",
            "So nothing that watches single cells stopped the current.",
            "Find out why the protection did not act before the next ride or charge.",
            "Do not ride or charge until it is found.",
            "CommonPractice"),
        new(
            "caution-16", SignalWord.Warning, "mirrored readings of two neighbours",
            "One cell reads low and its neighbour high by the same amount.",
            "That is the sense wire between them, and the protection is wrong about both.",
            "Measure both cells with a meter, mend the wire or its contact.",
            "Do not charge while the readings jump or are 50 mV or more apart.",
            "CommonPractice"),
        new(
            "caution-17", SignalWord.Notice, "no temperatures",
            "The log has no temperature column.",
            "Cold charging, hot cells and cells warmer than their neighbours could not be checked.",
            "Log at least one probe in the pack and one outside.",
            "Do not read the silence as a good result.",
            "CommonPractice"),
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
            "Fuse, disconnect, pre-charge or a monitor for each group is not ticked.",
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
    ];

    /// <summary>The entry of one code.</summary>
    /// <param name="code">caution-01 … caution-32.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="ArgumentException">The code is not in the catalogue.</exception>
    public static CautionEntry Of(string code) =>
        All.FirstOrDefault(entry => entry.Code == code)
        ?? throw new ArgumentException($"No caution has the code {code}.", nameof(code));
}
