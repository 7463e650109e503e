using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Pictures;
using PackPlanner.Formats.Sheets;
using PackPlanner.Tests.House;
using static PackPlanner.Tests.Formats.Pictures.PictureCases;

namespace PackPlanner.Tests.Formats.Pictures;

public partial class PictureTests
{
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

    [GeneratedRegex("viewBox=\"0 0 ([0-9]+) ([0-9]+)\"")]
    private static partial Regex ViewBox();

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Ids();

    [GeneratedRegex("url\\(#([^)]+)\\)")]
    private static partial Regex Uses();
}
