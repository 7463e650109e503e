using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>What step 4 says: a first look at once, and the full search as soon as it has ended, which counts as the verb fit does.</summary>
internal static class CavityWords
{
    private const string Question = "What goes into this space?";

    internal static StepPicture Say(Desk desk)
    {
        if (desk.Job is null)
            return new StepPicture(Question, "No job is open.", "a: begin a job, type the space; or 1 Job opens one");
        if (desk.Job.FitCase is null)
            return new StepPicture(Question, "No space is described yet.", "a: type its inside size, or i: add a case file");
        if (desk.Answers is { Fit: null, WasStopped: true })
            return StepPicture.Stopped(Question, 4);
        if (desk.Answers.Fit is not { } known)
            return Looking(desk);
        if (known.Answer is not { } answer)
            return new StepPicture(Question, $"{known.WhyNot!.Problem.Where}: {known.WhyNot.Problem.Why}.", known.WhyNot.Problem.Remedy);
        if (!answer.Fits)
            return NoRoom(desk, answer);

        FitAnswer? most = desk.Answers.MostPlaces;
        string weight = answer.CellMassKg is { } kg ? $" The cells weigh {desk.Look.Mass(kg)}." : "";
        (string first, string last) = WayIn(LayoutOfJob.TooSmall(answer));
        return new StepPicture(Question, $"{first}{Count(desk, answer, most)}.{weight}{last}", Next(desk, answer, most), [.. LayoutOfJob.Cautions(answer, desk.Job.Givens)])
        {
            Short = $"{first}{(most ?? answer).Cells.Count} places{Takes(most ?? answer)}{((most ?? answer).FirstLook ? "; more may fit" : "")}.{last}",
        };
    }

    // That nothing gets in goes before all counts; that the pack is built inside comes after them.
    private static (string First, string Last) WayIn(WayIn? tooSmall) => tooSmall switch
    {
        null => ("", ""),
        { CellPasses: false } => ($"No cell gets in: {tooSmall.Opening} is too small. ", ""),
        _ => ("", " Only single cells get in."),
    };

    private static StepPicture Looking(Desk desk) => desk.Answers.FirstLook is not { } first
        ? new StepPicture(Question, "Places are being looked for.", "Esc stops the search")
        : new StepPicture(Question, $"First look, more may fit: {Places(first)}{(first.Series is { } series && desk.Job!.Givens.Parallel is { } parallel ? $"; {series * parallel} are needed" : "")}.", "The full search looks for more (Esc ends it)");

    private static StepPicture NoRoom(Desk desk, FitAnswer first)
    {
        FitAnswer answer = desk.Answers.MostPlaces is { Fits: false } most ? most : first;
        FitReason reason = answer.Reasons[0];
        string turned = reason.WhenTurned is { } n ? $"Turned another way (g) at least {n} go in; as they stand: " : "";
        string next = reason.WhenTurned is { } held ? $"g: turn the cells, where their maker allows it: at least {held} go in" : $"{reason.Change?.TrimEnd('.') ?? "a: change the space"}{Fewer(desk, answer)}";
        string says = turned + WhyNot(desk, answer, reason.Text);
        return new StepPicture(Question, char.ToUpperInvariant(says[0]) + says[1..], next, [.. LayoutOfJob.Cautions(answer, desk.Job!.Givens)])
        {
            Short = reason.WhenTurned is { } other ? $"Turned another way (g) at least {other} go in." : reason.Text.StartsWith(Fit(answer), StringComparison.Ordinal) ? $"It does not fit: {Clause(reason.Text)}."
                : $"{answer.Cells.Count} places: it does not fit. {Clause(reason.Text)}",
        };
    }

    private static string WhyNot(Desk desk, FitAnswer answer, string reason)
    {
        if (answer is { Cells.Count: 0, Stopped: false })
            return $"no cell goes in: {reason}";
        bool never = answer.Bound < (answer.Series ?? 1) * (desk.Job!.Givens.Parallel ?? desk.Answers.Fit?.Case?.Parallel ?? 1);
        string which = never ? "It can never fit: " : answer.FirstLook ? "First look, more may fit: " : SoFar(desk, answer);
        string fit = Fit(answer);
        return reason.StartsWith(fit, StringComparison.Ordinal) ? $"{which}{fit}{Limit(answer)}{reason[fit.Length..]}" : $"{which}{Places(answer)}, but it does not fit: {reason}";
    }

    // Many reasons begin with the count, which is told once.
    private static string Fit(FitAnswer answer) => $"{answer.Cells.Count} places fit";

    private static string Clause(string text) => text.Split(':')[0];

    /// <summary>Cells in parallel that the full search can link and the first look could not; null where it cannot, or while it looks.</summary>
    internal static int? Larger(Desk desk) =>
        desk.Answers is { Fit.Answer: { Series: not null } first, MostPlaces: { Fits: true, Parallel: { } parallel } } && parallel > (first.Parallel ?? 0) ? parallel : null;

    /// <summary>The line of the full search in the list.</summary>
    internal static string OfFullSearch(Desk desk, FitAnswer first, FitAnswer? most) => most switch
    {
        null => "not ended",
        _ when IsNoBetter(first, most) => $"{SoFar(desk, most)}no more than these",
        _ => $"{SoFar(desk, most)}{Places(most)}{Takes(most)}{(most.NestKind == "free" ? $", not in rows{(most.RegularCount > first.Cells.Count ? $"; in rows {most.RegularCount}" : "")}" : "")}"
            + (most.Parallel > (first.Parallel ?? 0) ? $"; Enter takes {most.Parallel} in parallel" : ""),
    };

    /// <summary>The counts for copying.</summary>
    internal static string Copied(Desk desk, FitAnswer first, FitAnswer? most) => $"{Count(desk, first, most)}, {first.Used} used";

    private static string Count(Desk desk, FitAnswer answer, FitAnswer? most)
    {
        string built = $"{Takes(answer)}{(answer.Series is null ? "" : $", {answer.Cells.Count - answer.Used} left over")}";
        if (most is null)
            return $"{(answer.FirstLook ? "First look, more may fit: " : Stopped(answer))}{Places(answer)}{built}";
        return IsNoBetter(answer, most) && !most.Stopped
            ? $"{Places(answer)}{built}"
            : $"{(most.Stopped ? SoFar(desk, most) : "Full search: ")}{Places(most)}{(most.Parallel == answer.Parallel ? "" : Takes(most))}. In {CavityFacts.Nest(answer)}, as drawn: {answer.Cells.Count}{built}";
    }

    private static string Next(Desk desk, FitAnswer answer, FitAnswer? most) => (answer, most) switch
    {
        _ when LayoutOfJob.TooSmall(answer) is { CellPasses: false } way => $"Enter on the opening: a larger way in, or a: another; {way.Opening} lets no cell in",
        ({ Series: null }, _) => "e: say series and parallel, then 5 Place",
        ({ FirstLook: true }, null) => LayoutOfJob.TooSmall(answer) is null ? "Full search runs (Esc ends it); 5 Place builds this" : "Full search runs (Esc ends it); 5 Place builds this, cell by cell",
        (_, { Stopped: true }) when desk.Answers.IsSearchingInFull => "The full search looks on (Esc keeps this); 5 Place builds what is drawn",
        (_, { Stopped: true }) => "4 looks on; or 5 Place: which cell goes where, as drawn",
        _ when Larger(desk) is { } parallel => $"5 Place builds what is drawn; Enter on \"{CavityFacts.FullSearch}\" takes {parallel} in parallel",
        _ when LayoutOfJob.TooSmall(answer) is not null => "5 Place: which cell goes where; one by one, the furthest first",
        _ => "5 Place: which cell goes where",
    };

    private static bool IsNoBetter(FitAnswer first, FitAnswer most) => most.Cells.Count == first.Cells.Count && most.Parallel == first.Parallel;

    private static string Stopped(FitAnswer answer) => answer.Stopped ? "The search was stopped, more may fit: " : "";

    // What was found before the step was left stands until the search, begun again, has more.
    private static string SoFar(Desk desk, FitAnswer most) => most.Stopped && desk.Answers.IsSearchingInFull ? "So far, more may fit: " : Stopped(most);

    private static string Places(FitAnswer answer) => $"{answer.Cells.Count} places{Limit(answer)}";

    private static string Limit(FitAnswer answer) => answer.Bound is { } bound ? $" (proven limit {bound})" : "";

    private static string Takes(FitAnswer answer) => answer is { Series: { } s, Parallel: { } p } ? $"; {s}s{p}p takes {answer.Used}" : "";

    // How many each group may have so that the places are enough; whether they can be linked then is for the search to say.
    private static string Fewer(Desk desk, FitAnswer answer) =>
        desk.Job!.Givens is { Series: { } series, Parallel: { } parallel } && answer.Cells.Count / series is > 0 and { } fewer && fewer < parallel
            ? $", or e: try {fewer} in parallel" : ", or e: another shape";
}
