using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>Where the line under the cursor of the Cavity step comes from.</summary>
internal static class CavityWhereFrom
{
    internal static WhereFrom Of(FitAnswer answer, FitAnswer? most, (string Word, string Says, CasePart? Part) line, Look look) => line switch
    {
        { Part: { } part } => new WhereFrom($"{part.Word}: {line.Says}",
            [("said by", "the case, as it was typed or read; Enter changes it"), ("mm", "from the left, front, floor corner of the space: x to the right, y to the back, z up")]),
        { Word: "cell" } => new WhereFrom($"cell: {line.Says}",
            [("said by", "the case, as it was typed or read; the line \"cell\" among its parts below changes the size"), ("mm", "bare; what must stay free round it are the clearances")]),
        { Word: "used" } when answer is { Series: { } series, Parallel: { } parallel } => new WhereFrom(line.Says,
            [("sum", $"{series} groups in series x {parallel} cells in parallel; {answer.Cells.Count - answer.Used} of the {answer.Cells.Count} places are left over"), ("why", "the largest groups whose cells lie side by side, each group beside the next, so that they can be linked; more may be asked by e")]),
        { Word: "cells weigh" or "with parts" } => new WhereFrom(line.Says,
            [("sum", $"{answer.Used} cells used x {look.Mass(answer.CellMassKg / answer.Used, 3)} each, as the case or the job says; with parts: and its weighed parts"), ("left out", "strip, holders, case and wiring, unless the case lists them as weighed parts")]),
        { Word: "middle" } => new WhereFrom(line.Says,
            [("sum", answer.CentreOfMass is null ? "middle of each used cell, over their number; a weighed part without a place, or cells without a mass, leave the whole unknown" : "middle of each used cell and weighed part times its mass, over the whole mass"), ("from", "the left, front, floor corner of the space")]),
        { Word: "spare left" or "front" or "below" or ['r', 'o', 'o', 'm', ..] } => new WhereFrom($"{line.Word} {line.Says}",
            [("is", $"room between the cells at all {answer.Cells.Count} places and the walls, beyond the clearances that the case asks for"), ("rule", "measured from the outermost place on each side"), ("used", answer.Used < answer.Cells.Count ? $"the {answer.Used} cells used leave at least as much; how large their own block is, the line \"way in\" tells" : "every place is used")]),
        { Word: CavityFacts.FullSearch } when most is not null => new WhereFrom($"{CavityFacts.FullSearch}: {line.Says}",
        [
            ("searched", $"as long as the verb fit does, and with the same counts: regular nests, then cells free to lie anywhere; best: {CavityFacts.Nest(most)}"),
            ("limit", most.Bound is { } bound ? $"no layout holds more than {bound}: {most.BoundMethod}" : "no useful limit could be proven"),
            ("nests", most is { RegularCount: { } rows, FreeCount: { } free } ? $"{rows} in a regular nest drawn out to the walls, as moulded holders need; {free} when cells may lie freely" : "boxes stand in slabs"),
            ("verb", $"packplanner fit CASE.json counts the same{SaidByJob}"),
            ("not built", "5 Place and the sheets keep to rows, as holders want them, as long as rows hold what is asked; ask more in parallel and they take this"),
        ]),
        _ => new WhereFrom($"{answer.Cells.Count} places",
        [
            ("searched", $"regular nests at every angle and offset; best: {CavityFacts.Nest(answer)}"),
            ("limit", answer.Bound is { } bound ? $"no layout holds more than {bound}: {answer.BoundMethod}" : "no useful limit could be proven"),
            ("verb", answer.FirstLook ? $"packplanner fit CASE.json --quick counts the same, a first look{SaidByJob}; without --quick it counts as the line \"{CavityFacts.FullSearch}\"" : $"packplanner fit CASE.json counts the same{SaidByJob}"),
        ]),
    };

    // The case alone may ask for less than the job, whose series and parallel win.
    private const string SaidByJob = ", with series, parallel and the weight allowed as the job has them";
}
