using PackPlanner.Core.Cautions;

namespace PackPlanner.Formats.Sheets;

/// <summary>Cautions as they stand in the blocks of a sheet.</summary>
internal static class SheetCautions
{
    private const int MostPlaces = 4;
    private const int CodesOnAPage = 5;

    /// <summary>The whole caution, with what this job's case is where it is known.</summary>
    internal static string Whole(SheetInput input, string code)
    {
        CautionEntry entry = CautionCatalogue.Of(code);
        Caution? raised = Raised(input, code).FirstOrDefault();
        string saw = raised is null ? "" : $" {Html.Text(raised.Where)}: {Html.Text(raised.Saw)}.";
        return Box(input, code, $"{saw} {Html.Text(entry.Why)} {Html.Text(raised?.Do ?? entry.DoNow)}{DoNot(entry)}");
    }

    /// <summary>The caution again, in a block that may be photographed without the one that has it whole.</summary>
    internal static string Short(SheetInput input, string code)
    {
        CautionEntry entry = CautionCatalogue.Of(code);
        return Box(input, code, DoNot(entry) is { Length: > 0 } doNot ? doNot : $" {Html.Text(entry.DoNow)}");
    }

    /// <summary>Pages with those cautions of the job that concern a sheet and do not stand on its pages already.</summary>
    /// <param name="input">The job.</param>
    /// <param name="pages">The sheet's pages.</param>
    /// <param name="codes">Which cautions concern it.</param>
    internal static IEnumerable<SheetPage> Further(SheetInput input, IReadOnlyList<SheetPage> pages, string[] codes)
    {
        string[] left =
        [
            .. Caution.InOrder(input.Cautions).Where(caution => caution.Signal != SignalWord.Notice || caution.Code is "caution-25" or "caution-34").Select(caution => caution.Code).Distinct()
                .Where(code => codes.Contains(code)
                    && (Raised(input, code).Count() > 1 || !pages.Any(page => page.Cautions.Contains(code)))),
        ];
        foreach (string[] some in SheetPage.Evenly(left, CodesOnAPage))
            yield return new SheetPage("Cautions of this job that concern this sheet", "", [.. SheetPage.Evenly(some, 3).Select(codes => new SheetBlock(string.Concat(codes.Select(code => EachPlace(input, code)))))], []);
    }

    /// <summary>The word that this job's case carries, where the case is known; else the usual one.</summary>
    private static SignalWord Word(SheetInput input, string code) => Raised(input, code).FirstOrDefault()?.Signal ?? CautionCatalogue.Of(code).Usual;

    private static IEnumerable<Caution> Raised(SheetInput input, string code) => Caution.InOrder(input.Cautions).Where(caution => caution.Code == code);

    private static string EachPlace(SheetInput input, string code)
    {
        CautionEntry entry = CautionCatalogue.Of(code);
        Caution[] raised = [.. Raised(input, code)];
        string places = string.Concat(raised.Take(MostPlaces).Select(caution =>
            $"<br>{Html.Text(caution.Where)}: {Html.Text(caution.Saw)}.{(caution.DoNow is { } now ? $" {Html.Text(now)}" : "")}"));
        string more = raised.Length > MostPlaces ? $"<br>and {raised.Length - MostPlaces} more" : "";
        return Box(input, code, $" {Html.Text(entry.Why)}{(raised.All(caution => caution.DoNow is not null) ? "" : $" {Html.Text(entry.DoNow)}")}{DoNot(entry)}{places}{more}");
    }

    private static string DoNot(CautionEntry entry) => entry.DoNot.Length > 0 ? $" <b>{Html.Text(entry.DoNot)}</b>" : "";

    private static string Box(SheetInput input, string code, string says)
    {
        string word = Word(input, code).ToString().ToUpperInvariant();
        return $"<div class=\"caution {word}\"><b class=\"word\">{word}</b> <b>{Html.Text(CautionCatalogue.Of(code).Title)}.</b>{says}</div>\n";
    }
}
