namespace PackPlanner.Core.Cautions;

/// <summary>What to beware of in cells and in what was measured on them: caution-01 to caution-17.</summary>
internal static class CellCautionWords
{
    internal static IReadOnlyList<CautionEntry> All { get; } =
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
            "caution-06", SignalWord.Danger, "two chemistries or models",
            "Cells of two chemistries are asked for in one pack; or a group mixes models of one chemistry.",
            "The voltage limits of two chemistries differ, so one would be overcharged or driven flat by the other. Two models of one chemistry share the current unequally and age apart.",
            "Two chemistries: build two packs, each with its own charger settings. Two models: use one (match --model), or have a reason to mix them in a group.",
            "Two chemistries never go into one pack: there is no override.",
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
    ];
}
