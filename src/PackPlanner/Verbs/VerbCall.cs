using System.CommandLine;
using PackPlanner.Core.Cells;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>One call of a verb: the options as typed, and the streams that it may use.</summary>
/// <remarks>
/// The readers of options remember the first thing that is wrong and go on, so that a verb reads all its options
/// and then returns <see cref="Wrong"/> once.
/// </remarks>
internal sealed class VerbCall(ParseResult parsed, Func<Stream> standardInput, TextWriter notes, TimeLimit limit)
{
    private ColumnChoices? _columns;

    /// <summary>Opens standard input, for a file named "-".</summary>
    internal Func<Stream> StandardInput { get; } = standardInput;

    /// <summary>Cancelled by the user's key, a signal, or --time-limit.</summary>
    internal CancellationToken Stopped => limit.Passed;

    /// <summary>Cancelled by the same, and some time before --time-limit: what must be followed by more work ends here.</summary>
    internal CancellationToken StoppedSoon => limit.PassesSoon;

    /// <summary>The first option that could not be understood; null when all could.</summary>
    internal Refusal? Wrong { get; private set; }

    internal bool Json => parsed.GetValue(CommonOptions.Json);

    internal int Seed => parsed.GetValue(CommonOptions.Seed);

    internal bool Ascii => parsed.GetValue(CommonOptions.Ascii);

    internal bool Verbose => parsed.GetValue(CommonOptions.Verbose);

    /// <summary>auto, point or comma.</summary>
    internal string Decimal => parsed.GetValue(CommonOptions.Decimal)!;

    /// <summary>auto, discharge or charge: which one is positive in the file.</summary>
    internal string CurrentSign => parsed.GetValue(CommonOptions.CurrentSign)!;

    /// <summary>point or comma: how figures are written into tables.</summary>
    internal string DecimalOut => parsed.GetValue(CommonOptions.DecimalOut)!;

    internal string? Why => parsed.GetValue(CommonOptions.Why);

    internal T? Value<T>(Option<T> option) => parsed.GetValue(option);

    internal T? Value<T>(Argument<T> argument) => parsed.GetValue(argument);

    /// <summary>Whether the user typed this option himself.</summary>
    internal bool Given(Option option) => parsed.GetResult(option) is { Implicit: false };

    /// <summary>A note for standard error, unless --quiet.</summary>
    internal void Note(string line)
    {
        if (!parsed.GetValue(CommonOptions.Quiet))
            notes.WriteLine(OneLine.Of(line));
    }

    /// <summary>--chemistry, null when not given.</summary>
    internal Chemistry? Chemistry()
    {
        string? typed = parsed.GetValue(CommonOptions.Chemistry);
        if (typed is null)
            return null;
        Chemistry? found = Chemistries.Find(typed);
        if (found is null)
            Refuse("--chemistry", $"\"{typed}\" is not a chemistry that is known here", ChemistryNames.Remedy(typed));
        return found;
    }

    /// <summary>--column, the same object for all files, so that it is known in the end which of it was of use.</summary>
    internal ColumnChoices Columns => _columns ??= ReadColumns();

    /// <summary>A --column that no file had a column for; null when all were of use.</summary>
    internal Refusal? UnmetColumn() => _columns?.Unmet.FirstOrDefault() is { } choice
        ? Refusal.Input("no-such-column", $"--column {choice}", $"no file that was read has a column {OneLine.Of(choice.Name)}", "packplanner look FILE lists the columns; #3 names the third one.")
        : null;

    private ColumnChoices ReadColumns()
    {
        List<ColumnChoice> choices = [];
        foreach (string typed in parsed.GetValue(CommonOptions.Column) ?? [])
        {
            if (ColumnChoice.Read(typed, out string why) is { } choice)
                choices.Add(choice);
            else
                Refuse("--column", why, "Write --column \"NAME=meaning:unit\", such as --column \"Bat A=current:mA\"; packplanner look FILE prints names and meanings.");
        }

        return new ColumnChoices(choices, CommonOptions.Column.Name);
    }

    /// <summary>What the common options say about reading a table or a log; a verb adds what its own options say.</summary>
    internal ReadOptions ReadOptions() => new()
    {
        Decimal = Decimal,
        CurrentSign = CurrentSign,
        Columns = Columns,
        Chemistry = Chemistry(),
        StandardInput = StandardInput,
        Stopped = Stopped,
    };

    /// <summary>--repeatability as a fraction, null when not given.</summary>
    internal double? RepeatabilityFraction()
    {
        double? fraction = Quantity<Ratio>(CommonOptions.Repeatability, "a share", "1.5%")?.DecimalFractions;
        if (fraction is < 0 or >= 1)
            Refuse(CommonOptions.Repeatability.Name, "a tester repeats within a part of what it measures", "Give it such as 1.5%.");
        return fraction;
    }

    /// <summary>An option that carries a unit; null when not given or wrong.</summary>
    internal TQuantity? Quantity<TQuantity>(Option<string?> option, string wanted, string example)
        where TQuantity : struct, IQuantity =>
        parsed.GetValue(option) is { } typed ? Quantity<TQuantity>(option.Name, typed, wanted, example) : null;

    /// <summary>A typed value that carries a unit; null when wrong.</summary>
    internal TQuantity? Quantity<TQuantity>(string name, string typed, string wanted, string example)
        where TQuantity : struct, IQuantity
    {
        // An option whose name states its unit takes a bare number in it: --rated-ah 5, --full-v 4.2.
        string unit = name.EndsWith("-ah", StringComparison.Ordinal) ? "Ah" : name.EndsWith("-v", StringComparison.Ordinal) ? "V" : "";
        if (unit.Length > 0 && TypedQuantity.Split(typed, out _, out string none) && none.Length == 0)
            typed += unit;
        if (TypedQuantity.TryRead(typed, wanted, example, out TQuantity quantity, out string why))
            return quantity;
        Refuse(name, why, $"Write {name} {example}.");
        return null;
    }

    /// <summary>Remembers the first thing that is wrong with the command line.</summary>
    internal void Refuse(string where, string why, string remedy) =>
        Wrong ??= Refusal.CommandLine("bad-option", where, why, remedy);
}
