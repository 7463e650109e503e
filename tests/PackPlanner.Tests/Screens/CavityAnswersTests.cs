using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sizing;
using PackPlanner.Screens;
using PackPlanner.Screens.CavityScreen;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>Step 4: what fits, while the search runs and after it, and what each line rests on.</summary>
public class CavityAnswersTests
{
    [Fact]
    public void Each_line_of_the_answer_is_explained_as_itself()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bench.Press("4", "Home");
        bench.Text();

        Assert.StartsWith("cell: 21700 NMC 5.0", bench.Desk.Step.WhereFrom()!.Title);
        bench.Press("Down");
        Assert.Equal("95 places", bench.Desk.Step.WhereFrom()!.Title);
        bench.Press("Down");
        Assert.Equal("84 for 14s6p", bench.Desk.Step.WhereFrom()!.Title);
        Assert.Contains("11 of the 95 places are left over", bench.Desk.Step.WhereFrom()!.Lines[0].Says);
    }

    [Fact]
    public void Choices_of_the_cell_that_the_space_is_about_are_those_that_fit_in_it()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");

        int most = MostInParallel(bench);
        bench.Desk.Do(new JobChange("shorten", job => job with { FitCase = job.FitCase! with { Text = job.FitCase.Text.Replace("420", "260", StringComparison.Ordinal) } }));

        // By hand: 260 of 420 mm of length take about three fifths of the cells.
        Assert.InRange(MostInParallel(bench), most * 0.4, most * 0.7);
        SizeQuestion.Answered known = bench.Desk.Answers.Choices!;
        PackChoice[] tried = [.. known.Choices.Where(choice => choice.Cell.Name == known.TriedCell)];
        Assert.Equal("21700 NMC 5.0", known.TriedCell);
        bench.Press("4", "Enter");
        string shown = bench.Text();
        Assert.Contains("fits", shown);
        bench.Press("End");
        string last = bench.Text();
        Assert.True((known.Choices[^1].Cell.Name != known.TriedCell) == Regex.IsMatch(last, @"not tried\s+in the space"), last);
    }

    [Fact]
    public void Who_comes_while_the_search_still_runs_finds_the_cursor_on_its_answer_then()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bool running = false;
        PackPlanner.Screens.Desk slow = bench.SlowDesk(3, desk =>
        {
            running = true;
            desk.Draw(80, 24);
        });

        string text = slow.Draw(80, 24).ToText();

        Assert.True(running);
        Assert.Contains(" > cell ", text);
        Assert.Contains("Enter choices of S and P", text);
    }

    [Fact]
    public void A_choice_that_breaks_a_limit_says_so_and_which_one_in_full()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bench.Press("4", "Enter");
        int breaking = bench.Desk.Answers.Choices!.Choices.ToList().FindIndex(choice => choice.LimitsBroken.Count > 0);
        Assert.True(breaking > 0, "the choices that keep every limit come first, and this scene has one that does not");

        bench.Press([.. Enumerable.Repeat("Down", breaking)]);
        string[] rows = bench.Text().Split('\n');

        Assert.StartsWith(" > no ", rows.Single(row => row.StartsWith(" > ", StringComparison.Ordinal)));
        Assert.Contains(rows, row => row.StartsWith(" breaks peak power short; binds: ", StringComparison.Ordinal) && !row.Contains('…'));
    }

    [Fact]
    public void The_search_tells_how_many_places_it_has_and_Esc_keeps_them()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        List<string> told = [];
        Desk slow = bench.SlowDesk(3, desk =>
        {
            told.Add(desk.Draw(80, 24).ToText());
            desk.Press("Esc");
        });
        slow.Draw(80, 24);

        Assert.Matches(@"looking for places \d+ s  best \d+ places, proven limit \d+  Esc stop and keep", told[0]);
        Assert.True(slow.Answers.Fit!.Answer!.Stopped);
        Assert.NotEmpty(slow.Answers.Fit.Answer.Cells);
        Assert.Contains("stopped", slow.Step.Picture.Answer);
    }

    [Fact]
    public void What_does_not_fit_says_why_first_and_what_fewer_cells_would_do()
    {
        using Bench bench = new();
        bench.TypeSpace("100 x 60 x 80");
        bench.Set("series", new JobValue.Number(4));
        bench.Set("parallel", new JobValue.Number(3));

        string shown = bench.Text(120, 36);

        // Eight places as a hand counts; four in series leave two for each.
        Assert.Contains("or e: try 2 in parallel", bench.Desk.Step.Picture.Next);
        Assert.Contains("> no:", shown);
        Assert.Contains("none: no 4s in one piece", shown);
        Assert.DoesNotContain("0.0 kg", shown);
    }

    [Fact]
    public void What_does_not_stand_but_lies_is_told_with_its_key_and_how_many_lie()
    {
        using Bench bench = new();
        bench.TypeSpace("200 x 150 x 60");
        StepPicture said = bench.Desk.Step.Picture;

        // Cells of 21 x 70 with the clearances that are offered: two lengths of 70 along y or x, two layers.
        int least = int.Parse(Regex.Match(said.Answer, @"^Turned another way \(g\) at least (\d+) go in; as they stand: no cell goes in: ").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.StartsWith($"g: turn the cells, where their maker allows it: at least {least} go in", said.Next);
        Assert.Contains($"(g) at least {least} go in", bench.Text(60, 18));
        Assert.DoesNotContain("more may fit", bench.Text(120, 36));
        Assert.DoesNotContain("full search", bench.Text(120, 36));
        bench.Press("g", "End", "Enter");
        Assert.InRange(bench.Desk.Answers.Fit!.Answer!.Cells.Count, least, 2 * least);
    }

    [Fact]
    public void What_keep_outs_take_is_called_so_and_counts_against_the_limit()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("4", "a", "Enter", "Enter");
        bench.Type("40 190 95");
        bench.Press("Enter");
        string shown = bench.Text(120, 36);

        // Without it 133. Of the 310 mm it leaves 270: 244.8 x 164.8 mm for middles 22 mm apart, 2A/(1.732 x 484) + 819.2/44 + 1 = 115.
        Assert.Contains("It can never fit: ", bench.Desk.Step.Picture.Answer);
        Assert.Contains(" places fit (proven limit 115), 117 are needed: ", bench.Desk.Step.Picture.Answer);
        Assert.Single(Regex.Matches(bench.Desk.Step.Picture.Answer, " places"));
        Assert.Contains("# keep-out", shown);
        Assert.Matches(@"A  It does not fit: \d+ places fit, 117 are needed\.", bench.Text(60, 18));
        Assert.DoesNotContain("no-go", shown);
        bench.Press("End");
        Assert.Contains(" keep-out 1 ", bench.Text(120, 36));
        bench.Press("?");
        Assert.DoesNotContain("no-go", bench.Text(120, 36));
    }

    [Fact]
    public void A_first_look_is_drawn_while_a_full_search_looks_for_what_rows_do_not_hold()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        // 130 of at most 133: rows do not hold them, and no proof forbids them.
        bench.Set("parallel", new JobValue.Number(10));
        bench.Set("cellMassLimitKg", new JobValue.Number(20));
        List<string> told = [];
        Desk slow = bench.SlowDesk(3, desk =>
        {
            told.Add(desk.Draw(120, 36).ToText());
            if (told[^1].Contains("First look, more may fit: ", StringComparison.Ordinal))
                desk.Press("Esc");
        });
        slow.Draw(120, 36);

        string first = told.Find(text => text.Contains("First look, more may fit: ", StringComparison.Ordinal))!;
        Assert.Matches(@"First look, more may fit: \d+ places \(proven limit 133\); 130 are needed\.", first);
        Assert.Contains(" · ", first.Split('\n')[12]);
    }

    [Fact]
    public void The_way_in_and_reasons_are_in_inches_for_who_uses_them()
    {
        using Bench bench = new(new Look(UsUnits: true));
        bench.Desk.Store.Demo("scooter");
        bench.Press("4");

        // 420 mm / 25.4 = 16.535; 130 / 25.4 = 5.118.
        Assert.Contains("opening 1: 16.54 x 5.12 in", bench.Text(120, 36));
    }

    private static int MostInParallel(Bench bench)
    {
        SizeQuestion.Answered known = bench.Desk.Answers.Choices!;
        return known.Choices.Where(choice => choice.Cell.Name == known.TriedCell).Max(choice => choice.Parallel!.Value);
    }
}
