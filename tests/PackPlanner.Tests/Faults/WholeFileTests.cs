using PackPlanner.Formats.Files;

namespace PackPlanner.Tests.Faults;

/// <summary>Writing a file whole leaves what stands around it as it was.</summary>
public sealed class WholeFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-whole-").FullName;

    [Fact]
    public void What_a_killed_program_left_beside_goes_with_the_next_write_and_files_of_others_stay()
    {
        string file = Path.Combine(folder, "a.job.json");
        // No process has a number as large as this.
        File.WriteAllText($"{file}.2147483647.new", "half");
        File.WriteAllText($"{file}.mine.new", "a file of the user's");
        File.WriteAllText($"{file}.{Environment.ProcessId}x.new", "another");
        WholeFile.Write(file, "whole");
        Assert.Equal("whole", File.ReadAllText(file));
        Assert.Equal(["a.job.json", $"a.job.json.{Environment.ProcessId}x.new", "a.job.json.mine.new"], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_link_stays_a_link_and_a_private_file_stays_private()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links and modes of Unix");
        string real = Path.Combine(folder, "real.json");
        string link = Path.Combine(folder, "link.json");
        File.WriteAllText(real, "old");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(real, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.CreateSymbolicLink(link, real);
        WholeFile.Write(link, "new");
        Assert.Equal(real, new FileInfo(link).LinkTarget);
        Assert.Equal("new", File.ReadAllText(real));
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(real));
    }

    [Fact]
    public void A_folder_that_is_gone_leaves_the_reason_and_nothing_else()
    {
        Assert.ThrowsAny<IOException>(() => WholeFile.Write(Path.Combine(folder, "gone", "a.json"), "x"));
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);
}
