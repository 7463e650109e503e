using PackPlanner.Core.Cautions;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.Frame;

/// <summary>Draws the frame that is the same on every step: question, answer, evidence, next, caution, keys.</summary>
internal static class FramePainter
{
    /// <summary>Below this size only the answer is shown.</summary>
    internal const int LeastWidth = 60;

    /// <inheritdoc cref="LeastWidth"/>
    internal const int LeastHeight = 18;

    internal static Page Paint(Desk desk, int width, int height)
    {
        Page page = new(Math.Max(1, width), Math.Max(1, height), desk.Look);
        if (width < LeastWidth || height < LeastHeight)
            PaintSmall(page, desk.Step.Picture);
        else
            PaintWhole(page, desk);
        return page;
    }

    private static void PaintSmall(Page page, StepPicture picture)
    {
        Area whole = page.Whole;
        whole.Write(0, 0, TextWidth.Cut($"{LeastWidth} x {LeastHeight} needed, this is {page.Width} x {page.Height}", page.Width));
        IReadOnlyList<string> answer = TextWidth.Wrap(page.Look.Prose(picture.Answer), page.Width, Math.Max(1, page.Height - 1));
        for (int i = 0; i < answer.Count; i++)
            whole.Write(0, i + 1, answer[i]);
        page.Cursor = (0, Math.Min(1, page.Height - 1));
    }

    private static void PaintWhole(Page page, Desk desk)
    {
        Area whole = page.Whole;
        StepPicture picture = desk.Step.Picture;
        FrameRows rows = FrameRows.Of(page.Height);
        PaintTitle(whole.Part(0, 0, page.Width, 1), desk);
        PaintSteps(whole.Part(0, 1, page.Width, 1), desk);
        PaintWords(whole, rows, picture);
        whole.Rule(rows.UpperRule);
        whole.Rule(rows.LowerRule);
        PaintBody(whole.Part(0, rows.Body, page.Width, rows.BodyHeight), desk);
        whole.Write(1, rows.Next, "Next", Ink.Bold);
        whole.Write(7, rows.Next, TextWidth.Cut(page.Look.Prose(picture.Next), page.Width - 8));
        PaintCaution(whole.Part(0, rows.Caution, page.Width, 1), desk, picture);
        PaintHints(whole.Part(0, rows.Hints, page.Width, 2), desk);
        IReadOnlyList<string> told = Told(desk, page);
        // What has no row of its own, or is too long for it, takes the place of the first hint line, then of the second.
        int first = rows.Progress ?? rows.Hints;
        Ink ink = desk.Says is null ? Ink.Accent : Ink.Bold;
        for (int i = 0; i < told.Count && first + i < page.Height; i++)
        {
            Area row = whole.Part(0, first + i, page.Width, 1);
            row.Clear();
            row.Write(1, 0, told[i], ink);
        }
    }

    // What the last key did or why it could not; else what runs aside. Where, why and what next stand in it, so it is cut last of all.
    private static IReadOnlyList<string> Told(Desk desk, Page page) => (desk.Says, desk.Work) switch
    {
        ({ } says, null) => TextWidth.Wrap(page.Look.Of(says), page.Width - 2, 2),
        // What runs is told below what was said, as long as a row is left for it.
        ({ } says, { } work) => [.. TextWidth.Wrap(page.Look.Of(says), page.Width - 2, 2), Progress(desk, work, page)],
        (null, { } work) => [Progress(desk, work, page)],
        _ => [],
    };

    // The key that stops it is never cut off.
    private static string Progress(Desk desk, BackgroundWork work, Page page)
    {
        (string words, int room) = (page.Look.Of(work.Words(desk.Now())), page.Width - 2);
        string key = TextWidth.Of(words) + 19 <= room ? "  Esc stop and keep" : "  Esc stop";
        return TextWidth.Cut(words, room - TextWidth.Of(key)) + key;
    }

    private static void PaintTitle(Area row, Desk desk)
    {
        string saved = row.Look.Of(desk.SavedWords);
        string title = TextWidth.Cut(row.Look.Of(desk.Title), row.Width - TextWidth.Of(saved) - 3);
        row.Write(1, 0, title, Ink.Bold);
        row.WriteRight(0, saved);
    }

    private static void PaintSteps(Area row, Desk desk)
    {
        bool wide = row.Width >= 100;
        bool names = row.Width >= 80;
        int x = 1;
        for (int i = 0; i < desk.Steps.Count; i++)
        {
            int number = i;
            bool here = i == desk.At;
            string mark = here ? "" : desk.Steps[i].IsFilled ? "+" : "-";
            string word = names || here ? $"{i + 1} {desk.Steps[i].Name}{mark}" : $"{i + 1}{mark}";
            int start = x;
            if (here)
                x = row.Write(row.Write(row.Write(Math.Max(0, x - 1), 0, "[", Ink.Accent), 0, word, Ink.Accent | Ink.Bold), 0, "]", Ink.Accent);
            else
                x = row.Write(x, 0, word);
            row.OnClick(start, 0, x - start, () => desk.GoTo(number));
            x += (wide ? 3 : 2) - (here ? 1 : 0);
            if (wide && here)
                x = start + TextWidth.Of(word) + 3;
        }
    }

    private static void PaintWords(Area whole, FrameRows rows, StepPicture picture)
    {
        int width = Math.Min(whole.Width - 5, 115);
        whole.Write(1, rows.Question, "Q", Ink.Bold);
        whole.Write(4, rows.Question, TextWidth.Cut(whole.Look.Of(picture.Question), width));
        whole.Write(1, rows.Answer, "A", Ink.Bold);
        string words = whole.Look.Prose(picture.Answer);
        if (rows.AnswerRows == 1 && TextWidth.Of(words) > width && picture.Short is { } shorter)
            words = whole.Look.Prose(shorter);
        IReadOnlyList<string> answer = TextWidth.Wrap(words, width, rows.AnswerRows);
        for (int i = 0; i < answer.Count; i++)
            whole.Write(4, rows.Answer + i, answer[i]);
    }

    private static void PaintBody(Area body, Desk desk)
    {
        if (desk.Overlay is not { } overlay)
        {
            desk.Step.Paint(body);
            return;
        }

        int rows = Math.Min(overlay.Rows(body.Height), body.Height);
        if (rows < body.Height)
            desk.Step.Paint(body.Part(0, 0, body.Width, body.Height - rows));
        Area over = body.From(body.Height - rows);
        over.Clear();
        over.Page.AddTarget(over.X, over.Y, over.Width, over.Height, () => { });
        overlay.Paint(over);
    }

    private static void PaintCaution(Area row, Desk desk, StepPicture picture)
    {
        IReadOnlyList<AlikeCautions> here = AlikeCautions.Of(Caution.InOrder(picture.Cautions));
        IReadOnlyList<AlikeCautions> shown = here.Count > 0 ? here : AlikeCautions.Of(desk.AllCautions);
        if (shown.Count == 0)
            return;
        AlikeCautions gravest = shown[0];
        int alike = shown.Count(line => line.First.Signal == gravest.First.Signal);
        string where = here.Count > 0 ? gravest.Where : $"{gravest.Where} (another step)";
        const string Press = " - press !";
        string words = row.Look.Prose($"{gravest.First.Signal.ToString().ToUpperInvariant()} {alike}  {where}: {gravest.Saw}");
        row.Write(1, 0, "!", Ink.Bold);
        int end = row.Write(3, 0, TextWidth.Cut(words, row.Width - 4 - Press.Length), Ink.Underline);
        row.Write(end, 0, Press, Ink.Accent);
        row.OnClick(0, 0, row.Width, () => desk.Press("!"));
    }

    private static void PaintHints(Area rows, Desk desk)
    {
        if (desk.Overlay is { } overlay)
        {
            int end = rows.Write(1, 0, TextWidth.Cut(rows.Look.Of(overlay.Hint), rows.Width - 12));
            end = rows.Write(end + 2, 0, "Esc", Ink.Accent);
            rows.Write(end + 1, 0, "back");
            rows.OnClick(end - 3, 0, 8, () => desk.Press("Esc"));
            return;
        }

        IReadOnlyList<KeyAction> here = desk.Step.Keys;
        KeyAction[] general = [.. desk.GeneralKeys.Where(k => k.Label.Length > 0 && here.All(own => own.Entry != k.Entry) && k.WhyNot() is null)];
        PaintHintLine(rows, 0, 1, WithWayOut(general, rows), desk);
        int x = rows.Write(1, 1, "here:") + 1;
        PaintHintLine(rows, 1, x, [.. here.Where(k => k.Label.Length > 0 && k.WhyNot() is null)], desk);
    }

    // Where not all fit, the last that fit give way to the key that leaves.
    private static KeyAction[] WithWayOut(KeyAction[] general, Area rows)
    {
        List<KeyAction> shown = [.. general];
        for (int i = shown.Count - 2; i > 0 && 1 + shown.Sum(key => HintWidth(key, rows) + 2) - 2 > rows.Width; i--)
            shown.RemoveAt(i);
        return [.. shown];
    }

    private static int HintWidth(KeyAction key, Area rows) => TextWidth.Of(key.Entry.Key) + 1 + TextWidth.Of(rows.Look.Of(key.Label));

    private static void PaintHintLine(Area rows, int y, int x, KeyAction[] keys, Desk desk)
    {
        foreach (KeyAction key in keys)
        {
            string label = rows.Look.Of(key.Label);
            if (x + HintWidth(key, rows) > rows.Width)
                break;
            int end = rows.Write(rows.Write(x, y, key.Entry.Key, Ink.Accent) + 1, y, label);
            rows.OnClick(x, y, end - x, () => desk.Press(key));
            x = end + 2;
        }
    }
}
