using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>What the Cells step says.</summary>
internal static class CellsPicture
{
    internal static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "sorting used cells: a verdict for each, with the reading, the limit and whose limit it is"),
        ("wants", "one table, a row a cell: label and Ah (or mAh), best also milliohm and resting volts; more files can follow"),
        ("add", "i adds a file in almost any spelling; a adds a cell by hand; a table can also be pasted"),
        ("try", "press : and type \"trike\": a copy of an invented job of 150 cells"),
    ];

    /// <param name="desk">The desk.</param>
    /// <param name="lot">The verdicts; null while they are on their way.</param>
    /// <param name="isFormer">Whether verdicts from before stay on the screen meanwhile.</param>
    internal static StepPicture Of(Desk desk, ScreenedLot? lot, bool isFormer)
    {
        const string Question = "Which of these cells may I use?";
        if (lot is null && desk.Answers.WasStopped)
            return StepPicture.Stopped(Question, 2);
        if (lot is null)
        {
            return desk.Answers.IsJudging
                ? new StepPicture(Question, isFormer ? "The cells are being judged anew; the verdicts below are those from before." : "The cells are being judged.", "Wait a moment, or go on: nothing is lost")
                : new StepPicture(Question, "No cells yet. Give one table of them, or add them by hand.",
                    desk.Job is null ? "i: begin a job with a table; or 1 Job opens one" : "i: add a table of cells");
        }

        int use = lot.Count(Verdict.Use);
        int hold = lot.Count(Verdict.Hold);
        int reject = lot.Count(Verdict.Reject);
        string answer = $"{use} use, {hold} hold, {reject} reject of {lot.Cells.Count}. {Need(desk.Job!, use)} {Repeats(lot, desk)}";
        return new StepPicture(Question, answer, Next(desk, lot), lot.Cautions) { Short = $"{use} use, {hold} hold, {reject} reject. {Needed(desk.Job!)}" };
    }

    private static string Needed(Job job) => job.Givens is { Series: { } series, Parallel: { } parallel } ? $"You need {series * parallel}." : "";

    private static string Need(Job job, int use)
    {
        if (job.Givens is not { Series: { } series, Parallel: { } parallel })
            return "Say series and parallel in 1 Job to know how many you need.";
        int need = series * parallel;
        return use >= need
            ? $"You need {need} for {series}s{parallel}p."
            : $"You need {need} for {series}s{parallel}p: short of {need - use}.";
    }

    private static string Repeats(ScreenedLot lot, Desk desk)
    {
        string share = desk.Look.Percent(lot.Repeatability.Fraction, 1);
        return lot.Repeatability.From switch
        {
            RepeatabilityOrigin.Given => $"Tester good to {share}, as you said.",
            RepeatabilityOrigin.Repeats => $"Its repeats show a tester good to {share}.",
            _ => $"Tester taken to repeat to {share} (p sets yours).",
        };
    }

    private static string Next(Desk desk, ScreenedLot lot)
    {
        string repeat = HeldAdvice.Of(lot);
        if (desk.Job!.Givens is not { Series: { } series, Parallel: { } parallel })
            return $"{repeat}1 Job: say series and parallel";
        int need = series * parallel;
        if (lot.Count(Verdict.Use) >= need)
            return $"{repeat}go on: 3 Groups has enough";
        StillToTest more = desk.Answers.StillToTest(lot, need);
        if (lot.Chemistry is { } chemistry && lot.Cells.Count > 1 && lot.Cells.All(cell => cell.Reasons.Any(reason => reason.Code == ReasonCodes.AboveChargeLimit)))
            return $"all rest above what {chemistry.Name} is charged to: is the chemistry right (1 Job)?";
        if (more.Likely is not { } likely)
            return $"{repeat}test more: none has passed yet, so nobody can say how many";
        string range = more.High is { } high ? $" ({more.Low}-{high})" : "";
        return $"{repeat}test about {likely} more{range}, or a smaller pack (1 Job)";
    }
}
