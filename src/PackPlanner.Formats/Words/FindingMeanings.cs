using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Screening;

namespace PackPlanner.Formats.Words;

/// <summary>What findings of a diagnosis and reasons of a verdict mean.</summary>
public static class FindingMeanings
{
    internal const string Reason = "verdict reason";
    internal const string Finding = "finding";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<CodeMeaning> All { get; } =
    [
        Found(FindingKind.LowCapacity, "the group holds less charge than the others, even when it starts level with them", "Charge it full by itself and discharge it on a tester to the cut-off."),
        Found(FindingKind.Imbalance, "the group stands at another state of charge than the others; its capacity may be sound", "Balance all groups at full and ride again: if it stays level, nothing else is wrong with it."),
        Found(FindingKind.HighResistance, "the group drops more under load, at once and slowly: its cells or the welds inside it", "Measure each of its cells four-wire, or the drop one second after a known step."),
        Found(FindingKind.Connection, "a drop in proportion to the current, all of it at the instant of the step: a joint, bar or tap joint", "Measure millivolts over each joint at a known current, then tighten or clean the one that is high."),
        Found(FindingKind.SelfDischarge, "the group loses charge while the pack stands", "Let the pack rest some weeks without a balancer, and read its volts at the start and the end."),
        Found(FindingKind.Sensor, "the reading is wrong and not the cell: a sense wire, its contact or its channel", "Measure the cell with a meter while the log runs, and move the wire."),
        Found(FindingKind.CannotTell, "this log does not reach far enough to tell capacities", "Ride from full to the first cut-off in one go, and log that."),
        Of(ReasonCodes.LowCapacity, "the capacity is under the limit by more than twice its spread", "Reject it, or put it into another lot with a limit of its own."),
        Of(ReasonCodes.CapacityNearLimit, "the capacity is under the limit, but within twice its spread of it", "Repeat the test, on another slot if there is one."),
        Of(ReasonCodes.NoCapacity, "no whole capacity test is known", "Test it from full to the cut-off."),
        Of(ReasonCodes.AbortedTest, "the test ended above its cut-off, so that its capacity is too small", "Repeat the test to its end."),
        Of(ReasonCodes.RepeatsDisagree, "two tests of this label differ by far more than a tester does", "See whether two cells share the label, or one test was broken off; test again."),
        Of(ReasonCodes.HighResistance, "the resistance is above the limit by more than twice its spread", "Reject it for high currents."),
        Of(ReasonCodes.ResistanceNearLimit, "the resistance is above the limit, but within twice its spread of it", "Clean the ends and measure again with four wires."),
        Of(ReasonCodes.UnlikeItsLot, "the reading lies far outside what its lot scatters", "Measure it again; if it stays, find out why before it is used."),
        Of(ReasonCodes.NotChecked, "a reading is missing, so that this was not judged; it is no pass", "Take the reading, or use the cell knowing that it was not checked."),
        Of(ReasonCodes.RequiredReadingMissing, "a reading that you require is missing", "Take it, or do not require it."),
        Of(ReasonCodes.DeepDischarge, "the cell rests so low that it is not to be charged again", "Tape its ends and take it to recycling; see caution-01."),
        Of(ReasonCodes.BelowCutOff, "the cell rests at or under its data sheet's cut-off", "Hold it until its history is known; see caution-01."),
        Of(ReasonCodes.NegativeVoltage, "the cell reads below zero volts", "Measure again with the probes checked; see caution-02."),
        Of(ReasonCodes.AboveChargeLimit, "the cell rests above its charge limit", "Do not charge it; find out what overcharged it; see caution-03."),
        Of(ReasonCodes.DeepDischargeHistory, "the records show that the cell was deeply discharged once", "Reject it, however it reads now; see caution-04."),
        Of(ReasonCodes.Damaged, "somebody noted damage that can be seen or smelt", "Reject it; see caution-05."),
        Of(ReasonCodes.LosesCharge, "the cell loses charge at rest clearly faster than its lot", "Keep it out of parallel groups; see caution-14."),
        Of(ReasonCodes.OtherChemistry, "the cell is of another chemistry than the lot", "Take it out: there is no override; see caution-06."),
        Of(ReasonCodes.TestedOtherwise, "the cell was tested at another current, cut-off or temperature than most of the lot", "Test it as the others, before it is compared with them."),
        Of(ReasonCodes.ByHand, "you set the verdict yourself, with a reason", "Set it back to auto if the reason no longer holds."),
    ];

    private static CodeMeaning Found(FindingKind kind, string means, string todo) => new(DiagnoseWords.Name(kind), Finding, means, todo);

    private static CodeMeaning Of(string code, string means, string todo) => new(code, Reason, means, todo);
}
