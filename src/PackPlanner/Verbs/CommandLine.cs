using System.Collections.Concurrent;
using System.CommandLine;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>From the words that were typed to an answer on the streams and an exit code.</summary>
internal static class CommandLine
{
    private static readonly ConcurrentDictionary<Verb, RootCommand> Described = new(ReferenceEqualityComparer.Instance);

    /// <summary>Runs one verb.</summary>
    /// <param name="args">The words after the program's name; the first is the verb.</param>
    /// <param name="standardInput">Opens standard input.</param>
    /// <param name="output">Standard output.</param>
    /// <param name="notes">Standard error.</param>
    /// <param name="stopped">Cancelled when the user stops the program.</param>
    /// <returns>The exit code.</returns>
    internal static int Run(
        string[] args, Func<Stream> standardInput, TextWriter output, TextWriter notes, CancellationToken stopped)
    {
        // Until the words are read, so that a misreading is told as it was asked for.
        bool json = args.TakeWhile(word => word != "--").Any(word => word is "--json" or "--json=true");
        Verb? verb = VerbList.All.FirstOrDefault(known => known.Name == args[0]);
        if (verb is null)
            return Print(UnknownVerb(args[0]), json, output, notes);
        if (args.TakeWhile(word => word != "--").Any(word => word is "--help" or "-h" or "-?"))
        {
            output.Write(HelpText.Of(verb));
            return ExitCodes.Done;
        }

        ParseResult parsed = Describe(verb).Parse(args[1..]);
        if (Misreading.Of(parsed, verb, args[1..]) is { } misread)
            return Print(misread, json, output, notes);
        json = parsed.GetValue(CommonOptions.Json);
        using TimeLimit limit = new(stopped);
        VerbCall call = new(parsed, standardInput, notes, limit);
        if (call.Quantity<Duration>(CommonOptions.TimeLimit, "a time", "30s") is { } time)
        {
            if (time.Seconds < 0)
                call.Refuse(CommonOptions.TimeLimit.Name, "a time below 0 has passed already", "Write --time-limit 30s.");
            limit.Start(time.Seconds);
        }

        _ = call.Columns;
        Outcome<Reply> outcome = call.Wrong is { } wrong ? wrong : Answer(verb, call);
        if (stopped.IsCancellationRequested)
            return Print(Halted("packplanner", "it was stopped", "Start it again."), json, output, notes);
        if (!outcome.Is(out Reply? reply, out Refusal? why))
            return Print(why, json, output, notes);
        if (call.UnmetColumn() is { } unmet)
            return Print(unmet, json, output, notes);
        if (call.Why is { } what && !reply.ExplainsItself)
        {
            if (!WhyAnswer.In(reply.Json(), what, verb.Name).Is(out WhyAnswer? found, out why))
                return Print(why, json, output, notes);
            reply = Reply.Of(found, WhyAnswerContext.Default.WhyAnswer, found.Lines(), MainTable.Empty);
        }

        return Deliver(reply, parsed, json, output, notes);
    }

    // Searches come back with the best so far; what ends here has read or judged too little to have any.
    private static Outcome<Reply> Answer(Verb verb, VerbCall call)
    {
        try
        {
            return verb.Run(call);
        }
        catch (OperationCanceledException)
        {
            return Halted(CommonOptions.TimeLimit.Name, "the time was over before there was any answer", "Give it more time, or leave the limit out.");
        }
    }

    private static Refusal Halted(string where, string why, string next) =>
        new Refusal(ExitCodes.Stopped, "stopped", new Core.Problem(where, $"{why}; nothing was written", next));

    /// <summary>The parser's view of a verb, made once: an option remembers every command that it was ever added to.</summary>
    internal static RootCommand Describe(Verb verb) => Described.GetOrAdd(verb, Describing);

    private static RootCommand Describing(Verb verb)
    {
        RootCommand command = new(verb.Summary);
        command.Options.Clear();
        command.Directives.Clear();
        foreach (Argument argument in verb.Arguments)
            command.Arguments.Add(argument);
        foreach (Option option in verb.Options.Concat(CommonOptions.All))
            command.Options.Add(option);
        command.SetAction(_ => 0);
        return command;
    }

    private static int Deliver(Reply reply, ParseResult parsed, bool json, TextWriter output, TextWriter notes)
    {
        bool us = parsed.GetValue(CommonOptions.Units) == "us";
        string text = json ? reply.Json()
            : parsed.GetValue(CommonOptions.Plain) ? PlainFacts.Of(reply.Json(), us)
            : parsed.GetValue(CommonOptions.Csv) ? reply.Table.ToCsv(parsed.GetValue(CommonOptions.DecimalOut) == "comma")
            : us ? UsUnits.Of(AnswerWords.Of(reply.Words, reply.Answer))
            : AnswerWords.Of(reply.Words, reply.Answer);
        if (parsed.GetValue(CommonOptions.Ascii) && !json)
            text = AsciiText.Of(text);
        if (parsed.GetValue(CommonOptions.Output) is { } file)
        {
            if (AnswerFile.Write(file, text) is { } why)
                return Print(why, json, output, notes);
        }
        else
        {
            output.Write(text);
        }

        bool grave = reply.Answer.Cautions.Any(caution => caution.Signal is "DANGER" or "WARNING");
        return parsed.GetValue(CommonOptions.Strict) && grave && reply.ExitCode == ExitCodes.Done
            ? ExitCodes.Strict
            : reply.ExitCode;
    }

    private static Refusal UnknownVerb(string typed)
    {
        string near = NearestName.Of(typed, VerbList.All.Select(verb => verb.Name));
        return Refusal.CommandLine("unknown-verb", typed, $"\"{OneLine.Of(typed)}\" is neither a verb nor a job file that exists",
            $"Did you mean {near}? packplanner help lists them all.");
    }

    internal static int Print(Refusal why, bool json, TextWriter output, TextWriter notes)
    {
        if (json)
            output.Write(RefusalWords.Json(why));
        else
            notes.Write(RefusalWords.Lines(why));
        return why.ExitCode;
    }
}
