using System.CommandLine;
using System.Text;

namespace PackPlanner.Verbs;

/// <summary>Help, made from the same definitions that the parser reads.</summary>
internal static class HelpText
{
    internal static string OfProgram()
    {
        StringBuilder text = new();
        text.Append("packplanner sorts used lithium cells, finds what limits a pack, and fits a pack into a space.\n\n");
        text.Append("  packplanner [JOB]      the text screens (needs a terminal)\n");
        text.Append("  packplanner VERB ...   the same work by command\n\n");
        foreach (Verb verb in VerbList.All)
            text.Append($"  {verb.Name,-11} {verb.Summary}\n");
        text.Append("\npackplanner help VERB shows examples and options. --json prints one JSON document.\n");
        text.Append("Lithium packs can burn and, above 60 V DC, kill. Local rules and trained people come first.\n");
        return text.ToString();
    }

    internal static string Of(Verb verb)
    {
        StringBuilder text = new();
        text.Append($"packplanner {verb.Name}: {verb.Summary}\n\nExamples\n");
        foreach ((string line, string does) in verb.Examples)
            text.Append($"  {line}\n      {does}\n");
        if (verb.Arguments.Count > 0)
            text.Append("\nTakes\n");
        foreach (Argument argument in verb.Arguments)
            text.Append($"  {argument.Name,-22} {argument.Description}\n");
        if (verb.Options.Count > 0)
            text.Append("\nOptions\n");
        foreach (Option option in verb.Options)
            text.Append($"  {option.Name,-22} {option.Description}\n");
        text.Append("\nOptions alike everywhere\n");
        foreach (Option option in CommonOptions.All)
            text.Append($"  {option.Name,-22} {option.Description}\n");
        return text.ToString();
    }
}
