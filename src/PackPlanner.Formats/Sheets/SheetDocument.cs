using System.Globalization;
using System.Text;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Formats.Sheets;

/// <summary>Puts the pages of a sheet into one HTML file that needs nothing else.</summary>
internal static class SheetDocument
{
    // Sizes in mm and pt, because this is read on paper, in gloves and in poor light. A page of A4 or Letter less margins
    // holds 186 x 255 mm. On a telephone each row of a table flows by itself, each figure with the head of its column.
    private const string Style = """
        @page { size: auto; margin: 12mm; }
        * { box-sizing: border-box; }
        body { margin: 0 auto; max-width: 186mm; color: #000; background: #fff; font: 12pt/1.25 Arial, Helvetica, sans-serif; }
        .page { padding: 0 .3mm; break-after: page; break-inside: avoid; }
        .page:last-child { break-after: auto; }
        .block { break-inside: avoid; padding-bottom: 2.5mm; }
        .strip { display: flex; justify-content: space-between; gap: 0 3mm; border-top: 1mm solid #000; border-bottom: .3mm solid #000; margin-bottom: 1.2mm; padding: .3mm 0; font-weight: bold; white-space: nowrap; }
        .strip span:first-child { overflow: hidden; text-overflow: ellipsis; }
        h2 { font-size: 16pt; margin: 1.5mm 0; }
        p { margin: 1.2mm 0; }
        table { border-collapse: collapse; width: 100%; }
        th, td { border: .25mm solid #000; padding: .3mm 1.5mm; text-align: left; vertical-align: middle; }
        th { font-weight: bold; border-bottom-width: .6mm; }
        .num { font-size: 14pt; white-space: nowrap; }
        .big { font-size: 20pt; font-weight: bold; white-space: nowrap; }
        .box { display: inline-block; width: 27mm; height: 10mm; border: .4mm solid #000; vertical-align: middle; }
        .tick { display: inline-block; width: 6mm; height: 6mm; border: .4mm solid #000; vertical-align: middle; }
        .caution { border: .6mm solid #000; padding: .8mm 2mm; margin: 1.5mm 0; break-inside: avoid; }
        .DANGER { border-width: 1.4mm; }
        .caution b.word { background: #000; color: #fff; padding: 0 2mm; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
        .columns { display: grid; grid-template-columns: 1fr 1fr; gap: 0 5mm; align-items: start; }
        .labels { display: grid; grid-template-columns: repeat(3, 1fr); grid-auto-rows: 27mm; }
        .label { border: .25mm dashed #000; padding: .5mm 2mm; overflow: hidden; line-height: 1.15; display: flex; flex-direction: column; }
        .label .cell { flex: 0 1 auto; min-height: 0; overflow: hidden; }
        .label .whose { flex: none; font-size: 11pt; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
        .label .long { font-size: 14pt; font-weight: bold; overflow-wrap: anywhere; }
        .label .longest { font-size: 10pt; font-weight: bold; overflow-wrap: anywhere; line-height: 1.05; }
        svg { display: block; margin: 0 auto; }
        .picture svg { width: 100%; height: auto; }
        @media screen { body { padding: 3mm; } .page { margin-bottom: 10mm; } }
        @media screen and (max-width: 480px) {
          .strip { flex-wrap: wrap; white-space: normal; justify-content: flex-start; }
          .columns, .labels { grid-template-columns: 1fr; grid-auto-rows: auto; }
          .label .whose { white-space: normal; }
          table, tbody { display: block; } thead { display: none; }
          tr { display: flex; flex-wrap: wrap; align-items: center; gap: 0 4mm; border: .25mm solid #000; padding: .8mm 1.5mm; }
          td { border: 0; padding: .4mm 0; overflow-wrap: anywhere; }
          td[data-head]::before { content: attr(data-head) " "; font-weight: normal; }
          .drawing, .picture { overflow-x: auto; } .picture svg { width: 186mm; }
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
            html.Append("<section class=\"page\">\n");
            string strip = Strip(input, sheet, pages[i], i + 1, pages.Count);
            for (int block = 0; block < pages[i].Blocks.Count; block++)
                Block(html, input, pages[i], block, strip);
            html.Append("</section>\n");
        }

        return html.Append("</body></html>\n").ToString();
    }

    /// <summary>A short check of what a page says: two sheets with the same one say the same.</summary>
    internal static string Check(SheetInput input, SheetPage page) =>
        JobFile.FingerprintOf(Encoding.UTF8.GetBytes($"{input.Job.Title}\n{input.Revision}\n{page.Title}\n{page.Body}"))[..6];

    private static void Block(StringBuilder html, SheetInput input, SheetPage page, int number, string strip)
    {
        html.Append("<section class=\"block\">\n").Append(strip);
        if (number == 0)
            html.Append($"<h2>{Html.Text(page.Title)}</h2>\n").Append(page.Intro);
        foreach (string code in page.Cautions)
            html.Append(number == 0 ? SheetCautions.Whole(input, code) : SheetCautions.Short(input, code));
        html.Append(page.Blocks[number].Body);
        if (page.Blocks[number].SaidAtTheFoot)
            html.Append(strip);
        html.Append("</section>\n");
    }

    private static string Strip(SheetInput input, string sheet, SheetPage page, int number, int count) => string.Create(
        CultureInfo.InvariantCulture,
        $"<header class=\"strip\"><span>{Html.Text(input.Job.Title)}{(input.Job.IsDemo ? " (invented)" : "")}</span><span>rev {input.Revision}</span><span>{input.Date:yyyy-MM-dd}</span><span>{Html.Text(sheet)}, page {number} of {count}</span><span>check {Check(input, page)}</span></header>\n");
}
