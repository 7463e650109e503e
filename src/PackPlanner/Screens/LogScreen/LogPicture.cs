using System.Text.RegularExpressions;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.LogScreen;

/// <summary>What the Log step says.</summary>
internal static partial class LogPicture
{
    private const string Question = "What limits this pack?";

    // At 80 columns.
    private const int OneRow = 72;

    internal static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "which group or joint ends the ride, how sure that is, and what a remedy brings back"),
        ("wants", "one log of a ride or charge with volts per cell; best with amperes and temperature (i adds it)"),
        ("and", "the chemistry and the rated Ah, so that volts and Ah can be judged (e here)"),
        ("verb", "packplanner diagnose LOG answers the same"),
    ];

    internal static StepPicture Waiting(Desk desk, int which)
    {
        (Job? job, bool works) = (desk.Job, desk.Answers.IsDiagnosing);
        if (desk.Answers.WasStopped)
            return StepPicture.Stopped(Question, 7);
        if (job is null || job.Logs.IsEmpty)
            return new StepPicture(Question, "No log is in this job yet.", job is null ? "i: begin a job with a log; or 1 Job opens one" : "i: add a log of a ride or a charge");
        IReadOnlyList<string> missing = LogQuestion.Missing(job, which);
        return missing.Count > 0
            ? new StepPicture(Question, $"The log cannot be judged yet. Missing: {string.Join(", ", missing)}.", "e: say what is missing")
            : new StepPicture(Question, works ? "The log is being judged." : "The log could not be judged.", works ? "Wait a moment, or go on: nothing is lost" : "See the line above the keys");
    }

    internal static StepPicture Of(RideDiagnosis diagnosis, int logs, Look look)
    {
        IReadOnlyList<LogFinding> findings = LogFinding.All(diagnosis);
        string answer = findings.Count == 0 ? "No group stands out." : Gravest(findings, look);
        if (!diagnosis.CapacityTold)
            answer += $" The Ah cannot be told: {Brackets().Replace(diagnosis.WhyNot ?? "", "")}.";
        else if (BestRemedy(diagnosis) is { } remedy)
            answer += $" {Now(diagnosis, look)} {Short(remedy)}: {look.Figure(remedy.UsableWh / 1000, 2)} kWh ({Gain(remedy, diagnosis, look)} %), then group {remedy.NextBottleneck} ends it.";
        string shorter = findings.Count == 0 ? answer : $"Group {findings[0].Group}: {findings[0].Name}, {findings[0].Size(look)}{(findings.Count > 1 ? $"; {findings.Count - 1} more" : "")}.";
        return new StepPicture(Question, answer, Next(diagnosis, findings, logs), diagnosis.Cautions) { Short = shorter };
    }

    // What is dangerous comes before what would settle a finding: a test may begin with the very charge that must not be.
    private static string Next(RideDiagnosis diagnosis, IReadOnlyList<LogFinding> findings, int logs)
    {
        string then = findings.Count > 0 ? findings[0].Next : "";
        if (Caution.InOrder(diagnosis.Cautions).FirstOrDefault(caution => caution.Signal is SignalWord.Danger or SignalWord.Warning) is not { } grave)
            return then.Length > 0 ? $"{then}; Enter: why" : logs > 1 ? "6 Energy, or d: the other log" : "6 Energy, or i: a second log, to see what changed";
        // Which cells are meant stands in the caution, and not only there: the answer above may speak of another group.
        string first = Named(Clause(grave.Do), grave.Where);
        string both = $"{first}; then {Lower(then)}";
        return then.Length > 0 && both.Length <= OneRow ? both : first;
    }

    private static string Named(string clause, string where)
    {
        if (!where.StartsWith("group", StringComparison.Ordinal))
            return clause;
        string inside = clause.Replace("both cells", where, StringComparison.Ordinal), before = $"{where}: {Lower(clause)}";
        return inside != clause ? inside : before.Length <= OneRow ? before : clause;
    }

    private static string Lower(string words) => words.Length == 0 ? "" : char.ToLowerInvariant(words[0]) + words[1..];

    private static string Clause(string sentences) => sentences.Split(". ")[0].Split(';')[0].TrimEnd('.');

    private static string Gravest(IReadOnlyList<LogFinding> findings, Look look)
    {
        LogFinding first = findings[0];
        string others = findings.Count == 1 ? "" : $" {findings.Count - 1} more.";
        return $"Group {first.Group}: {first.Name}, {first.Size(look)}.{others}";
    }

    private static string Now(RideDiagnosis diagnosis, Look look) =>
        diagnosis.Loaded is { } loaded ? $"Now {look.Figure(loaded.UsableWhNow / 1000, 2)} kWh at the log's {look.Figure(loaded.CurrentA, 0)} A." : "";

    // Of the energy that stands before it: the charge gains a little more, since it flows at lower volts.
    private static string Gain(Remedy remedy, RideDiagnosis diagnosis, Look look)
    {
        double percent = diagnosis.Loaded is { UsableWhNow: > 0 } now ? 100 * (remedy.UsableWh / now.UsableWhNow - 1) : remedy.GainPercent;
        return (percent >= 0 ? "+" : "") + look.Figure(percent, 0);
    }

    // What a new group is measured by is said where the remedies stand.
    private static string Short(Remedy remedy) => remedy.Do.TrimEnd('.').Replace(" by one as good as the median group", "", StringComparison.Ordinal);

    private static Remedy? BestRemedy(RideDiagnosis diagnosis) =>
        diagnosis.Remedies.Where(remedy => remedy.GainPercent > 0.5).MaxBy(remedy => remedy.GainPercent);

    // The notice says it whole.
    [GeneratedRegex(@" \([^)]*\)")]
    private static partial Regex Brackets();
}
