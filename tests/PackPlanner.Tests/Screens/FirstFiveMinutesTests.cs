using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Screens;

/// <summary>A newcomer's first five minutes on the invented trike, key by key.</summary>
public class FirstFiveMinutesTests
{
    [Fact]
    public void The_trike_leads_from_cells_to_sheets_without_a_manual()
    {
        using Bench bench = new();

        // The cursor stands on the scenes; Enter opens a copy on Cells with every step filled in.
        bench.Press("Enter");
        Assert.Contains("Bakery trike (demo copy)", bench.Text());
        Assert.Equal("Cells", bench.Desk.Step.Name);
        Assert.Matches(@"\d+ use, \d+ hold, \d+ reject of 150", bench.Desk.Step.Picture.Answer);

        // The first row is a held one; = says why it is not simply rejected.
        bench.Press("=");
        Assert.Contains("comes from", bench.Text());
        Assert.Contains("hold", bench.Text());
        bench.Press("Esc");

        // The groups, and what the tester's noise leaves of their equality.
        bench.Press("3");
        Assert.Contains("13 groups of 9", bench.Desk.Step.Picture.Answer);
        Assert.Contains("noise", bench.Desk.Step.Picture.Answer);
        Assert.Contains(bench.Desk.Step.Picture.Cautions, caution => caution.Code == "caution-07" && caution.Where.Contains("T113", StringComparison.Ordinal));
        bench.Press("j");
        Assert.Contains("May I join the cells of group 1 now?", bench.Text());
        bench.Press("Esc");

        ExchangeAndTakeBack(bench);

        // The drawing and the taps; a reading that is off is refused a blessing.
        bench.Press("5");
        Assert.Contains("+01", bench.Text());
        bench.Press("Tab", "Down", "Enter");
        bench.Type("1.00");
        bench.Press("Enter");
        Assert.Contains("do not plug in", bench.Text());

        // From the label to usable, in lines that add up.
        bench.Press("6");
        Assert.Contains("kWh", bench.Desk.Step.Picture.Answer);
        Assert.Contains("One of 13 like groups ends it", bench.Desk.Step.Picture.Answer);
        Assert.Contains("Wh", bench.Text());

        // Sheets, written; those of the screen say of joining what those of the command line say.
        bench.Press("8", " ", "Down", "Down", "Down", " ", "w");
        Assert.Contains("files in", bench.Desk.Says);
        Assert.Contains("For a job of your own press :", bench.Desk.Says);
        string links = Assert.Single(Directory.GetFiles(bench.JobsFolder, "links.html", SearchOption.AllDirectories));
        Assert.Contains("bring first, alone", File.ReadAllText(links));
    }

    [Fact]
    public void Every_step_of_every_scene_opens_and_every_key_it_offers_does_something_or_says_why_not()
    {
        foreach (string scene in new[] { "trike", "tractor", "scooter" })
        {
            using Bench bench = new();
            bench.Desk.Store.Demo(scene);
            Assert.NotNull(bench.Desk.Job);
            for (int step = 0; step < 8; step++)
            {
                bench.Desk.GoTo(step);
                bench.Text();
                foreach (string key in bench.Desk.Step.Keys.Select(key => key.Entry.Key).Where(key => key is not ("D" or "w")))
                {
                    bench.Press(key == "Space" ? " " : key);
                    Assert.NotEmpty(bench.Text());
                    Assert.NotEmpty(bench.Text(120, 36));
                    Assert.DoesNotContain("A fault in the program", bench.Desk.Says ?? "");
                    bench.Desk.CloseAll();
                    bench.Desk.GoTo(step);
                }
            }

            // What one log says is kept while another is shown.
            if (bench.Desk.Job.Logs.Count > 1)
            {
                RideDiagnosis first = bench.Desk.Answers.Diagnosis(0)!;
                Assert.NotSame(first, bench.Desk.Answers.Diagnosis(1));
                Assert.Same(first, bench.Desk.Answers.Diagnosis(0));
            }
        }
    }

    // Two cells are exchanged: both sums are shown first, and u takes it back.
    private static void ExchangeAndTakeBack(Bench bench)
    {
        string before = GroupOne(bench);
        bench.Press("m", "Enter");
        Assert.Matches(@"then 1: [\d.]+ Ah [\d.]+ mΩ T\d+ 1\.\d\dx; 2: [\d.]+ Ah [\d.]+ mΩ T\d+ 1\.\d\dx", bench.Text());
        bench.Press("Enter");
        Assert.NotEqual(before, GroupOne(bench));
        bench.Press("u");
        Assert.Equal(before, GroupOne(bench));
    }

    private static string GroupOne(Bench bench)
    {
        bench.Desk.GoTo(2);
        bench.Text();
        bench.Press("Home");
        return bench.Desk.Step.CopyText()!;
    }
}
