using System.Globalization;
using System.Text;
using PackPlanner.Core.Cautions;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Formats.Sheets;

/// <summary>Puts the pages of a sheet into one HTML file that needs nothing else.</summary>
internal static class SheetDocument
{
    // Sizes in mm and pt, because this is read on paper, in gloves and in poor light. A page of A4 or Letter less margins
    // holds 186 x 252 mm.
    private const string Style = """
        @page { size: auto; margin: 12mm; }
        * { box-sizing: border-box; }
        body { margin: 0 auto; max-width: 186mm; color: #000; background: #fff; font: 12pt/1.3 Arial, Helvetica, sans-serif; }
        .page { border-top: 1.2mm solid #000; padding: 1.5mm 0 4mm; break-after: page; break-inside: avoid; }
        .page:last-child { break-after: auto; }
        .page > header { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 5mm; border-bottom: .3mm solid #000; }
        .page > header b { font-size: 14pt; }
        h2 { font-size: 16pt; margin: 2mm 0; }
        p { margin: 1.5mm 0; }
        table { border-collapse: collapse; width: 100%; }
        th, td { border: .25mm solid #000; padding: .8mm 1.5mm; text-align: left; vertical-align: middle; }
        th { font-weight: bold; border-bottom-width: .6mm; }
        .num { font-size: 14pt; white-space: nowrap; }
        .big { font-size: 20pt; font-weight: bold; white-space: nowrap; }
        .box { display: inline-block; width: 27mm; height: 10mm; border: .4mm solid #000; vertical-align: middle; }
        .tick { display: inline-block; width: 6mm; height: 6mm; border: .4mm solid #000; vertical-align: middle; }
        .caution { border: .6mm solid #000; padding: 1.2mm 2.5mm; margin: 2mm 0; break-inside: avoid; }
        .DANGER { border-width: 1.4mm; }
        .caution b.word { background: #000; color: #fff; padding: 0 2mm; }
        .columns { display: grid; grid-template-columns: 1fr 1fr; gap: 0 5mm; align-items: start; }
        .labels { display: grid; grid-template-columns: repeat(3, 1fr); grid-auto-rows: 28mm; }
        .label { border: .25mm dashed #000; padding: 1mm 2mm; overflow: hidden; }
        svg { width: 100%; height: auto; display: block; }
        .picture svg { max-height: 104mm; }
        @media screen { body { padding: 3mm; } .page { margin-bottom: 10mm; } }
        @media screen and (max-width: 480px) {
          .columns { grid-template-columns: 1fr; }
          .labels { grid-template-columns: 1fr; grid-auto-rows: auto; }
          table { display: block; overflow-x: auto; }
          .drawing, .picture { overflow-x: auto; } .drawing svg { min-width: 160mm; } .picture svg { min-width: 130mm; max-height: none; }
        }
        """;

    internal static string Of(SheetInput input, string sheet, IReadOnlyList<SheetPage> pages)
    {
        StringBuilder html = new();
        string title = Html.Text(input.Job.Title);
        html.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">\n")
            .Append($"<title>{title}, rev {input.Revision}: {Html.Text(sheet)}</title>\n<style>\n{Style}\n</style></head><body>\n");
        for (int i = 0; i < pages.Count; i++)
        {
            html.Append("<section class=\"page\">\n").Append(Head(input, sheet, pages[i], i + 1, pages.Count))
                .Append($"<h2>{Html.Text(pages[i].Title)}</h2>\n").Append(pages[i].Body);
            foreach (string code in pages[i].Cautions)
                html.Append(CautionBlock(input, code));
            html.Append("</section>\n");
        }

        return html.Append("</body></html>\n").ToString();
    }

    /// <summary>A short check of what a block says: two sheets with the same one say the same.</summary>
    internal static string Check(SheetInput input, SheetPage page) =>
        JobFile.FingerprintOf(Encoding.UTF8.GetBytes($"{input.Job.Title}\n{input.Revision}\n{page.Title}\n{page.Body}"))[..6];

    private static string Head(SheetInput input, string sheet, SheetPage page, int number, int count) => string.Create(
        CultureInfo.InvariantCulture,
        $"<header><b>{Html.Text(input.Job.Title)}{(input.Job.IsDemo ? " (invented data)" : "")}</b><b>rev {input.Revision}</b><span>{input.Date:yyyy-MM-dd}</span><span>{Html.Text(sheet)}, page {number} of {count}</span><span>check {Check(input, page)}</span></header>\n");

    // The word that this job's case carries, where the case is known; else the usual one.
    private static string CautionBlock(SheetInput input, string code)
    {
        Caution? raised = Caution.InOrder(input.Cautions).FirstOrDefault(caution => caution.Code == code);
        CautionEntry entry = CautionCatalogue.Of(code);
        string word = (raised?.Signal ?? entry.Usual).ToString().ToUpperInvariant();
        string saw = raised is null ? "" : $" {Html.Text(raised.Where)}: {Html.Text(raised.Saw)}.";
        string doNot = entry.DoNot.Length > 0 ? $" <b>{Html.Text(entry.DoNot)}</b>" : "";
        return $"<div class=\"caution {word}\"><b class=\"word\">{word}</b> <b>{Html.Text(entry.Title)}.</b>{saw} {Html.Text(entry.Why)} {Html.Text(raised?.Do ?? entry.DoNow)}{doNot}</div>\n";
    }
}
