using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.CavityScreen;

namespace PackPlanner.Tests.Screens;

/// <summary>Step 4 by hand: spaces, outlines, tubes, openings and weighed parts typed in millimetres and drawn as typed.</summary>
public class CavityTests
{
    [Fact]
    public void A_space_is_typed_in_three_fields_and_holds_what_a_hand_counts()
    {
        using Bench bench = new();
        bench.TypeSpace("100 x 60 x 80");

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
        Assert.Matches(@"cells may weigh: 8(\.0 kg)? +its case", bench.Text());
        bench.Set("series", new JobValue.Number(13));
        Assert.Matches(@"groups in series: 13 +you, 2 Nov", bench.Text());
    }

    [Fact]
    public void A_tube_an_opening_and_a_weighed_part_are_added_changed_and_taken_out_again()
    {
        using Bench bench = new();
        bench.TypeSpace("120 x 60 x 80");
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

        AddALid(bench);
        AddAContactor(bench);
        ChangeAndTakeOutTheTube(bench);
    }

    private static void AddALid(Bench bench)
    {
        Add(bench, 5, "Enter");
        bench.Type("0 0 120 45");
        bench.Press("Enter");
        Opening lid = Assert.Single(bench.Desk.Answers.Fit!.Case!.Openings!);
        Assert.Equal((Axis.Z, true), (lid.Across, lid.Positive!.Value));
    }

    private static void AddAContactor(Bench bench)
    {
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
    }

    // From the list.
    private static void ChangeAndTakeOutTheTube(Bench bench)
    {
        while (bench.Desk.Step is CavityModel { Under: not { Kind: CasePartKind.KeepOut } })
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
        bench.TypeSpace("420 x 150 x 110");
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
        bench.TypeSpace("100 x 60 x 40");
        Assert.Empty(bench.Desk.Answers.Fit!.Answer!.Cells);

        bench.Press("g", "Down", "Enter");

        Assert.Equal([Axis.X], Assert.IsType<CellBody.Cylinder>(bench.Desk.Answers.Fit!.Case!.Cell).Axes);
        Assert.NotEmpty(bench.Desk.Answers.Fit.Answer!.Cells);
    }

    private static void Add(Bench bench, int which, params string[] then) =>
        bench.Press(["a", .. Enumerable.Repeat("Down", which), "Enter", .. then]);

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
}
