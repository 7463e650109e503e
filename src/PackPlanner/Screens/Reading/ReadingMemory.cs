using System.Text;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Screens.Reading;

/// <summary>How files of each shape were corrected, kept beside the place where the user was: one line a shape, the latest first.</summary>
/// <param name="file">readings.txt in the program's state folder.</param>
internal sealed class ReadingMemory(string file)
{
    private const int MostShapes = 200;

    /// <summary>The choices with what was said of an earlier file of this shape, where anything was.</summary>
    internal FileChoices Recall(string shape, FileChoices choices)
    {
        string[]? parts = Lines().Select(line => line.Split('\t')).FirstOrDefault(parts => parts.Length >= 3 && parts[0] == shape);
        if (parts is null || parts[1] is not ("auto" or "point" or "comma") || parts[2] is not ("auto" or "discharge" or "charge"))
            return choices;
        return choices with
        {
            Decimal = parts[1],
            CurrentSign = parts[2],
            Columns = [.. parts[3..].Select(typed => ColumnChoice.Read(typed, out _)).OfType<ColumnChoice>()],
            Remembered = true,
        };
    }

    /// <summary>Keeps what was said for the next file of this shape; forgets it where nothing was.</summary>
    internal void Keep(string shape, FileChoices choices)
    {
        string[] others = [.. Lines().Where(line => !line.StartsWith(shape + "\t", StringComparison.Ordinal))];
        if (!choices.Any && others.Length == Lines().Length)
            return;
        StringBuilder text = new();
        if (choices.Any)
            text.Append(shape).Append('\t').Append(choices.Decimal).Append('\t').Append(choices.CurrentSign)
                .AppendJoin("", choices.Columns.Where(choice => !choice.Name.Contains('\t', StringComparison.Ordinal)).Select(choice => $"\t{choice}")).Append('\n');
        foreach (string line in others.Take(MostShapes - 1))
            text.Append(line).Append('\n');
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            WholeFile.Write(file, text.ToString(), flushToDisk: false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // A convenience: the file that was read stands in the job, and the next one can be corrected again.
        }
    }

    private string[] Lines()
    {
        try
        {
            return File.Exists(file) ? File.ReadAllLines(file) : [];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
