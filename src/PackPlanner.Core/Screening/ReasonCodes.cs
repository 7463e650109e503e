namespace PackPlanner.Core.Screening;

/// <summary>The codes of verdict reasons, which scripts may compare.</summary>
public static class ReasonCodes
{
    /// <summary>Reject: under the capacity limit by more than twice its spread.</summary>
    public const string LowCapacity = "low-capacity";

    /// <summary>Hold: under the capacity limit by no more than twice its spread; repeat the test.</summary>
    public const string CapacityNearLimit = "capacity-near-limit";

    /// <summary>Hold: no whole capacity test.</summary>
    public const string NoCapacity = "no-capacity";

    /// <summary>Hold: the test ended above its cut-off, so it says nothing about capacity; repeat it.</summary>
    public const string AbortedTest = "aborted-test";

    /// <summary>Hold: whole tests of one cell differ by more than a tester does; one of them is wrong, or two cells share a label.</summary>
    public const string RepeatsDisagree = "repeats-disagree";

    /// <summary>Reject: above the resistance limit by more than twice its spread.</summary>
    public const string HighResistance = "high-resistance";

    /// <summary>Hold: above the resistance limit by no more than twice its spread.</summary>
    public const string ResistanceNearLimit = "resistance-near-limit";

    /// <summary>Hold: far from the other cells of its model.</summary>
    public const string UnlikeItsLot = "unlike-its-lot";

    /// <summary>A remark: the reading is missing, so nothing was checked by it.</summary>
    public const string NotChecked = "not-checked";

    /// <summary>Hold: the reading is missing and the user requires it.</summary>
    public const string RequiredReadingMissing = "required-reading-missing";

    /// <summary>Reject (caution-01): rests below the voltage from which a cell is not charged again.</summary>
    public const string DeepDischarge = "deep-discharge";

    /// <summary>Hold (caution-01): rests below its cut-off.</summary>
    public const string BelowCutOff = "below-cut-off";

    /// <summary>Reject (caution-02): negative volts.</summary>
    public const string NegativeVoltage = "negative-voltage";

    /// <summary>Hold, or reject when far above (caution-03): rests above its charge limit.</summary>
    public const string AboveChargeLimit = "above-charge-limit";

    /// <summary>Reject (caution-04): an earlier record shows it deeply discharged.</summary>
    public const string DeepDischargeHistory = "deep-discharge-history";

    /// <summary>Reject (caution-05): damage was noted.</summary>
    public const string Damaged = "damaged";

    /// <summary>Hold (caution-14): loses charge at rest faster than its lot, or than its limit.</summary>
    public const string LosesCharge = "loses-charge";

    /// <summary>Hold (caution-06): not the chemistry of the rest of the lot.</summary>
    public const string OtherChemistry = "other-chemistry";

    /// <summary>A remark: tested at another current or to another cut-off than most of its lot.</summary>
    public const string TestedOtherwise = "tested-otherwise";

    /// <summary>The user's own verdict, with his words.</summary>
    public const string ByHand = "by-hand";
}
