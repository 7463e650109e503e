using PackPlanner.Core.Cautions;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Core.Sizing;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Demos;

/// <summary>Runs an invented job from its data to its next step, by the same doors as the verbs.</summary>
public static class DemoRun
{
    /// <summary>Runs one job.</summary>
    /// <param name="name">trike, tractor or scooter.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>Key figures and lines for people.</returns>
    public static Outcome<(DemoAnswer Answer, IReadOnlyList<string> Lines)> Of(string name, CancellationToken stopped)
    {
        if (!DemoJobs.Of(name).Is(out JobHistory? history, out Refusal? why))
            return why;
        Job job = history.Now;
        List<string> lines = [$"{job.Title}: an invented job, run from end to end.", ""];
        List<Caution> cautions = [];
        DemoAnswer answer = new() { Name = name, Title = job.Title, Next = "" };
        answer = Cells(job, answer, lines, cautions, stopped);
        answer = Log(job, answer, lines, cautions, stopped);
        if (job.SizeNeed is not null)
        {
            if (!Size(job, answer, lines, cautions).Is(out DemoAnswer? sized, out why))
                return why;
            answer = sized;
        }

        if (job.FitCase is not null)
        {
            if (!JobFit.Find(job, stopped).Is(out FitAnswer? places, out why))
                return why;
            answer = Fit(places, answer, lines);
            cautions.AddRange(places.Cautions);
        }

        // The energy part judges the givens too, and with more at hand.
        if (answer.Energy is null)
            cautions.AddRange(JobCautions.Of(job.Givens));
        answer = answer with { Next = NextStep(answer), Cautions = CautionJson.From(cautions) };
        lines.AddRange(["", $"Next  {answer.Next}"]);
        return (answer, lines);
    }

    private static DemoAnswer Cells(Job job, DemoAnswer answer, List<string> lines, List<Caution> cautions, CancellationToken stopped)
    {
        if (job.Rows.Count == 0)
            return answer;
        ScreenedLot lot = JobLot.Judge(job);
        cautions.AddRange(lot.Cautions);
        DemoCellsJson cells = new(
            lot.Cells.Count, lot.Count(Verdict.Use), lot.Count(Verdict.Hold), lot.Count(Verdict.Reject), lot.MedianCapacityAh);
        lines.Add($"cells   {cells.Use} use, {cells.Hold} hold, {cells.Reject} reject of {cells.Total}; median {Figures.Fixed(cells.MedianCapacityAh, 3)} Ah.");
        foreach (ScreenedCell held in lot.Cells.Where(cell => cell.Verdict == Verdict.Hold))
            lines.Add($"        {held.Label} hold: {Figures.Fixed(held.CapacityAh, 3)} Ah, spread {Figures.Fixed(held.CapacitySpreadAh, 3)}");
        answer = answer with { Cells = cells };
        (IReadOnlyList<JobGroup> groups, GroupingOutcome? outcome) = JobGroups.Find(job, lot, stopped);
        if (outcome is not GroupingOutcome.Matched { Pack: { } pack })
            return answer;
        DemoMatchJson match = new(
            pack.Groups.Count, pack.Groups[0].Cells.Count, pack.SmallestAh, pack.SpreadAh, pack.SmallestBoundAh, pack.ProvenOptimal, pack.LeftOut.Count);
        string proven = match.ProvenOptimal ? "proven best" : $"at most {Figures.Fixed(match.MinGroupBoundAh, 4)} Ah is possible";
        lines.Add($"match   {match.Series} groups of {match.Parallel}: the smallest holds {Figures.Fixed(match.MinGroupAh, 4)} Ah, the largest {Figures.Fixed(match.SpreadAh, 4)} Ah more, {proven}; {match.Spare} spare.");
        lines.Add($"        but one test repeats to {Figures.Digits(lot.Repeatability.Fraction * 100, 2)} %, so that the true groups differ by more than that.");
        cautions.AddRange(groups.SelectMany(group => JobJoining.Plan(group.Number, group.Cells, job.Givens).Cautions));
        return Energy(job, groups, outcome, answer with { Match = match }, lines, cautions, stopped);
    }

    private static DemoAnswer Energy(
        Job job, IReadOnlyList<JobGroup> groups, GroupingOutcome outcome, DemoAnswer answer, List<string> lines, List<Caution> cautions, CancellationToken stopped)
    {
        if (!JobEnergyAnswer.Of(job, groups, outcome, [], stopped).Is(out (EnergyAnswer Answer, StringFigures Figures) told, out _))
            return answer;
        // The list from label to usable and what ends it; the verb energy shows the rest.
        int budget = told.Answer.Losses.Count + 4;
        lines.AddRange(EnergyWords.Lines(told.Answer).Take(budget).Select((line, i) => (i == 0 ? "energy  " : "        ") + line));
        cautions.AddRange(told.Figures.Raised);
        return answer with
        {
            Energy = new DemoEnergyJson(told.Answer.NominalWh, told.Answer.UsableWh, told.Answer.SpreadWh, told.Answer.RangeKm),
        };
    }

    private static DemoAnswer Log(Job job, DemoAnswer answer, List<string> lines, List<Caution> cautions, CancellationToken stopped)
    {
        if (job.Logs.LastOrDefault()?.Log is not { } log || JobLogs.Diagnosed(job.Givens, log, stopped) is not { } diagnosis)
            return answer;
        cautions.AddRange(diagnosis.Cautions);
        (int Group, FindingDetail Finding)[] findings =
        [
            .. diagnosis.Groups.SelectMany(group => group.Findings.Select(finding => (group.Group, finding)))
                .Where(pair => pair.finding.Kind != FindingKind.CannotTell).OrderBy(pair => pair.finding.Sure).ThenBy(pair => pair.Group),
        ];
        string[] told = [.. findings.Select(pair => $"group {pair.Group}: {Sheets.RepairSheet.Name(pair.Finding.Kind)}")];
        lines.Add($"log     {log.Rows} rows of {log.Groups} groups, {job.Logs[^1].RowsSetAside} set aside, of {job.Logs[^1].Source.File}.");
        foreach ((int group, FindingDetail finding) in findings)
            lines.Add($"        group {group}: {Sheets.RepairSheet.Name(finding.Kind)}, sure: {finding.Sure.ToString().ToLowerInvariant()}; settle it by: {finding.SettleBy}");
        if (diagnosis.Recovery is { } recovery)
            lines.Add($"        usable {Figures.Digits(recovery.UsableAhNow, 3)} Ah now; {Figures.Digits(recovery.UsableAhAfterReplacement, 3)} Ah with group {recovery.ReplacedGroup} replaced, then group {recovery.NextBottleneck} limits it.");
        return answer with { Log = new DemoLogJson(log.Rows, log.Groups, told, diagnosis.Recovery?.UsableAhNow) };
    }

    private static Outcome<DemoAnswer> Size(Job job, DemoAnswer answer, List<string> lines, List<Caution> cautions)
    {
        if (!JobDocuments.Root(job.SizeNeed!).Is(out JsonInput? input, out Refusal? why)
            || !SizeCase.Read(input, out _).Is(out SizingRequest? request, out why))
            return why;
        if (SizingSearch.Find(request) is not SizingOutcome.Choices { Options: [{ } best, ..] options })
            return answer;
        cautions.AddRange(best.Cautions);
        DemoSizeJson size = new(best.Series, best.Parallel, best.Cell.Name ?? "the cell", best.EnergyUsableWh, best.RangeKm, best.PackMassKg);
        lines.Add($"size    {size.Series}s{size.Parallel}p of {size.Cell}: {Figures.Fixed(size.EnergyUsableWh, 0)} Wh usable, {Figures.Fixed(size.RangeKm, 1)} km, {Figures.Fixed(size.PackMassKg, 1)} kg; {options.Count} choices that no other beats.");
        return answer with { Size = size };
    }

    private static DemoAnswer Fit(FitAnswer places, DemoAnswer answer, List<string> lines)
    {
        DemoFitJson fit = new(places.Fits, places.Series, places.Parallel, places.Cells.Count, places.Used, places.Bound, places.CellMassKg);
        string shape = fit is { Series: { } series, Parallel: { } parallel } ? $"{series}s{parallel}p" : "the cells";
        lines.Add(fit.Fits
            ? $"fit     {shape} fits: {fit.Used} of {fit.Places} places{(places.FirstLook ? " at a first look" : "")}, {Figures.Fixed(fit.CellMassKg, 2)} kg of cells{(fit.Bound is { } bound ? $"; no layout holds more than {bound}" : "")}."
            : $"fit     {shape} does not fit: {string.Join("; ", places.Reasons.Select(reason => reason.Text))}");
        if (answer.Size is { } size && fit is { Series: { } s, Parallel: { } p } && (s, p) != (size.Series, size.Parallel))
            lines.Add($"        size asks for {size.Series}s{size.Parallel}p without knowing this space; {(places.FirstLook ? "a first look at it is short, packplanner fit looks longer and can find more places" : "it holds less")}.");
        return answer with { Fit = fit };
    }

    private static string NextStep(DemoAnswer answer) => answer switch
    {
        { Log: not null } => "packplanner demo tractor --into tractor writes the job; packplanner sheet tractor/tractor.job.json repair then prints what to settle first.",
        { Match: not null } => "packplanner demo trike --into trike writes the job; packplanner sheet trike/trike.job.json then prints what goes to the bench.",
        _ => "packplanner demo scooter --into scooter writes the job and its files; packplanner fit scooter/floor.json then shows where each cell goes.",
    };
}
