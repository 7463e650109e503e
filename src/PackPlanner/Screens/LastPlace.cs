using System.Globalization;
using System.Text;
using PackPlanner.Formats.Files;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens;

/// <summary>How things were shown, which job was on screen, which step, and where the cursor stood in each: a small file of a few lines.</summary>
internal sealed class LastPlace
{
    private readonly int step;
    private readonly Dictionary<string, string> places;

    private LastPlace(string? file, int step, Dictionary<string, string> places)
    {
        File = file;
        this.step = step;
        this.places = places;
    }

    /// <summary>The job that was open; null when none was.</summary>
    internal string? File { get; }

    /// <summary>Units, decimal mark and signs as they were chosen to stay.</summary>
    internal Look Look => new(Chose("ascii"), Chose("comma"), Chose("us"));

    internal static string Of(Desk desk)
    {
        StringBuilder text = new();
        Look look = desk.Lasting;
        text.Append("look\t").AppendJoin(' ', new[] { look.Ascii ? "ascii" : "", look.DecimalComma ? "comma" : "", look.UsUnits ? "us" : "" }.Where(word => word.Length > 0)).Append('\n');
        if (desk.Open is null)
            return text.ToString();
        text.Append("job\t").Append(desk.Open.File).Append('\n');
        text.Append("step\t").Append((desk.At + 1).ToString(CultureInfo.InvariantCulture)).Append('\n');
        foreach (IStep step in desk.Steps)
            text.Append(step.Name).Append('\t').Append(step.Place.ReplaceLineEndings(" ")).Append('\n');
        return text.ToString();
    }

    internal static LastPlace? Read(string file)
    {
        try
        {
            if (!System.IO.File.Exists(file))
                return null;
            Dictionary<string, string> lines = System.IO.File.ReadLines(file)
                .Select(line => line.Split('\t', 2))
                .Where(halves => halves.Length == 2)
                .GroupBy(halves => halves[0])
                .ToDictionary(group => group.Key, group => group.First()[1]);
            _ = int.TryParse(lines.GetValueOrDefault("step"), CultureInfo.InvariantCulture, out int step);
            return new LastPlace(lines.GetValueOrDefault("job"), step, lines);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Written without waiting for the disk: after a power cut the place may be an older one, never the job.</summary>
    internal static void Write(string file, string text)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            WholeFile.Write(file, text, flushToDisk: false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The place is a convenience; the job itself is saved elsewhere and says so when it cannot be.
        }
    }

    private bool Chose(string word) => places.GetValueOrDefault("look", "").Split(' ').Contains(word);

    internal void Restore(Desk desk)
    {
        foreach (IStep known in desk.Steps)
        {
            if (places.TryGetValue(known.Name, out string? place))
                known.Place = place;
        }

        desk.GoTo(step - 1);
    }
}
