using System.CommandLine;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>energy: what a series string really delivers.</summary>
internal static class EnergyVerb
{
    private static readonly Argument<string[]> Files = new("FILE") { Description = "a job, an answer of match or diagnose (JSON), or a table with group, capacityAh, resistanceMilliohm and perhaps stateOfCharge", Arity = ArgumentArity.OneOrMore };

    internal static Verb Definition { get; } = new(
        "energy",
        "what a pack really delivers: from label to usable, what ends it, how far, what each remedy gives",
        [
            ("packplanner energy groups.csv --chemistry NMC --load 22A --rated-ah 45Ah --use 38Wh/km", "the list from label to usable, and the range"),
            ("packplanner energy groups.json --chemistry LFP --load 1500W --pack-empty-v 42V --temperature 5degC --reserve 10%", "constant power, the controller's limit and the cold"),
        ],
        [Files],
        EnergyOptions.All,
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        if (call.Value(Files)! is [string job] && JobFile.IsNamedBy(job))
            return OfJob(call, job);
        EnergyOptions options = EnergyOptions.Read(call);
        Chemistry? asked = call.Chemistry();
        double repeatability = call.RepeatabilityFraction() ?? EnergyRequest.DefaultRepeatabilityFraction;
        if (call.Wrong is { } wrong)
            return wrong;
        if (!GroupFiles.Open(call, call.Value(Files)!, asked, options.RatedGroupAh).Is(out GroupInput? input, out Refusal? why)
            || !input.ChemistryOf(asked).Is(out ChemistryFound? found, out why)
            || !SeriesGroups.Read(input).Is(out SeriesGroups? groups, out why)
            || !EnergyOptions.Load(call).Is(out LoadFound? load, out why))
            return why;
        if (found.Chemistry is not { } chemistry)
            return Refusal.Input("no-chemistry", input.Name, "nothing says which chemistry these cells are, and without its curve no energy can be told",
                $"Add --chemistry and one of {string.Join(", ", Chemistries.All)}.");
        EnergyRequest request = options.Fill(new EnergyRequest
        {
            Groups = options.Parallel is { } parallel ? [.. groups.Groups.Select(group => group with { Parallel = group.Parallel ?? parallel })] : groups.Groups,
            Chemistry = chemistry,
            Load = load.Plan,
            RepeatabilityFraction = repeatability,
        });
        if (!options.Linked(request).Is(out EnergyRequest? linked, out why))
            return why;
        return Wrong(linked, input.Name) is { } crossed ? crossed : Answer(
            call, options, linked, options.Protection with { OnlyFirstInstant = groups.OnlyFirstInstant }, options.WhPerKm,
            [.. input.Understood, .. groups.Understood], input.Account);
    }

    // Without options the answer is the one of the job's screen; what is typed stands over what the job says.
    private static Outcome<Reply> OfJob(VerbCall call, string file)
    {
        EnergyOptions options = EnergyOptions.Read(call);
        Chemistry? asked = call.Chemistry();
        double? repeatability = call.RepeatabilityFraction();
        if (call.Wrong is { } wrong)
            return wrong;
        if (!JobFile.Open(file).Is(out OpenJob? open, out Refusal? why) || !EnergyOptions.Load(call).Is(out LoadFound? load, out why))
            return why;
        Job job = open.History.Now;
        if (asked is not null && job.Givens.Chemistry is { } own && own != asked)
            return Refusal.Input("two-chemistries", file, $"the job says {own}, --chemistry says {asked}", "Leave --chemistry out, or set it in the job.");
        // Before anything is asked of the job: without a chemistry, or cells in parallel, it may have no answer at all.
        if (asked is not null)
            job = job with { Givens = job.Givens.With("chemistry", new Given(new JobValue.Word(asked.Name), Origin.You(Today.Date()))) };
        if (options.Parallel is { } parallel)
            job = job with { Givens = job.Givens.With("parallel", new Given(new JobValue.Number(parallel), Origin.You(Today.Date()))) };
        ScreenedLot lot = JobLot.Judge(job);
        (IReadOnlyList<JobGroup> groups, GroupingOutcome? outcome) = JobGroups.Find(job, lot, call.Stopped);
        string[] notes = [.. JobGroups.Notes(job, lot)];
        if (!JobEnergyAnswer.Of(job, groups, outcome, notes, call.Stopped).Is(out (EnergyAnswer Answer, StringFigures Figures) told, out why))
            return why;
        if (!EnergyOptions.All.Any(call.Given) && asked is null && repeatability is null)
            return Reply.Of(told.Answer, EnergyAnswerContext.Default.EnergyAnswer, EnergyWords.Lines(told.Answer), EnergyWords.Table(told.Answer));
        EnergyRequest said = told.Figures.Request;
        EnergyRequest request = options.Fill(said with
        {
            Load = load.Plan ?? said.Load,
            RepeatabilityFraction = repeatability ?? said.RepeatabilityFraction,
        });
        if (!options.Linked(request).Is(out EnergyRequest? linked, out why))
            return why;
        return Wrong(linked, file) is { } crossed ? crossed : Answer(
            call, options, linked, options.Over(JobEnergy.Protection(job.Givens, groups)), options.WhPerKm ?? job.Givens.NumberOf("whPerKm"),
            ["What was typed stands over what the job says; the job itself is unchanged.", .. notes], null);
    }

    private static Outcome<Reply> Answer(
        VerbCall call, EnergyOptions options, EnergyRequest request, StringProtection protection, double? whPerKm,
        IReadOnlyList<string> understood, RowAccount? account)
    {
        StringFigures figures;
        try
        {
            figures = StringFigures.Of(request, protection, call.Stopped);
        }
        catch (EndlessLoadException)
        {
            return Refusal.Input("endless-load", "--load", "the profile never empties the pack", "Give a profile that draws more charge than it gives back.");
        }

        EnergyAnswer answer = EnergyWords.Answer(figures, whPerKm) with
        {
            Understood = [.. understood, .. EnergyAssumptions.Of(request, call.Given(CommonOptions.Repeatability))],
        };
        if (options.Draws is { } draws)
            answer = WithDraws(call, request, draws, answer);
        answer = account?.Fill(answer) ?? answer;
        return Reply.Of(answer, EnergyAnswerContext.Default.EnergyAnswer, EnergyWords.Lines(answer), EnergyWords.Table(answer));
    }

    // A stop keeps the draws done; before the first hundred the directly formed spread stands.
    private static EnergyAnswer WithDraws(VerbCall call, EnergyRequest request, int draws, EnergyAnswer answer)
    {
        EnergyDraws? drawn = EnergyDraws.Of(request, draws, call.Seed, new DrawNotes(call, draws), call.Stopped);
        if (drawn is not null)
            answer = answer with
            {
                SpreadWh = (drawn.HighWh - drawn.LowWh) / 2,
                UsableWhRange = new RangeJson(drawn.LowWh, drawn.HighWh),
                Draws = drawn.Draws,
            };
        return drawn is null or { WasStopped: true } ? answer with { StoppedBy = "time-limit" } : answer;
    }

    private sealed class DrawNotes(VerbCall call, int draws) : IProgress<int>
    {
        public void Report(int value)
        {
            if (value % 1000 == 0)
                call.Note($"{value} of {draws} draws");
        }
    }

    private static Refusal? Wrong(EnergyRequest request, string file)
    {
        if (request.EndsAtV >= request.ChargedToV)
            return Refusal.CommandLine("limits-crossed", "--empty-v", $"{request.EndsAtV} V is not below the {request.ChargedToV} V of full", "Give volts of one group: --full-v 4.2V --empty-v 3.0V.");
        return request.HasLimitsOfItsChemistry ? null
            : EnergyWords.LimitsOutside(request, file, "Give volts of one group, and the right --chemistry.");
    }
}
