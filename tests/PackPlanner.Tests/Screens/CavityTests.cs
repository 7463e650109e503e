using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sizing;
using PackPlanner.Screens;
using PackPlanner.Screens.CavityScreen;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>Step 4 by hand: spaces, outlines, tubes, openings and weighed parts typed in millimetres and drawn as typed.</summary>
public class CavityTests
{
    [Fact]
    public void A_space_is_typed_in_three_fields_and_holds_what_a_hand_counts()
    {
        using Bench bench = new();
        TypeSpace(bench, "100 x 60 x 80");

        // By hand: 100 - 2 x 2 = 96 holds four round cells of 21 with 0.8 between (86.4); 60 - 4 = 56 holds two (42.8).
        FitAnswer answer = bench.Desk.Answers.Fit!.Answer!;
        Assert.Equal(8, answer.Cells.Count);
        Assert.Contains("as drawn: 8", bench.Desk.Step.Picture.Answer);
        Assert.Contains("from above, 100 x 60 mm", bench.Text());
    }

    [Fact]
    public void Who_begins_with_a_space_is_asked_for_it_at_once()
    {
        using Bench bench = new();
        bench.Press("Up", "Up", "Enter", "Enter");
        Assert.Contains("what is the space?", bench.Text());

        bench.Press("Enter");
        bench.Type("100 x 60 x 80");
        bench.Press("Enter");
        bench.Type("21 x 70");
        bench.Press("Enter", "Enter");

        // By hand: four by two.
        Assert.Equal(8, bench.Desk.Answers.Fit!.Answer!.Cells.Count);
    }

    [Fact]
    public void An_outline_is_drawn_while_its_corners_are_typed()
    {
        using Bench bench = new();
        bench.Desk.Store.New("Wedge");
        bench.Press("4", "a", "Down", "Enter", "Enter");
        bench.Type("0,0 400,0 400,200 0,100");

        string drawn = bench.Text(120, 36);

        // Without a cell there is nothing to count yet.
        Assert.Contains("as typed, from above, 400 x 200 mm", drawn);
        string[] rows = [.. drawn.Split('\n').SkipWhile(row => !row.Contains("as typed")).Skip(1)];
        // The back wall slants: it begins further to the right in the first rows than in the last.
        Assert.True(rows[1].TrimEnd().IndexOf('┌') > 10, drawn);

        // What a file would be refused for, the field refuses as it is typed.
        bench.Type(" 300,-50");
        Assert.Contains("cross", bench.Text(120, 36));
    }

    [Fact]
    public void The_numbers_of_the_step_show_what_the_case_says_while_the_job_was_told_nothing()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bench.Press("e");

        Assert.Matches(@"groups in series: 14 +its case", bench.Text());
        Assert.Matches(@"cells may weigh, kg: 8(\.0 kg)? +its case", bench.Text());
        bench.Set("series", new JobValue.Number(13));
        Assert.Matches(@"groups in series: 13 +you, 2 Nov", bench.Text());
    }

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
    public void A_tube_an_opening_and_a_weighed_part_are_added_changed_and_taken_out_again()
    {
        using Bench bench = new();
        TypeSpace(bench, "120 x 60 x 80");
        int before = bench.Desk.Answers.Fit!.Answer!.Cells.Count;

        bench.Press("a", "Down", "Enter");
        bench.Type("0 50 40");
        bench.Press("Enter");
        bench.Type("120 50 40");
        bench.Press("Enter");
        bench.Type("12");
        Assert.Contains("####", bench.Text());
        bench.Press("Enter");

        FitCase withTube = bench.Desk.Answers.Fit!.Case!;
        Assert.Equal(new Solid.Tube(new PointMm(0, 50, 40), new PointMm(120, 50, 40), 12), Assert.Single(withTube.KeepOuts).Shape);
        Assert.True(bench.Desk.Answers.Fit.Answer!.Cells.Count < before);

        Add(bench, 5, "Enter");
        bench.Type("0 0 120 45");
        bench.Press("Enter");
        Opening lid = Assert.Single(bench.Desk.Answers.Fit!.Case!.Openings!);
        Assert.Equal((Axis.Z, true), (lid.Across, lid.Positive!.Value));

        Add(bench, 6);
        bench.Type("contactor");
        bench.Press("Enter");
        bench.Type("2 lb");
        bench.Press("Enter");
        bench.Type("20 20 20");
        bench.Press("Enter");
        // NIST SP 811: 1 lb is 0.453 592 37 kg exactly.
        Assert.Equal(0.90718474, Assert.Single(bench.Desk.Answers.Fit!.Case!.Parts!).Kg, 8);
        // The cells have no mass yet: the middle of all cannot be told, and is not.
        Assert.Matches(@"middle +x \d+ y \d+ z \d+ mm, cells\s", bench.Text(120, 36));
        bench.Set("cellMassKg", new JobValue.Number(0.07));
        FitAnswer weighed = bench.Desk.Answers.Fit!.Answer!;
        // By hand: what weighs at (20, 20, 20) draws the middle of all cells towards it by its share of the mass.
        double share = 0.90718474 / (0.90718474 + (0.07 * weighed.Used));
        double x = weighed.CellsCentreOfMass!.Value.X + (share * (20 - weighed.CellsCentreOfMass.Value.X));
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"x {x:0} y "), bench.Text(120, 36));
        Assert.DoesNotContain("mm, cells", bench.Text(120, 36));
        bench.Press("u");

        // The tube is changed and taken out from the list.
        while (bench.Desk.Step is CavityModel { Under: not { Kind: CasePartKind.NoGo } })
        {
            bench.Press("Down");
            bench.Text();
        }

        bench.Press("Enter", "Enter", "Enter");
        bench.Type("9");
        bench.Press("Enter");
        Assert.Equal(129, Assert.IsType<Solid.Tube>(bench.Desk.Answers.Fit!.Case!.KeepOuts[0].Shape).DiameterMm);
        bench.Press("u");
        bench.Press("D");
        Assert.Empty(bench.Desk.Answers.Fit!.Case!.KeepOuts);
        bench.Press("u");
        Assert.Single(bench.Desk.Answers.Fit!.Case!.KeepOuts);
    }

    [Fact]
    public void The_drawing_goes_nearer_and_the_arrows_then_move_it()
    {
        using Bench bench = new();
        TypeSpace(bench, "420 x 150 x 110");
        bench.Text();

        bench.Press("Z");
        Assert.Contains("all of it is shown", bench.Desk.Says);
        bench.Press("z", "z", "Tab", "Left", "Up");

        string near = bench.Text();
        Assert.Contains("4 times", near);
        Assert.Contains("(", near);
        CavityModel cavity = Assert.IsType<CavityModel>(bench.Desk.Step);
        // By hand: a quarter of a quarter of 420 and of 150.
        Assert.Equal((2, -26.25, 9.375), (cavity.View.Zoom, cavity.View.AcrossMm, cavity.View.BackMm));
        for (int i = 0; i < 50; i++)
            bench.Press("Left");
        Assert.Equal(-157.5, cavity.View.AcrossMm, 9);
        bench.Press("Z", "Z");
        Assert.Equal(default, cavity.View);
    }

    [Fact]
    public void Cells_are_turned_on_their_side()
    {
        using Bench bench = new();
        TypeSpace(bench, "100 x 60 x 40");
        Assert.Empty(bench.Desk.Answers.Fit!.Answer!.Cells);

        bench.Press("g", "Down", "Enter");

        Assert.Equal([Axis.X], Assert.IsType<CellBody.Cylinder>(bench.Desk.Answers.Fit!.Case!.Cell).Axes);
        Assert.NotEmpty(bench.Desk.Answers.Fit.Answer!.Cells);
    }

    [Fact]
    public void A_sorter_without_a_space_gets_places_taps_and_a_placement_sheet_from_the_size_of_a_cell()
    {
        using Bench bench = new();
        bench.OpenLot(series: 4, parallel: 2);
        bench.Press("5");
        Assert.Contains("a: type the size of a cell", bench.Desk.Step.Picture.Next);

        bench.Press("a");
        bench.Type("21.2 x 70.2");
        bench.Press("Enter");

        Assert.Contains("A plain block", bench.Desk.Step.Picture.Answer);
        Assert.Contains("8 cells in 1 layer, 4 groups", bench.Desk.Step.Picture.Answer);
        Assert.Contains("+01", bench.Text());
        Assert.Contains("room left over, mm", bench.Text());
        Assert.Contains("hardest-worked at ", bench.Text());
        Assert.Contains("cells, 70.2 mm", bench.Text(120, 36));
        bench.Press("Tab");
        Assert.Contains("B4", bench.Text());
        bench.Press("8");
        bench.Text();
        Assert.Null(PackPlanner.Formats.Sheets.SheetCatalogue.All.First(sheet => sheet.Name == "place").WhyNot(bench.Desk.Answers.SheetInput!));

        // Beside the list, and by Enter, stands what the sheet will say.
        bench.Press("Down", "Down", "Down", "Down");
        Assert.Matches(@"B4 +\d+\.\d\d .*pack plus", bench.Text(120, 36));
        bench.Press("Enter");
        Assert.Matches(@"B4 +\d+\.\d\d .*________", bench.Text());
        bench.Press("Esc");

        // A space, once described, takes the block's place.
        Assert.Null(bench.Desk.Job!.FitCase);
        Assert.Equal(21.2, bench.Desk.Job.Givens.NumberOf("cellDiameterMm"));
        bench.Press("5", "u");
        Assert.Null(bench.Desk.Job.Givens.NumberOf("cellDiameterMm"));
    }

    [Fact]
    public void Nearer_places_show_labels_and_a_group_can_be_turned_over()
    {
        using Bench bench = new();
        bench.OpenLot(series: 4, parallel: 2);
        bench.Set("cellDiameterMm", new JobValue.Number(21.2));
        bench.Set("cellLengthMm", new JobValue.Number(70.2));
        bench.Set("blockColumns", new JobValue.Number(4));
        bench.Press("5", "z");
        Assert.Matches(@"\+01 T\d\d\d", bench.Text());
        bench.Press("z");
        Assert.Matches(@"4\.\d\d\d", bench.Text());
        bench.Press("Z", "Z", "Z");
        Assert.DoesNotContain("+01 ", bench.Text());
        bench.Press("z", "g");
        Assert.Contains("-01", bench.Text());
        Assert.Contains(1, bench.Desk.Job!.Placement.Turned);
    }

    [Theory]
    [InlineData("310 x 190 x 95", 310, 190, 95)]
    [InlineData("12.2 x 7.5 x 3.75 in", 309.88, 190.5, 95.25)]
    [InlineData("310mm*190mm*95mm", 310, 190, 95)]
    [InlineData("310,5 190 95", 310.5, 190, 95)]
    public void Lengths_are_read_as_people_type_them(string typed, double length, double width, double height)
    {
        Assert.Null(TypedCase.Sizes(typed, [3], out double[] mm));
        Assert.Equal([length, width, height], mm);
    }

    [Theory]
    [InlineData("310 x 190", "3 figures")]
    [InlineData("310 x -190 x 95", "below zero")]
    [InlineData("310 x NaN x 95", "not a length")]
    [InlineData("wide", "not a length")]
    public void Lengths_that_make_no_sense_are_refused(string typed, string why) => Assert.Contains(why, TypedCase.Sizes(typed, [3], out _));

    private static void TypeSpace(Bench bench, string inside)
    {
        bench.Desk.Store.New("Space");
        bench.Press("4", "a", "Enter");
        bench.Type(inside);
        bench.Press("Enter");
        bench.Type("21 x 70");
        bench.Press("Enter", "Enter");
        Assert.True(bench.Desk.Job!.FitCase is not null, bench.Text(120, 36));
    }

    private static void Add(Bench bench, int which, params string[] then) =>
        bench.Press(["a", .. Enumerable.Repeat("Down", which), "Enter", .. then]);

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
    public void Clearances_are_counted_while_they_are_typed_and_the_cursor_stays_on_them()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bench.Press("4", "End", "Enter");

        // What stands in the case stands in the field.
        Assert.Contains("clearances, mm  2 x 6 x 0.8", bench.Text());
        bench.Press([.. Enumerable.Repeat("Backspace", "2 x 6 x 0.8".Length)]);
        bench.Type("2 x 6 x 9");
        Match typed = Regex.Match(bench.Text(), @"as typed: (\d+) places or more");
        Assert.True(typed.Success, bench.Text());
        bench.Press("Enter");

        // The field counts without asking for groups: at least as many as are placed in groups.
        FitAnswer answer = bench.Desk.Answers.Fit!.Answer!;
        Assert.InRange(int.Parse(typed.Groups[1].Value, CultureInfo.InvariantCulture), 20, 70);
        Assert.InRange(answer.Cells.Count, 20, int.Parse(typed.Groups[1].Value, CultureInfo.InvariantCulture));
        Assert.Contains("> clearances  wall 2.0 mm", bench.Text());
        // The gap between layers hangs on the ends, which stayed as they were.
        Assert.Equal(8, bench.Desk.Answers.Fit.Case!.Clearances.LayerGapMm);
        bench.Press("u");
        Assert.Contains("> clearances  wall 2.0 mm", bench.Text());
    }

    [Fact]
    public void Esc_in_a_later_field_goes_back_to_what_was_typed_before()
    {
        using Bench bench = new();
        bench.Desk.Store.New("Space");
        bench.Press("4", "a", "Enter");
        bench.Type("100 x 60 x 80");
        bench.Press("Enter");
        bench.Type("21 x 70");
        bench.Press("Enter");
        Assert.Contains("clearances, mm", bench.Text());

        bench.Press("Esc", "Esc");
        Assert.Contains("inside, mm  100 x 60 x 80", bench.Text());
        bench.Press("Enter");
        bench.Type("21 x 70");
        bench.Press("Enter", "Enter");

        Assert.Null(bench.Desk.Overlay);
        Assert.Equal(8, bench.Desk.Answers.Fit!.Answer!.Cells.Count);
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
        TypeSpace(bench, "100 x 60 x 80");
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
