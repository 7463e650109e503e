using System.Diagnostics;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>The built program in a process of its own, because its language is set where it starts.</summary>
public sealed class OtherLanguageTests
{
    [Fact]
    public void Sentences_keep_their_decimal_point_where_the_language_writes_a_comma()
    {
        string own = Run("C");
        string german = Run("de_DE.UTF-8");

        Assert.Contains("2.75 V", own, StringComparison.Ordinal);
        Assert.Equal(own, german);
    }

    private static string Run(string language)
    {
        ProcessStartInfo start = new("dotnet",
            [Path.Combine(AppContext.BaseDirectory, "packplanner.dll"), "energy", "-", "--load", "20A", "--chemistry", "NMC"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Repository.At("tests"),
        };
        start.Environment["LANG"] = language;
        start.Environment["LC_ALL"] = language;
        // Lets the runtime follow the language of the machine, which the program's own settings keep it from.
        start.Environment["DOTNET_SYSTEM_GLOBALIZATION_INVARIANT"] = "0";
        using Process process = Process.Start(start)!;
        process.StandardInput.Write("group,capacityAh\n1,39.276\n2,38.1\n");
        process.StandardInput.Close();
        string output = process.StandardOutput.ReadToEnd(), notes = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.SkipWhen(notes.Contains("ICU", StringComparison.Ordinal), "the runtime finds no tables of languages (ICU) on this machine");
        Assert.Equal(0, process.ExitCode);
        return output;
    }
}
