using PackPlanner.Screens.Reading;

namespace PackPlanner.Tests.Screens;

/// <summary>A file is named by its path, typed or pasted in any of the ways that people and terminals write one.</summary>
public class FileChooserTests
{
    [Theory]
    [InlineData("{0}/zellen größe.csv")]
    [InlineData(" {0}/zellen größe.csv \n")]
    [InlineData("'{0}/zellen größe.csv'")]
    [InlineData("\"{0}/zellen größe.csv\"")]
    [InlineData("{0}/zellen\\ größe.csv")]
    [InlineData("{0}/../{1}/./zellen größe.csv")]
    [InlineData("file://{0}/zellen%20gr%C3%B6%C3%9Fe.csv")]
    [InlineData("{0}\\zellen größe.csv")]
    public void A_path_is_taken_as_it_is_typed_pasted_or_dropped(string written)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "written as paths of other systems are");
        using Files files = new();
        string text = string.Format(System.Globalization.CultureInfo.InvariantCulture, written, files.Folder, Path.GetFileName(files.Folder));
        using Bench bench = Opened();

        bench.Press("i");
        bench.Type(text.TrimEnd('\n'));
        bench.Press("Enter");
        Assert.IsType<ReadingOverlay>(bench.Desk.Overlay);
        bench.Press("Esc", "i");
        bench.Desk.Paste(text);
        Assert.Contains("zellen größe.csv", bench.Text());
        bench.Press("Enter");
        Assert.IsType<ReadingOverlay>(bench.Desk.Overlay);
        bench.Press("Esc");
        bench.Desk.Paste(text);
        Assert.IsType<ReadingOverlay>(bench.Desk.Overlay);
    }

    [Fact]
    public void A_folder_lists_what_it_holds_and_a_path_goes_on_from_there()
    {
        using Files files = new();
        using Bench bench = Opened();
        bench.Press("i");

        bench.Type(files.Folder + "/");
        Assert.Contains("deep/", bench.Text());
        bench.Type("ee");
        Assert.DoesNotContain("zellen", bench.Text().Split("name or path")[1].Split('\n', 2)[1]);
        bench.Press("Enter");
        bench.Type("../zel");
        bench.Press("Enter");

        Assert.IsType<ReadingOverlay>(bench.Desk.Overlay);
    }

    [Theory]
    [InlineData("nix.csv", "there is no nix.csv in {0}")]
    [InlineData("none/at/all.csv", "there is no folder none in {0}")]
    [InlineData("zellen größe.csv/x.csv", "there is no folder zellen größe.csv in {0}")]
    public void What_is_not_there_is_told_with_where_it_was_looked_for(string name, string expected)
    {
        using Files files = new();
        using Bench bench = Opened();
        bench.Press("i");

        bench.Type($"{files.Folder}/{name}");
        bench.Press("Enter");

        Assert.Equal(string.Format(System.Globalization.CultureInfo.InvariantCulture, expected, files.Folder), bench.Desk.Says);
        Assert.Contains(bench.Desk.Says!, bench.Text(160));
        Assert.IsNotType<ReadingOverlay>(bench.Desk.Overlay);
    }

    [Fact]
    public void Home_is_written_as_in_a_shell_and_a_path_of_windows_does_no_harm()
    {
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);

        Assert.Equal(home, TypedPath.Full("~", "/"));
        Assert.Equal(Path.Join(home, "no such file.csv"), TypedPath.Full("'~/no such file.csv'", "/"));
        Assert.True(TypedPath.IsPath(@"C:\Users\me\cells.csv"));
        Assert.False(TypedPath.IsPath("cells.csv"));
        Assert.Null(TypedPath.Full("  ", "/"));
    }

    private static Bench Opened()
    {
        Bench bench = new();
        Assert.True(bench.Desk.Store.New("Choosing"));
        bench.Press("2");
        return bench;
    }

    private sealed class Files : IDisposable
    {
        internal string Folder { get; } = Directory.CreateTempSubdirectory("packplanner-chooser").FullName;

        internal Files()
        {
            File.WriteAllText(Path.Join(Folder, "zellen größe.csv"), "label,Ah\nA1,2.5\nA2,2.4\n");
            File.WriteAllText(Path.Join(Directory.CreateDirectory(Path.Join(Folder, "deep")).FullName, "other.csv"), "label,Ah\nB1,2.5\n");
        }

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
