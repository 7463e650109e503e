using System.CommandLine;
using System.Text;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>completion SHELL: a script that completes verbs and options, made from the same definitions as the parser.</summary>
internal static class CompletionVerb
{
    internal static readonly string[] Shells = ["bash", "zsh", "fish", "pwsh"];

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

    /// <summary>What a verb and an option look like to bash and zsh: any verb, where the words are those of the option everywhere.</summary>
    private static string Pattern(string option) => option.StartsWith('-') ? $"*' {option}'" : $"'{option}'";

    private static string Bash()
    {
        StringBuilder text = new();
        text.Append("_packplanner() {\n  local word=\"${COMP_WORDS[COMP_CWORD]}\" options=\"\"\n  COMPREPLY=()\n");
        text.Append("  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    COMPREPLY=($(compgen -W \"").Append(Verbs()).Append("\" -- \"$word\"))\n    return\n  fi\n");
        text.Append("  case \"${COMP_WORDS[1]}\" in\n");
        foreach (Verb verb in VerbList.All)
            text.Append($"    {verb.Name}) options=\"{Options(verb)}\" ;;\n");
        text.Append("  esac\n  case \"${COMP_WORDS[1]} ${COMP_WORDS[COMP_CWORD-1]}\" in\n");
        foreach ((string option, string[] values) in CompletionWords.OfOptions)
            text.Append($"    {Pattern(option)}) COMPREPLY=($(compgen -W \"{string.Join(' ', values)}\" -- \"$word\")); return ;;\n");
        text.Append("  esac\n  case \"$word\" in -*) COMPREPLY=($(compgen -W \"$options\" -- \"$word\")); return ;; esac\n  case \"${COMP_WORDS[1]}\" in\n");
        foreach ((string verb, string[] words, bool files) in CompletionWords.OfVerbs)
            text.Append($"    {verb}) COMPREPLY=($(compgen -W \"{string.Join(' ', words)}\" -- \"$word\"){(files ? " $(compgen -f -- \"$word\")" : "")}) ;;\n");
        text.Append("  esac\n}\n");
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
        text.Append("  esac\n  case \"$words[2] $words[CURRENT-1]\" in\n");
        foreach ((string option, string[] values) in CompletionWords.OfOptions)
            text.Append($"    {Pattern(option)}) compadd -- {string.Join(' ', values)}; return ;;\n");
        text.Append("  esac\n  if [[ $PREFIX == -* ]]; then compadd -- $options; return; fi\n  case $words[2] in\n");
        foreach ((string verb, string[] given, bool files) in CompletionWords.OfVerbs)
            text.Append($"    {verb}) compadd -- {string.Join(' ', given)}{(files ? "; _files" : "")} ;;\n");
        text.Append("    *) _files ;;\n  esac\n}\ncompdef _packplanner packplanner\n");
        return text.ToString();
    }

    private static string Fish()
    {
        StringBuilder text = new();
        foreach (Verb verb in VerbList.All)
        {
            text.Append($"complete -c packplanner -n __fish_use_subcommand -a {verb.Name} -d '{verb.Summary.Replace("'", "\\'", StringComparison.Ordinal)}'\n");
            foreach (Option option in verb.Options.Concat(CommonOptions.All))
            {
                string values = CompletionWords.OfOptions.TryGetValue(option.Name, out string[]? known) || CompletionWords.OfOptions.TryGetValue($"{verb.Name} {option.Name}", out known) ? $" -x -a '{string.Join(' ', known)}'" : "";
                text.Append($"complete -c packplanner -n '__fish_seen_subcommand_from {verb.Name}' -l {option.Name[2..]}{values}\n");
            }
        }

        foreach ((string verb, string[] words, bool files) in CompletionWords.OfVerbs)
            text.Append($"complete -c packplanner -n '__fish_seen_subcommand_from {verb}'{(files ? "" : " -f")} -a '{string.Join(' ', words)}'\n");
        return text.ToString();
    }

    private static string PowerShell()
    {
        StringBuilder text = new("Register-ArgumentCompleter -Native -CommandName packplanner -ScriptBlock {\n  param($word, $line, $at)\n  $options = @{\n");
        foreach (Verb verb in VerbList.All)
            text.Append($"    '{verb.Name}' = '{Options(verb)}'\n");
        text.Append("  }\n  $values = @{\n");
        foreach ((string option, string[] values) in CompletionWords.OfOptions)
            text.Append($"    '{option}' = '{string.Join(' ', values)}'\n");
        foreach ((string verb, string[] words, _) in CompletionWords.OfVerbs)
            text.Append($"    '{verb}' = '{string.Join(' ', words)}'\n");
        text.Append("  }\n  $words = $line.CommandElements | ForEach-Object { $_.ToString() }\n");
        text.Append("  $choices = if ($words.Count -le 2 -and $options.Keys -notcontains $words[1]) { $options.Keys }\n");
        text.Append("    elseif ($word -like '-*') { $options[$words[1]] -split ' ' }\n");
        text.Append("    else { $before = if ($word) { $words[-2] } else { $words[-1] }\n      $both = \"$($words[1]) $before\"\n      if ($values.ContainsKey($both)) { $values[$both] -split ' ' } elseif ($before -like '--*' -and $values.ContainsKey($before)) { $values[$before] -split ' ' } elseif ($values.ContainsKey($words[1])) { $values[$words[1]] -split ' ' } else { @() } }\n");
        text.Append("  $choices | Where-Object { $_ -like \"$word*\" } | Sort-Object | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) }\n}\n");
        return text.ToString();
    }
}
