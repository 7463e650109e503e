using System.CommandLine;
using System.Reflection;
using System.Text;

namespace PackPlanner.Verbs;

/// <summary>The manual page, made from the same definitions that the parser reads, in the man macros of troff.</summary>
internal static class ManPage
{
    internal static string Text()
    {
        StringBuilder text = new();
        text.Append($".TH PACKPLANNER 1 \"\" \"packplanner {Version()}\"\n");
        Section(text, "NAME", "packplanner \\- sort used lithium cells, find what limits a pack, fit a pack into a space");
        text.Append(".SH SYNOPSIS\n.B packplanner\n[\\fIJOB\\fR]\n.br\n.B packplanner\n\\fIVERB\\fR [\\fIoptions\\fR] ...\n");
        Section(text, "DESCRIPTION", "Without a verb it opens the text screens, which need a terminal. Each verb does a part of the same work and prints words, or one JSON document with \\fB\\-\\-json\\fR.");
        text.Append(".SH VERBS\n");
        foreach (Verb verb in VerbList.All)
            Of(text, verb);
        text.Append(".SH OPTIONS ALIKE EVERYWHERE\n");
        Options(text, CommonOptions.All);
        text.Append(".SH EXIT STATUS\n");
        foreach ((string code, string means) in new[]
        {
            ("0", "done"), ("1", "a fault in the program"), ("2", "a wrong command line"), ("3", "an input that cannot be read, or in two ways"),
            ("4", "no answer exists; the nearest miss is told"), ("5", "done, but a DANGER or WARNING stands and \\fB\\-\\-strict\\fR was given"), ("130", "stopped"),
        })
            text.Append($".TP\n.B {code}\n{means}\n");
        Section(text, "CAUTION", "Lithium packs can burn and, above 60 V DC, kill. Local rules and trained people come first.");
        return text.ToString();
    }

    private static void Of(StringBuilder text, Verb verb)
    {
        text.Append($".SS {Escaped(verb.Name)}\n{Line(verb.Summary)}\n");
        foreach (Argument argument in verb.Arguments)
            text.Append($".TP\n.I {Escaped(argument.Name)}\n{Line(argument.Description)}\n");
        Options(text, verb.Options);
        text.Append(".PP\nExamples:\n");
        foreach ((string line, string does) in verb.Examples)
            text.Append($".TP\n.B {Escaped(line)}\n{Line(does)}\n");
    }

    private static void Options(StringBuilder text, IEnumerable<Option> options)
    {
        foreach (Option option in options)
            text.Append($".TP\n.B {Escaped(option.Name)}\n{Line(option.Description)}\n");
    }

    private static void Section(StringBuilder text, string name, string body) => text.Append($".SH {name}\n{body}\n");

    // A line that begins with a point or an apostrophe is a request to troff, not text.
    private static string Line(string? text)
    {
        string escaped = Escaped(text ?? "");
        return escaped is ['.' or '\'', ..] ? "\\&" + escaped : escaped;
    }

    private static string Escaped(string text) => text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal);

    private static string Version() =>
        typeof(ManPage).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "";
}
