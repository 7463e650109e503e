using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Reading;

namespace PackPlanner.Tests.Screens;

/// <summary>The panel that shows how a file was read: what is corrected there is read at once, and remembered for files of the same shape.</summary>
public class ReadingPanelTests
{
    private const string Lot = "Nr;Wert X;Ri\nA1;2,850;31,2\nA2;2,790;33,0\n";

    [Fact]
    public void A_column_is_told_what_it_means_and_its_unit_and_the_next_file_of_the_shape_is_read_so()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));
        ReadIn(bench, File("lot.csv", Lot));
        Assert.Contains("Wert X", bench.Text(), StringComparison.Ordinal);

        Choose(bench, "Wert X", "it is capacity");
        Assert.Contains("2.85Ah", bench.Text(), StringComparison.Ordinal);
        Choose(bench, "Wert X", "its unit is mAh");
        Assert.Contains("capacity, mAh", bench.Text(), StringComparison.Ordinal);
        Choose(bench, "Wert X", "its unit is Ah");
        bench.Press("End", "Enter");
        Assert.Equal([2.85, 2.79], Taken(bench).Select(row => row.CapacityAh));

        ReadIn(bench, File("lot2.csv", Lot.Replace("2,850", "2,901", StringComparison.Ordinal)));
        Assert.Contains("you, before", bench.Text(), StringComparison.Ordinal);
        bench.Press("End", "Enter");
        Assert.Equal(2.901, Taken(bench).Last(row => row.Label == "A1").CapacityAh);

        ReadIn(bench, File("lot3.csv", Lot));
        PressLine(bench, "as the program would by itself");
        bench.Press("End", "Enter");
        Assert.Null(Taken(bench).Last(row => row.Label == "A1").CapacityAh);
        ReadIn(bench, File("lot4.csv", Lot));
        Assert.DoesNotContain("you, before", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void Days_and_later_volts_show_what_was_read_too()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));

        ReadIn(bench, File("twice.csv", "Cell;Cap mAh;OCV 1;Date 1;OCV 2;Date 2\nA1;2850;3,71;2026-03-01;3,702;2026-03-22\nA2;2790;3,70;2026-03-01;3,69;2026-03-22\n"));

        string text = bench.Text();
        Assert.Matches("Date 1 .*2026-03-01", text);
        Assert.Matches("OCV 2 .*3.702V", text);
        Assert.Matches("Date 2 .*2026-03-22", text);
    }

    [Fact]
    public void The_columns_are_seen_first_and_accept_with_them_however_long_the_list_is()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));

        ReadIn(bench, File("wide.csv", "Nr;" + string.Join(';', Enumerable.Range(1, 30).Select(i => $"Spalte {i}")) + "\nA1" + string.Concat(Enumerable.Repeat(";1", 30)) + "\n"));

        string text = bench.Text();
        Assert.Contains("   Nr ", text, StringComparison.Ordinal);
        Assert.Contains("Spalte 5 ", text, StringComparison.Ordinal);
        Assert.Contains(" > accept", text, StringComparison.Ordinal);
        bench.Press("Up", "Up", "Up", "Up", "Up");
        Assert.Contains("   accept", bench.Text(), StringComparison.Ordinal);
        Assert.DoesNotContain("   Nr ", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_is_told_its_sign_and_which_column_is_a_group()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));
        ReadIn(bench, File("ride.csv", "t,I,cell 1,cell 2,foo\n" + string.Concat(Enumerable.Range(0, 60).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"{i},{(i % 20 < 10 ? 0 : 10)},{3.8 - (i % 20 < 10 ? 0 : 0.05):0.000},{3.8 - (i % 20 < 10 ? 0 : 0.06):0.000},{3.7:0.000}\n")))));

        bench.Press("Home", "Enter");
        Assert.DoesNotMatch("it is [a-z]+[A-Z]", bench.Text(80, 40));
        Assert.Contains("it is charging current", bench.Text(80, 40), StringComparison.Ordinal);
        bench.Press("Esc");
        Choose(bench, "foo", "it is the volts of group 3");
        PressLine(bench, "with charge as the positive");
        bench.Press("End", "Enter");

        JobLog log = Assert.Single(bench.Desk.Job!.Logs);
        Assert.Equal((3, 3.7, -10.0), (log.Log.Groups, log.Log.GroupV[2][0], log.Log.CurrentA![15]));
    }

    [Fact]
    public void A_file_that_is_refused_can_be_told_what_its_columns_are()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));
        ReadIn(bench, File("odd.csv", "Nr;Kapazität\nA1;400\nA2;450\n"));
        Assert.Contains("was not added", bench.Text(), StringComparison.Ordinal);

        PressLine(bench, "say what its columns are");
        PressLine(bench, "Kapazität");
        Pick(bench, "its unit is mAh");
        bench.Press("End", "Enter");

        Assert.Equal([0.4, 0.45], Taken(bench).Select(row => row.CapacityAh));
    }

    private static IEnumerable<PackPlanner.Core.Cells.CellRow> Taken(Bench bench) => bench.Desk.Job!.Tables.SelectMany(table => table.Rows);

    [Fact]
    public void A_log_of_another_pack_is_refused_as_the_log_that_it_is()
    {
        using Bench bench = new();
        bench.OpenLot(series: 4);

        ReadIn(bench, File("ride.csv", "t,I,cell 1,cell 2\n" + string.Concat(Enumerable.Range(0, 60).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"{i},{(i % 20 < 10 ? 40 : 0)},{3.3 - (i % 20 < 10 ? 0.05 : 0):0.000},{3.31 - (i % 20 < 10 ? 0.05 : 0):0.000}\n")))));

        Assert.Contains("the volts of 2 groups, but 4 in series", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_space_that_cannot_be_read_does_not_take_the_place_of_one_that_can()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        string before = bench.Desk.Job!.FitCase!.Text;

        ReadIn(bench, File("case.json", """{"cell":{"shape":"cylinder","diameterMm":21,"lengthMm":70},"cavity":{"boxes":[]}}"""));

        string text = bench.Text();
        Assert.Contains("case.json was not added", text, StringComparison.Ordinal);
        Assert.Contains("cavity.parts", text, StringComparison.Ordinal);
        Assert.DoesNotContain("decimal", text, StringComparison.Ordinal);
        Assert.Equal(before, bench.Desk.Job!.FitCase!.Text);
    }

    [Fact]
    public void The_same_file_again_and_cells_that_the_job_knows_are_told_before_they_are_taken()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));
        string lot = File("lot.csv", "label,Ah\nA1,2.85\nA2,2.79\n");
        ReadIn(bench, lot);
        Assert.DoesNotContain("already", bench.Text(), StringComparison.Ordinal);
        bench.Press("End", "Enter");

        ReadIn(bench, lot);
        Assert.Contains("in the job already, as lot.csv: leave it with Esc", Flat(bench), StringComparison.Ordinal);
        bench.Press("Esc");

        ReadIn(bench, File("more.csv", "label,Ah\nA2,2.80\nA3,2.71\n"));
        Assert.Contains("1 of its labels are in the job already", Flat(bench), StringComparison.Ordinal);
        bench.Press("End", "Enter");
        ReadIn(bench, File("again.csv", "label,Ah\nA2,2.81\nA3,2.70\n"));
        Assert.Contains("All 2 labels are in the job already", Flat(bench), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_a_sentence_names_an_option_the_screen_says_what_does_it_here()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));
        ReadIn(bench, File("extra.csv", "label,Ah,Wert X\nA1,2.85,1\nA2,2.79,2\n"));
        Assert.Contains("On this screen --column is Enter on the line of a column.", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("Esc");

        // One figure a thousand times off its column by its mark: refused, and its remedy names the option.
        ReadIn(bench, File("odd.csv", "cell;capacity\nA1;2790\nA2;2815\nA3;2,850\n"));
        Assert.Contains("On this screen --decimal is a line below", Flat(bench), StringComparison.Ordinal);

        Assert.Empty(OptionsHere.Told(["Nothing of the kind."]));
    }

    private static string Flat(Bench bench) => System.Text.RegularExpressions.Regex.Replace(bench.Text(), @"\s+", " ");

    private static void ReadIn(Bench bench, string file) => ReadingStart.File(bench.Desk, file);

    private static void Choose(Bench bench, string column, string answer)
    {
        PressLine(bench, column);
        Pick(bench, answer);
    }

    private static void Pick(Bench bench, string answer)
    {
        bench.Type(answer);
        bench.Press("Enter");
    }

    // Walks down from the top to the line that holds the words, as a user does.
    private static void PressLine(Bench bench, string words)
    {
        bench.Press("Home");
        for (int i = 0; i < 60; i++)
        {
            string here = bench.Text(100, 40).Split('\n').FirstOrDefault(line => line.StartsWith(" >", StringComparison.Ordinal)) ?? "";
            if (here.Contains(words, StringComparison.Ordinal))
            {
                bench.Press("Enter");
                return;
            }

            bench.Press("Down");
        }

        Assert.Fail($"No line holds \"{words}\":\n{bench.Text(100, 40)}");
    }

    private static string File(string name, string text)
    {
        string file = Path.Combine(Directory.CreateTempSubdirectory("packplanner-reading").FullName, name);
        System.IO.File.WriteAllText(file, text);
        return file;
    }

    [Fact]
    public void Labels_in_another_spelling_are_asked_about_and_taken_as_those_of_the_job()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("Reading"));
        ReadIn(bench, File("lot.csv", "label,Ah\nK007,2.85\nK008,2.79\nK009,2.79\n"));
        bench.Press("End", "Enter");

        string again = File("again.csv", "label,V\nK7,3.61\nk 008,3.60\nK010,3.60\n");
        ReadIn(bench, again);
        Assert.Contains("K7 (K007), k 008 (K008): in the job in another spelling; kept apart", bench.Text(100, 40), StringComparison.Ordinal);
        PressLine(bench, "take labels of another spelling as those of the job");
        bench.Press("End", "Enter");

        Assert.Equal(["K007", "K008", "K009", "K010"], bench.Desk.Job!.Rows.Select(row => row.Label).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(3.61, bench.Desk.Job.Rows.Last(row => row.Label == "K007").RestV);
    }
}
