using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Sheets;
using PackPlanner.Screens.CavityScreen;
using PackPlanner.Screens.CellsScreen;
using PackPlanner.Screens.EnergyScreen;
using PackPlanner.Screens.GroupsScreen;
using PackPlanner.Screens.LogScreen;
using PackPlanner.Screens.PlaceScreen;
using PackPlanner.Screens.SheetsScreen;

namespace PackPlanner.Screens;

/// <summary>Answers that several steps share, each kept until the job's part that it rests on changes.</summary>
internal sealed class Answers
{
    private readonly Desk desk;
    private readonly Derived<CellsQuestion, ScreenedLot> lot;
    private readonly Derived<GroupsQuestion, GroupingOutcome> groups;
    private readonly Dictionary<int, Derived<LogQuestion, RideDiagnosis>> diagnoses = [];
    private readonly Derived<EnergyQuestion, StringFigures> energy;
    private readonly Derived<FitQuestion, FitQuestion.Answered> fit;
    private readonly FullSearch full;
    private readonly Derived<SizeQuestion, SizeQuestion.Answered> choices;
    private readonly Derived<SheetQuestion, SheetQuestion.Answered> sheets;
    private (FitQuestion.Answered? Fit, GroupingOutcome? Groups, JobPlacement? Placement, PlacedPack? Pack) placed;
    private (MatchedPack? Pack, JobGivens? Givens, IReadOnlyList<JobGroup>? Groups) matchedGroups;
    private (FitQuestion? Of, FitAnswer? Answer) firstLook;
    private (ScreenedLot? Lot, int Places, StillToTest? Count) stillToTest;

    internal Answers(Desk desk)
    {
        this.desk = desk;
        lot = new(desk, "judging the cells", (question, work) => question.Answer(), question => question.IsShort);
        groups = new(desk, "matching", Match, question => question.IsShort);
        fit = new(desk, "looking for places", Fitted, _ => false);
        full = new(desk, (question, work) => question.Most(desk.Around.FullSearch, work.Stopped, Told(work)));
        choices = new(desk, "weighing the choices", (question, work) => question.Answer(work.Stopped), _ => false);
        sheets = new(desk, "preparing the sheets", (question, work) => question.Answer(), _ => true);
        energy = new(desk, "counting the energy", (question, work) => question.Answer(work.Stopped), _ => false);
    }

    /// <summary>The places in the job's space; null without a space, or while they are looked for.</summary>
    internal FitQuestion.Answered? Fit => fit.Of(FitQuestion.Of(desk.Job));

    /// <summary>
    /// What the full search found in the space so far, where the places are those of a first look; null without, before it has anything, or on
    /// other steps: they do not begin it, and one on its way looks on beside them. The places that are built in stay those of <see cref="Fit"/>, which sheets are made from too.
    /// </summary>
    internal FitAnswer? MostPlaces => desk.Step is CavityModel && Fit is { Answer: { FirstLook: true, Cells.Count: > 0 } } ? full.Most(desk.Job) : null;

    /// <summary>The places that rows alone hold while a full search looks for as many as are asked; null before, and after it.</summary>
    internal FitAnswer? FirstLook => fit.IsWorking && firstLook.Of is { } of && of.Equals(FitQuestion.Of(desk.Job)) ? firstLook.Answer : null;

    /// <summary>Whether places are on their way.</summary>
    internal bool IsLookingForPlaces => fit.IsWorking;

    /// <summary>Whether the full search looks just now.</summary>
    internal bool IsSearchingInFull => full.IsLooking;

    /// <summary>The choices of S, P and cell; null without a need, or while they are worked out.</summary>
    internal SizeQuestion.Answered? Choices => choices.Of(SizeQuestion.Of(desk.Job));

    /// <summary>The places with the job's groups in them; null while nothing fits.</summary>
    internal PlacedPack? Placed
    {
        get
        {
            if (Fit is not { Answer: { Fits: true, Series: not null } answer } known)
                return null;
            if (!ReferenceEquals(placed.Fit, known) || !ReferenceEquals(placed.Groups, Groups) || placed.Placement != desk.Job!.Placement)
            {
                placed = (known, Groups, desk.Job!.Placement, new PlacedPack(answer, MatchedGroups ?? [], desk.Job.Placement, desk.Job.Givens, desk.Job.Givens.NominalV ?? known.Case?.NominalV));
            }

            return placed.Pack;
        }
    }

    /// <summary>What sheets are made from; null while it is on its way or the space cannot be read.</summary>
    internal SheetInput? SheetInput => sheets.Of(desk.Open is { } open ? new SheetQuestion(open.History.Now, open.History.Revision, desk.Today, Lot, Groups, MatchedGroups, Fit?.Answer, LastDiagnosis, Energy) : null)?.Input;

    /// <summary>Why no sheet can be made at all; null when some can, or while that is being worked out.</summary>
    internal string? WhyNoSheets => sheets.Last?.WhyNot;

    /// <summary>The usable energy; null while groups are on their way or something is missing.</summary>
    internal StringFigures? Energy => energy.Of(EnergyAsked());

    /// <summary>Whether the energy is being counted.</summary>
    internal bool IsCounting => energy.IsWorking;

    /// <summary>Whether the energy, or what it rests on, is on its way.</summary>
    internal bool IsEnergyOnItsWay => IsCounting || groups.IsWorking || IsJudging || (!HasGroups && IsDiagnosing);

    /// <summary>What a log of the job says; null while it is on its way or cannot be asked.</summary>
    /// <param name="which">The log, from 0.</param>
    internal RideDiagnosis? Diagnosis(int which) => DiagnosisOf(which).Of(LogQuestion.Of(desk.Job, which));

    /// <summary>What the latest log of the job says.</summary>
    private RideDiagnosis? LastDiagnosis => desk.Job is { Logs: { IsEmpty: false } logs } ? Diagnosis(logs.Count - 1) : null;

    /// <summary>What the latest log says of the pack under its own load; null where the energy is counted from cells.</summary>
    internal LoadedRecovery? LoadedOfLog => HasGroups ? null : LastDiagnosis?.Loaded;

    /// <summary>Whether a diagnosis is on its way.</summary>
    internal bool IsDiagnosing => diagnoses.Values.Any(diagnosis => diagnosis.IsWorking);

    /// <summary>Whether an answer that is worked out is the one that a step is about, so that its progress is told there and Esc there stops it first.</summary>
    internal bool IsAskedBy(IStep step, object asker) => step switch
    {
        CellsModel => asker == lot,
        GroupsModel => asker == groups,
        CavityModel => asker == fit || full.Is(asker) || asker == choices,
        PlaceModel => asker == fit,
        EnergyModel => asker == energy,
        LogModel => diagnoses.Values.Any(diagnosis => diagnosis == asker),
        _ => false,
    };

    /// <summary>Whether the user stopped something before there was an answer to it.</summary>
    internal bool WasStopped => lot.WasStopped || groups.WasStopped || fit.WasStopped || choices.WasStopped || energy.WasStopped || diagnoses.Values.Any(diagnosis => diagnosis.WasStopped);

    /// <summary>What was stopped so is asked again; the full search on its own step alone.</summary>
    internal void AskAgain()
    {
        lot.AskAgain();
        groups.AskAgain();
        fit.AskAgain();
        if (desk.Step is CavityModel)
            full.LookOn();
        choices.AskAgain();
        energy.AskAgain();
        foreach (Derived<LogQuestion, RideDiagnosis> diagnosis in diagnoses.Values)
            diagnosis.AskAgain();
    }

    /// <summary>A verdict for each cell; null without cells, or while it is on its way.</summary>
    internal ScreenedLot? Lot => lot.Of(CellsQuestion.Of(desk.Job));

    /// <summary>How many more cells must be tested; counted once for a lot, since a pack far from filled takes many steps to count.</summary>
    /// <param name="judged">The lot so far.</param>
    /// <param name="places">Cells in series times cells in parallel.</param>
    internal StillToTest StillToTest(ScreenedLot judged, int places)
    {
        if (!ReferenceEquals(stillToTest.Lot, judged) || stillToTest.Places != places)
            stillToTest = (judged, places, Core.Screening.StillToTest.Of(judged, places, slots: null, hoursPerTest: null));
        return stillToTest.Count!;
    }

    /// <summary>Whether the verdicts are on their way.</summary>
    internal bool IsJudging => lot.IsWorking;

    /// <summary>The grouping, or why there is none; null while it is on its way or cannot be asked.</summary>
    internal GroupingOutcome? Groups => groups.Of(GroupsAsked);

    /// <summary>The same groups with all that is known of their cells; the same object while the grouping and the givens are the same.</summary>
    internal IReadOnlyList<JobGroup>? MatchedGroups
    {
        get
        {
            if (Groups is not GroupingOutcome.Matched matched || Lot is not { } cells || desk.Job is not { } job)
                return null;
            if (!ReferenceEquals(matchedGroups.Pack, matched.Pack) || !ReferenceEquals(matchedGroups.Givens, job.Givens))
                matchedGroups = (matched.Pack, job.Givens, JobGroups.Of(cells, matched.Pack.Groups.Select(group => (IReadOnlyList<string>)[.. group.Cells.Select(cell => cell.Label)]), job.Givens));
            return matchedGroups.Groups;
        }
    }

    /// <summary>What the grouping was asked.</summary>
    internal GroupsQuestion? GroupsAsked => GroupsQuestion.Of(desk.Job, Lot);

    /// <summary>Ends work of seconds whose question the job does not ask any more; answers of less end as they are asked anew.</summary>
    internal void EndWhatIsGone() => full.EndIfGone(desk.Job);

    /// <summary>Whether there are cells and a shape to group them into.</summary>
    internal bool HasGroups => desk.Job is { } job && JobGroups.AreOfCells(job);

    // One answer a log: the energy asks the last one while the screen shows another, and neither may cost the other its answer.
    private Derived<LogQuestion, RideDiagnosis> DiagnosisOf(int which)
    {
        if (!diagnoses.TryGetValue(which, out Derived<LogQuestion, RideDiagnosis>? diagnosis))
        {
            diagnosis = new(desk, "judging the log", (question, work) => question.Answer(work.Stopped), _ => false);
            diagnoses.Add(which, diagnosis);
        }

        return diagnosis;
    }

    private EnergyQuestion? EnergyAsked()
    {
        if (desk.Job is not { } job || EnergyQuestion.WhyNot(job.Givens) is not null)
            return null;
        if (MatchedGroups is { Count: > 0 } known)
            return new EnergyQuestion(known, null, job.Givens);
        if (HasGroups || job.Logs.IsEmpty || Diagnosis(job.Logs.Count - 1) is not { CapacityTold: true } told || told.Groups.Any(group => group.CapacityAh is null))
            return null;
        return new EnergyQuestion([], told, job.Givens);
    }

    private FitQuestion.Answered Fitted(FitQuestion question, BackgroundWork work) => question.Answer(work.Stopped, Told(work), first => desk.Around.Back(() =>
    {
        firstLook = (question, first);
        desk.Around.Redraw();
    }));

    private ToldSparingly<FitProgress> Told(BackgroundWork work) => new(told =>
    {
        work.Best = $"best {told.Best} places" + (told.Bound is { } bound ? $", proven limit {bound}" : "");
        desk.Around.Back(desk.Around.Redraw);
    });

    private GroupingOutcome Match(GroupsQuestion question, BackgroundWork work) =>
        question.Answer(work.Stopped, new ToldSparingly<GroupingProgress>(best =>
        {
            work.Best = $"smallest {best.SmallestAh:0.000} Ah, all within {best.SpreadAh:0.000} Ah";
            desk.Around.Back(desk.Around.Redraw);
        }));
}
