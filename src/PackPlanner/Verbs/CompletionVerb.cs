using System.CommandLine;
using System.Text;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>completion SHELL: a script that completes verbs and options, made from the same definitions as the parser.</summary>
internal static class CompletionVerb
{
    private static readonly string[] Shells = ["bash", "zsh", "fish", "pwsh"];

    private static readonly Argument<string> Shell = new("SHELL") { Description = "bash, zsh, fish or pwsh" };

    internal static Verb Definition { get; } = new(
        "completion",
        "a script that lets your shell complete verbs and options",
        [
            ("packplanner completion bash --output ~/.local/share/bash-completion/completions/packplanner", "for bash, from the next shell on"),
            ("packplanner completion fish --output ~/.config/fish/completions/packplanner.fish", "for fish"),
        ],
        [Shell],
        [],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string shell = call.Value(Shell)!;
        string? script = shell switch
        {
            "bash" => Bash(),
            "zsh" => Zsh(),
            "fish" => Fish(),
            "pwsh" => PowerShell(),
            _ => null,
        };
        if (script is null)
            return Refusal.CommandLine("unknown-shell", $"completion {shell}", $"there is no completion for \"{shell}\"",
                $"Did you mean {NearestName.Of(shell, Shells)}? Known are {string.Join(", ", Shells)}.");
        return Reply.Of(new CompletionAnswer(shell, script), CompletionAnswerContext.Default.CompletionAnswer,
            script.TrimEnd('\n').Split('\n'), MainTable.Empty);
    }

    private static string Options(Verb verb) =>
        string.Join(' ', verb.Options.Concat(CommonOptions.All).Select(option => option.Name).Append("--help"));

    private static string Verbs() => string.Join(' ', VerbList.All.Select(verb => verb.Name));

    private static string Bash()
    {
        StringBuilder text = new();
        text.Append("_packplanner() {\n  local word=\"${COMP_WORDS[COMP_CWORD]}\" options=\"\"\n  COMPREPLY=()\n");
        text.Append("  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    COMPREPLY=($(compgen -W \"").Append(Verbs()).Append("\" -- \"$word\"))\n    return\n  fi\n");
        text.Append("  case \"${COMP_WORDS[1]}\" in\n");
        foreach (Verb verb in VerbList.All)
            text.Append($"    {verb.Name}) options=\"{Options(verb)}\" ;;\n");
        text.Append("  esac\n  case \"$word\" in -*) COMPREPLY=($(compgen -W \"$options\" -- \"$word\")) ;; esac\n}\n");
        text.Append("complete -o default -F _packplanner packplanner\n");
        return text.ToString();
    }

    private static string Zsh()
    {
        StringBuilder text = new("#compdef packplanner\n_packplanner() {\n  if (( CURRENT == 2 )); then\n    local -a verbs=(\n");
        foreach (Verb verb in VerbList.All)
            text.Append($"      '{verb.Name}:{verb.Summary.Replace("'", "'\\''", StringComparison.Ordinal)}'\n");
        text.Append("    )\n    _describe verb verbs\n    return\n  fi\n  local -a options=()\n  case $words[2] in\n");
        foreach (Verb verb in VerbList.All)
            text.Append($"    {verb.Name}) options=({Options(verb)}) ;;\n");
        text.Append("  esac\n  if [[ $PREFIX == -* ]]; then compadd -- $options; else _files; fi\n}\ncompdef _packplanner packplanner\n");
        return text.ToString();
    }

    private static string Fish()
    {
        StringBuilder text = new();
        foreach (Verb verb in VerbList.All)
        {
            text.Append($"complete -c packplanner -n __fish_use_subcommand -a {verb.Name} -d '{verb.Summary.Replace("'", "\\'", StringComparison.Ordinal)}'\n");
            foreach (Option option in verb.Options.Concat(CommonOptions.All))
                text.Append($"complete -c packplanner -n '__fish_seen_subcommand_from {verb.Name}' -l {option.Name[2..]}\n");
        }

        return text.ToString();
    }

    private static string PowerShell()
    {
        StringBuilder text = new("Register-ArgumentCompleter -Native -CommandName packplanner -ScriptBlock {\n  param($word, $line, $at)\n  $options = @{\n");
        foreach (Verb verb in VerbList.All)
            text.Append($"    '{verb.Name}' = '{Options(verb)}'\n");
        text.Append("  }\n  $words = $line.CommandElements | ForEach-Object { $_.ToString() }\n");
        text.Append("  $choices = if ($words.Count -le 2 -and $options.Keys -notcontains $words[1]) { $options.Keys } else { $options[$words[1]] -split ' ' }\n");
        text.Append("  $choices | Where-Object { $_ -like \"$word*\" } | Sort-Object | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) }\n}\n");
        return text.ToString();
    }
}
