using System.CommandLine;
using System.Diagnostics;
using PackPlanner.Core.Sizing;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>size NEED.json: how many in series and in parallel, of which cell.</summary>
internal static class SizeVerb
{
    private static readonly Argument<string> Need = new("NEED.json") { Description = "cell, pack, need, electrics, motor and limits; - for standard input" };

    internal static Verb Definition { get; } = new(
        "size",
        "how many cells in series and in parallel, and what each choice gives",
        [
            ("packplanner size sample-data/scooter/need.json", "the choices that no other beats, and what binds each"),
            ("packplanner size sample-data/scooter/need.json --json", "every figure of each choice"),
        ],
        [Need],
        [],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        if (!JsonInput.Open(call.Value(Need)!, call.StandardInput).Is(out JsonInput? input, out Refusal? why))
            return why;
        if (!SizeCase.Read(input, out IReadOnlyList<string> understood).Is(out SizingRequest? request, out why))
            return why;
        if (!SizeSpace.Read(input, call.Stopped).Is(out SizeSpace? space, out why) && why is not null)
            return why;
        return SizingSearch.Find(request, space is null ? null : space.Places) switch
        {
            SizingOutcome.Choices found => Answer(found.Options, [], understood, ExitCodes.Done),
            SizingOutcome.None none => Answer([], none.Reasons, understood, ExitCodes.NoAnswer),
            _ => throw new UnreachableException(),
        };
    }

    private static Reply Answer(
        IReadOnlyList<PackChoice> options, IReadOnlyList<SizingReason> reasons, IReadOnlyList<string> understood, int exitCode)
    {
        SizeDesignJson[] designs = [.. options.Select(SizeDesignJson.From)];
        SizeAnswer answer = new()
        {
            Design = designs.FirstOrDefault(),
            Options = designs,
            Reasons = reasons,
            Understood = understood,
            Cautions = options.Count > 0 ? CautionJson.From(options[0].Cautions) : [],
        };
        return Reply.Of(answer, SizeAnswerContext.Default.SizeAnswer, SizeWords.Lines(options, reasons), SizeWords.Table(options), exitCode);
    }
}
