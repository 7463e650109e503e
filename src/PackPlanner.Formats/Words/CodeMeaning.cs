namespace PackPlanner.Formats.Words;

/// <summary>What a code other than a caution's means.</summary>
/// <param name="Code">As it stands in answers and errors.</param>
/// <param name="Kind">What kind of word it is: error, verdict reason, finding, verdict, event of a log and so on.</param>
/// <param name="Means">When it is said.</param>
/// <param name="Do">What to do next.</param>
public sealed record CodeMeaning(string Code, string Kind, string Means, string Do)
{
    /// <summary>Why codes of this kind are said at all.</summary>
    public string Why => Kind switch
    {
        ErrorMeanings.Kind => "Nothing was guessed, and nothing was changed or written: the message itself says where, what was found and what was expected.",
        FindingMeanings.Reason => "It stands beside a cell's verdict with the value, the limit and whose limit that is, so that the verdict can be repeated by hand.",
        FindingMeanings.Finding => "It names what kind of fault the log speaks for; its evidence and how sure it is stand beside it.",
        _ => "It stands in the answer beside the figures that it was judged by, so that it can be judged again by hand.",
    };
}
