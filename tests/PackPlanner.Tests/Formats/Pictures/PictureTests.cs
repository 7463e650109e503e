using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Pictures;
using PackPlanner.Formats.Sheets;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats.Pictures;

public partial class PictureTests
{
    private static readonly DateOnly Day = new(2026, 11, 24);

    private static readonly Lazy<SheetInput> Trike = new(() => InputOf("trike"));

    private static readonly SheetInput Ridden = WithLog();

    public static TheoryData<string, string[]> Words => new()
    {
        { "lot", ["Spread of the lot: 150 cells", "capacity, Ah", "resistance, mΩ", "use: 135", "hold: 3", "reject: 12", "least: 4.00 Ah"] },
        { "groups", ["Groups: 13 of 9 cells", "capacity, Ah", "group, from pack minus", "noise alone: 0.66 Ah between equal groups"] },
        { "layout", ["Layout seen from above", "mm", "+ plus end up", "− minus end up", "▲ pack minus this end"] },
        { "drop", ["Drop of each group at 22.0 A, from the cells' tests", "drop, mV"] },
        { "losses", ["From the label to usable energy", "Wh", "ageing", "2106 Wh"] },
        { "remedies", ["What each remedy would give back", "usable Wh", "balance all to full"] },
    };

    [Theory]
    [MemberData(nameof(Words))]
    public void A_picture_says_what_it_shows_of_which_job_and_in_which_units(string name, string[] words)
    {
        string[] said = TextsOf(Svg(name, Trike.Value));

        Assert.All(words, word => Assert.Contains(said, text => text == word));
        Assert.Contains("Bakery trike (invented data), rev 0", said);
    }

    // Regression only: with ACCEPT_GOLDEN=1 the pictures of the documents are drawn anew; look at them before committing.
    [Theory]
    [InlineData("trike", "lot")]
    [InlineData("trike", "groups")]
    [InlineData("trike", "losses")]
    [InlineData("tractor", "volts")]
    [InlineData("tractor", "apart")]
    [InlineData("tractor", "rest")]
    [InlineData("scooter", "layout")]
    public void Pictures_of_the_documents_are_those_that_the_program_draws(string job, string name)
    {
        string file = Repository.At("docs", "pictures", $"{job}-{name}.svg");
        string drawn = Svg(name, job switch { "trike" => Trike.Value, _ => InputOf(job) }) + "\n";
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1")
            File.WriteAllText(file, drawn);

        Assert.Equal(File.ReadAllText(file).ReplaceLineEndings("\n"), drawn);
    }

    // A log of an invented job is in memory, not on standard input; its own name stands in words and pictures.
    [Fact]
    public void The_log_of_a_demo_bears_the_name_of_its_file()
    {
        Job tractor = Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of("tractor")).Value.Now;

        Assert.Equal(["ride-may.csv", "ride-october.csv"], tractor.Logs.Select(log => log.Log.Source));
    }

    // Each finding is a block; two are what a page of Letter holds with two cautions over them, by the script that prints them all.
    [Fact]
    public void A_repair_sheet_has_for_each_finding_a_box_a_place_and_what_settles_it_and_then_the_pictures()
    {
        IReadOnlyList<SheetPage> pages = SheetCatalogue.All.Single(sheet => sheet.Name == "repair").Pages(Ridden);

        Assert.Equal(["Repair: what to settle before anything is changed", "What the log shows", "What a repair would give back"], pages.Select(page => page.Title));
        Assert.Contains("group 2 of 2: low capacity, sure: high", pages[0].Body, StringComparison.Ordinal);
        Assert.Contains("<b>settle it by:</b> settle</td><td data-head=\"reading\"><span class=\"box\">", pages[0].Body, StringComparison.Ordinal);
        Assert.Contains("<svg viewBox", pages[1].Body, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_job_gives_the_same_bytes_twice()
    {
        Picture[] possible = [.. PictureCatalogue.All.Where(picture => picture.WhyNot(Trike.Value) is null)];
        IReadOnlyList<(string Picture, string File, byte[] Bytes)> once = PictureFiles.Of(Trike.Value, possible);
        IReadOnlyList<(string Picture, string File, byte[] Bytes)> again = PictureFiles.Of(Trike.Value, possible);

        Assert.Equal(possible.SelectMany(picture => new[] { picture.Name, picture.Name }), once.Select(file => file.Picture));
        Assert.All(once.Zip(again), pair => Assert.Equal(pair.First.Bytes, pair.Second.Bytes));
    }

    // Source: [PNG] sections 5.2 and 11.2.1: eight bytes of signature, then the first chunk with width and height.
    [Fact]
    public void A_picture_is_a_png_of_the_size_that_its_svg_states()
    {
        IReadOnlyList<(string Picture, string File, byte[] Bytes)> files = PictureFiles.Of(Ridden, [Named("volts")]);
        byte[] png = files[0].Bytes;
        Match size = ViewBox().Match(Encoding.UTF8.GetString(files[1].Bytes));

        Assert.Equal(["volts.png", "volts.svg"], files.Select(file => file.File));
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8]);
        Assert.Equal(size.Groups[1].Value, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16, 4)).ToString(CultureInfo.InvariantCulture));
        Assert.Equal(size.Groups[2].Value, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20, 4)).ToString(CultureInfo.InvariantCulture));
    }

    // Two pictures may stand in one page, where an id must be met once.
    [Fact]
    public void Ids_of_a_picture_are_its_own_and_each_that_is_used_is_there()
    {
        foreach (string name in new[] { "lot", "losses" })
        {
            string svg = Svg(name, Trike.Value);
            string[] given = [.. Ids().Matches(svg).Select(id => id.Groups[1].Value)];

            Assert.NotEmpty(given);
            Assert.Equal(given.Length, given.Distinct().Count());
            Assert.All(given, id => Assert.StartsWith(name + "-", id, StringComparison.Ordinal));
            Assert.All(Uses().Matches(svg), use => Assert.Contains(use.Groups[1].Value, given));
        }
    }

    [Fact]
    public void Each_cell_is_drawn_at_its_place_and_one_millimetre_is_as_long_both_ways()
    {
        (double X, double Y)[] drawn = [.. Discs().Matches(Svg("layout", Trike.Value)).Select(disc => (Number(disc.Groups[1]), Number(disc.Groups[2])))];
        PlacedLabel[] places = [.. Trike.Value.Places];

        Assert.Equal(places.Length, drawn.Length);
        double scale = (drawn[^1].X - drawn[0].X) / (places[^1].Place.Centre.X - places[0].Place.Centre.X);
        Assert.All(places.Zip(drawn), pair =>
        {
            Assert.Equal(drawn[0].X + (scale * (pair.First.Place.Centre.X - places[0].Place.Centre.X)), pair.Second.X, 0.01);
            Assert.Equal(drawn[0].Y - (scale * (pair.First.Place.Centre.Y - places[0].Place.Centre.Y)), pair.Second.Y, 0.01);
        });
    }

    // By hand: 2 mΩ and 3 mΩ at 10 A drop 20 and 30 mV, so the second bar is half as tall again.
    [Fact]
    public void Bars_of_the_drop_are_as_tall_as_resistance_times_current()
    {
        (double currentA, IReadOnlyList<DropPicture.Drop> drops) = DropPicture.Of(Ridden);
        double[] heights = [.. Bars().Matches(Svg("drop", Ridden)).Where(bar => bar.Value.Contains("#DCDCDC", StringComparison.Ordinal) || bar.Value.Contains("#4D4D4D", StringComparison.Ordinal)).Select(bar => Number(bar.Groups[2]))];

        Assert.Equal(10, currentA);
        Assert.Equal([20.0, 30.0], drops.Select(drop => drop.Millivolt));
        Assert.Equal(1.5, heights[1] / heights[0], 0.005);
    }

    [Fact]
    public void Each_step_of_the_losses_hangs_where_the_one_before_ended_and_the_last_ends_at_usable()
    {
        EnergyBudget budget = Trike.Value.Energy!;
        IReadOnlyList<LossesPicture.Row> rows = LossesPicture.Rows(budget);

        Assert.Equal((0, budget.NominalWh), (rows[0].FromWh, rows[0].ToWh));
        Assert.All(rows.Skip(1).SkipLast(1).Zip(rows), pair => Assert.Equal(pair.Second.ToWh, pair.First.FromWh));
        Assert.Equal(budget.UsableWh, rows[^2].ToWh, 1e-6);
        Assert.Equal((0, budget.UsableWh), (rows[^1].FromWh, rows[^1].ToWh));
    }

    [Fact]
    public void Remedies_of_a_log_are_counted_from_the_pack_as_it_is() =>
        Assert.Equal([(500.0, 0.0), (520.0, 20.0)], RemediesPicture.Rows(Ridden).Select(row => (row.Wh, row.GainWh)));

    // Rows 0..899 in 450 stretches of two: lowest and highest are those of the readings, lost ones do not count.
    [Fact]
    public void A_thinned_log_keeps_its_lowest_and_highest_volts()
    {
        RideLog log = Ridden.Job.Logs[0].Log;

        VoltsPicture.Stretch[] stretches = [.. VoltsPicture.Thinned(log, [1])];

        Assert.Equal(450, stretches.Length);
        Assert.Equal(2.9, stretches.Min(stretch => stretch.LowestV));
        Assert.Equal(3.4, stretches.Max(stretch => stretch.HighestV));
        Assert.True(double.IsNaN(stretches[100].MeanV[0]));
        Assert.Equal(3.3, stretches[0].MeanV[0], 1e-9);
    }

    // Three groups at 3.3, 3.4 and 3.35 V: the first lies 50 mV below the middle one, whichever is chosen.
    [Fact]
    public void Groups_apart_are_drawn_less_the_middle_one()
    {
        double[] seconds = [.. Enumerable.Range(0, 90).Select(row => (double)row)];
        RideLog log = new() { TimeS = seconds, CurrentA = [.. seconds.Select(_ => 10.0)], GroupV = [.. ((double[])[3.3, 3.4, 3.35]).Select(v => seconds.Select(_ => v).ToArray())], Source = "ride.csv" };

        Assert.All(ApartPicture.Apart(log, [1, 2]), stretch =>
        {
            Assert.Equal(-50, stretch.MeanV[0], 1e-6);
            Assert.Equal(50, stretch.MeanV[1], 1e-6);
        });
        Assert.Equal("with fewer than three groups there is no middle one", Named("apart").WhyNot(Ridden));
    }

    [Fact]
    public void Groups_that_a_log_convicts_are_the_lines_of_its_picture()
    {
        string[] said = TextsOf(Svg("volts", Ridden));

        Assert.Contains("group 2", said);
        Assert.DoesNotContain("group 1", said);
        Assert.Contains("Volts of 2 groups over ride.csv", said);
    }

    [Fact]
    public void What_cannot_be_drawn_says_what_it_lacks()
    {
        SheetInput nothing = new() { Job = new Job { Title = "empty" }, Revision = 0, Date = Day, WhyNoGroups = "the job has no cells" };

        Assert.All(PictureCatalogue.All, picture => Assert.NotNull(picture.WhyNot(nothing)));
        Assert.Equal("the job has no log", Named("volts").WhyNot(nothing));
    }

    [Fact]
    public void A_hostile_or_endless_title_stays_one_harmless_line()
    {
        string title = "<script>x</script>\u001B[31m" + new string('w', 400);
        string svg = Svg("volts", Ridden with { Job = Ridden.Job with { Title = title } });

        Assert.DoesNotMatch("<script|\u001B", svg);
        Assert.DoesNotContain(new string('w', 60), svg, StringComparison.Ordinal);
    }

    private static SheetInput InputOf(string demo) => Assert.IsType<Outcome<SheetInput>.Given>(SheetInput.Of(
        Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of(demo)).Value, Day, TestContext.Current.CancellationToken)).Value;

    private static SheetInput WithLog()
    {
        double[] seconds = [.. Enumerable.Range(0, 900).Select(row => (double)row)];
        double[] one = [.. seconds.Select(_ => 3.3)];
        double[] other = [.. seconds.Select(row => row < 450 ? 3.4 : 2.9)];
        one[200] = one[201] = double.NaN;
        RideLog log = new() { TimeS = seconds, CurrentA = [.. seconds.Select(_ => 10.0)], GroupV = [one, other], Source = "ride.csv" };
        GroupDiagnosis Told(int group, double milliohm, params FindingDetail[] findings) =>
            new(group, null, null, new Ranged(milliohm, milliohm * 0.9, milliohm * 1.1), null, null, null, 0, findings);
        RideDiagnosis diagnosis = new()
        {
            Groups = [Told(1, 2), Told(2, 3, new FindingDetail(FindingKind.LowCapacity, ["seen"], Sureness.High, "settle"))],
            CapacityTold = true,
            Loaded = new LoadedRecovery(10, 50, 500, 51, 52),
            Remedies = [new Remedy("Replace group 2.", 52, 520, 4, 1)],
            Events = [],
            Cautions = [],
            Notes = [],
        };
        return new SheetInput
        {
            Job = new Job { Title = "ridden", Logs = [new JobLog(new JobSource("s1", "ride.csv", new string('0', 64), SourceKind.PackLog, []), log, 0)] },
            Revision = 3,
            Date = Day,
            Diagnosis = diagnosis,
            WhyNoGroups = "the job has no cells",
        };
    }

    private static Picture Named(string name) => PictureCatalogue.All.Single(picture => picture.Name == name);

    private static string Svg(string name, SheetInput input) => Named(name).Charts(input).Single().Chart.Svg(name);

    private static string[] TextsOf(string svg) => [.. Texts().Matches(svg).Select(text => System.Net.WebUtility.HtmlDecode(text.Groups[1].Value.Trim()))];

    private static double Number(Group text) => double.Parse(text.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("<text [^>]*>([^<]*)</text>")]
    private static partial Regex Texts();

    [GeneratedRegex("viewBox=\"0 0 ([0-9]+) ([0-9]+)\"")]
    private static partial Regex ViewBox();

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Ids();

    [GeneratedRegex("url\\(#([^)]+)\\)")]
    private static partial Regex Uses();

    [GeneratedRegex("<ellipse fill=\"none\"[^>]* transform=\"translate\\(([0-9.]+) ([0-9.]+)\\)\"")]
    private static partial Regex Discs();

    [GeneratedRegex("<rect fill=\"#[0-9A-F]+\" [^>]*width=\"([0-9.]+)\" height=\"([0-9.]+)\"")]
    private static partial Regex Bars();
}
