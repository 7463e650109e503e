using System.Globalization;
using System.Text;

namespace PackPlanner.Screens;

/// <summary>Which job was on screen, which step, and where the cursor stood in each: a small file of a few lines.</summary>
internal sealed class LastPlace
{
    private readonly int step;
    private readonly Dictionary<string, string> places;

    private LastPlace(string file, int step, Dictionary<string, string> places)
    {
        File = file;
        this.step = step;
        this.places = places;
    }

    internal string File { get; }

    internal static string Of(Desk desk)
    {
        if (desk.Open is null)
            return "";
        StringBuilder text = new();
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
            return lines.TryGetValue("job", out string? job) && int.TryParse(lines.GetValueOrDefault("step"), CultureInfo.InvariantCulture, out int step)
                ? new LastPlace(job, step, lines)
                : null;
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
            string beside = $"{file}.{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}.new";
            System.IO.File.WriteAllText(beside, text);
            System.IO.File.Move(beside, file, overwrite: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The place is a convenience; the job itself is saved elsewhere and says so when it cannot be.
        }
    }

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
