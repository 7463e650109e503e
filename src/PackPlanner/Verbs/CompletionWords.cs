using PackPlanner.Core.Cells;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Pictures;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Verbs;

/// <summary>What may stand after an option or a verb, where that is one of a few words.</summary>
internal static class CompletionWords
{
    /// <summary>Words of an option; an option whose words differ by verb stands with each verb before it.</summary>
    internal static IReadOnlyDictionary<string, string[]> OfOptions { get; } = new SortedDictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["--chemistry"] = [.. Chemistries.All.Select(chemistry => chemistry.Name)],
        ["--color"] = ["auto", "always", "never"],
        ["--current-sign"] = ["auto", "discharge", "charge"],
        ["--decimal"] = ["auto", "point", "comma"],
        ["--decimal-out"] = ["point", "comma"],
        ["--units"] = ["metric", "us"],
        ["fit --prefer"] = ["places", "groups"],
        ["match --prefer"] = ["equal-ah", "even-currents"],
    };

    /// <summary>Words of a verb, and whether files stand beside them.</summary>
    internal static IEnumerable<(string Verb, string[] Words, bool Files)> OfVerbs =>
    [
        ("job", [.. JobActions.All.Select(action => action.Name)], true),
        ("sheet", [.. SheetCatalogue.All.Select(sheet => sheet.Name)], true),
        ("picture", [.. PictureCatalogue.All.Select(picture => picture.Name)], true),
        ("demo", [.. DemoJobs.Names], false),
        ("explain", [.. ExplainVerb.Codes], false),
        ("completion", [.. CompletionVerb.Shells], false),
        ("help", [.. VerbList.All.Select(verb => verb.Name)], false),
    ];
}
