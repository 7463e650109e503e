using System.CommandLine;
using System.Diagnostics;
using System.Text.Json;
using PackPlanner.Core.Sizing;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>size NEED.json: how many in series and in parallel, of which cell.</summary>
internal static class SizeVerb
{
    private static readonly Argument<string?> Need = new("NEED.json")
    {
        Description = "cell, pack, need, electrics, motor and limits; - for standard input; not needed where options say it all",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private const string NoFile = "the options";

    internal static Verb Definition { get; } = new(
        "size",
        "how many cells in series and in parallel, and what each choice gives",
        [
            ("packplanner size sample-data/scooter/need.json", "the choices that no other beats, and what binds each"),
            ("packplanner size sample-data/scooter/need.json --json", "every figure of each choice"),
            ("packplanner size sample-data/scooter/need.json --range 60km --max-mass 20kg", "the same with two fields changed"),
            ("packplanner size --chemistry NMC --rated-ah 5Ah --controller-max-v 60V --pack-empty-v 36V --use 14Wh/km --range 60km --cell-resistance 18mohm --leads 8mohm --speed 22km/h", "without a file"),
        ],
        [Need],
        SizeOptions.All,
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        JsonElement? typed = SizeOptions.Typed(call);
        if (call.Wrong is { } wrong)
            return wrong;
        if (!Input(call, typed).Is(out JsonInput? input, out Refusal? why))
            return why;
        if (!SizeAsked.Of(input, call.Stopped).Is(out (SizingOutcome Outcome, IReadOnlyList<string> Understood) asked, out why))
            return AsTyped(call, why);
        return asked.Outcome switch
        {
            SizingOutcome.Choices found => Answer(call, found.Options, [], asked.Understood, ExitCodes.Done),
            SizingOutcome.None none => Answer(call, [], none.Reasons, asked.Understood, ExitCodes.NoAnswer),
            _ => throw new UnreachableException(),
        };
    }

    private static Outcome<JsonInput> Input(VerbCall call, JsonElement? typed)
    {
        if (call.Value(Need) is { } file)
        {
            if (!JsonInput.Open(file, call.StandardInput).Is(out JsonInput? read, out Refusal? why))
                return why;
            if (typed is not { } over)
                return read;
            return over.TryGetProperty("cell", out _) && read.Has("cells")
                ? Refusal.Input("several-cells", file, "it lists several cell models, and an option describes one", "Leave the options of the cell out, or give one \"cell\" in the file.")
                : read.With(over);
        }

        return typed is { } all
            ? JsonInput.Of(NoFile, all)
            : Refusal.CommandLine("bad-command-line", "size", "neither NEED.json nor an option says what is needed", "packplanner help size shows both ways.");
    }

    // A field that was typed is named by its option, and is wrong whatever the file holds.
    private static Refusal AsTyped(VerbCall call, Refusal why)
    {
        if (SizeOptions.OptionAt(call, why.Problem.Where) is { } option)
            return why with { ExitCode = ExitCodes.CommandLine, Code = "bad-option", Problem = why.Problem with { Where = option } };
        return call.Value(Need) is null ? why with { ExitCode = ExitCodes.CommandLine } : why;
    }

    private static Reply Answer(
        VerbCall call, IReadOnlyList<PackChoice> options, IReadOnlyList<SizingReason> reasons, IReadOnlyList<string> understood, int exitCode)
    {
        SizeDesignJson[] designs = [.. options.Select(SizeDesignJson.From)];
        SizeAnswer answer = new()
        {
            Design = designs.FirstOrDefault(),
            Options = designs,
            Reasons = reasons,
            Understood = understood,
            StoppedBy = call.Stopped.IsCancellationRequested ? "time-limit" : null,
            Cautions = options.Count > 0 ? CautionJson.From(options[0].Cautions) : [],
        };
        return Reply.Of(answer, SizeAnswerContext.Default.SizeAnswer, SizeWords.Lines(options, reasons), SizeWords.Table(options), exitCode);
    }
}
