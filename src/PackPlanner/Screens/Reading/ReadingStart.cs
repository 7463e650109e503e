using System.Security.Cryptography;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.Reading;

/// <summary>Takes a file in: reads it aside, shows how it was read, and adds it to the job when the user accepts.</summary>
internal static class ReadingStart
{
    /// <summary>A file by its whole path.</summary>
    internal static void File(Desk desk, string path)
    {
        if (desk.Job is null)
            desk.Says = "No job is open; 1 Job opens one, and then the file can be added.";
        else
            Read(desk, new FileChoices(path, Path.GetFileName(path)));
    }

    /// <summary>A file whose path was pasted or dropped, or a table that was pasted: that is kept in a file of its own until the program ends.</summary>
    internal static void Pasted(Desk desk, string text)
    {
        if (TypedPath.IsPath(text) && TypedPath.Full(text, Environment.CurrentDirectory) is { } path && System.IO.File.Exists(path))
        {
            File(desk, path);
            return;
        }

        if (desk.Job is null || !text.Contains('\n', StringComparison.Ordinal))
        {
            desk.Says = desk.Job is null ? "No job is open; 1 Job opens one." : "Neither a table of several lines nor the path of a file: nothing was taken.";
            return;
        }

        try
        {
            Read(desk, new FileChoices(desk.Pasted.Keep(text), "pasted table"));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            desk.Says = $"The pasted table could not be kept while it is read: {OneLine.Of(fault.Message)}";
        }
    }

    /// <summary>Reads with what the user has said so far, of this file or of an earlier one of its shape.</summary>
    internal static void Read(Desk desk, FileChoices choices)
    {
        Job job = desk.Job!;
        desk.Aside.Start(typeof(ReadingStart), $"reading {choices.Shown}", work =>
        {
            FileChoices said = !choices.Seen && FileLooks.ShapeOf(choices.Path) is { } shape ? Memory(desk).Recall(shape, choices) : choices;
            FileInHand? inHand = FileReader.Read(said, job, work.Stopped, out Refusal? why);
            return () => Show(desk, said, inHand, why);
        });
    }

    /// <summary>Keeps what was said for the next file of the same shape.</summary>
    internal static void Remember(Desk desk, FileChoices choices)
    {
        if (FileLooks.ShapeOf(choices.Path) is { } shape)
            Memory(desk).Keep(shape, choices);
    }

    private static ReadingMemory Memory(Desk desk) => new(desk.Around.ReadingsFile);

    /// <summary>The checksum of a file, read in pieces.</summary>
    internal static string Fingerprint(string path)
    {
        using FileStream stream = System.IO.File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    private static void Show(Desk desk, FileChoices choices, FileInHand? inHand, Refusal? why)
    {
        if (inHand is not null)
            desk.Show(new ReadingOverlay(desk, choices, inHand));
        else
            desk.Show(Refused(desk, choices, why!));
    }

    private static ListOverlay Refused(Desk desk, FileChoices choices, Refusal why)
    {
        FileChoices own = choices with { Remembered = false, Seen = true, Cursor = -1 };
        return new(desk, $"{choices.Shown} was not added", () =>
        [
            new($"where  {OneLine.Of(why.Problem.Where.Replace(choices.Path, choices.Shown, StringComparison.Ordinal))}"),
            .. Lines("why    ", why.Problem.Why),
            .. Lines("do     ", why.Problem.Remedy),
            .. OptionsHere.Told([why.Problem.Remedy]).SelectMany(here => Lines("       ", here)),
            new("The job is as it was."),
            .. Again(desk, own),
            new("choose another file", "", () => FileChooser.Ask(desk)),
        ]);
    }

    // Of a file that is not there nothing can be said otherwise, and a document of ours has neither a decimal mark nor columns.
    private static IEnumerable<ListItem> Again(Desk desk, FileChoices own) => !System.IO.File.Exists(own.Path) || FileReader.IsJson(own.Path) ? [] :
    [
        new("read it with a decimal point", "", () => Read(desk, own with { Decimal = "point" })),
        new("read it with a decimal comma", "", () => Read(desk, own with { Decimal = "comma" })),
        new("say what its columns are", "", () => AskColumns(desk, own)),
    ];

    // A file that is refused has columns all the same.
    private static void AskColumns(Desk desk, FileChoices choices)
    {
        (string kind, IReadOnlyList<ColumnReading> columns) = FileLooks.ColumnsOf(choices.Path, choices.Into(new ReadOptions()));
        if (columns.Count == 0)
        {
            desk.Says = "No columns can be told apart in it.";
            return;
        }

        desk.Show(new ListOverlay(desk, $"The columns of {choices.Shown}", () =>
            [.. columns.Select((column, at) => new ListItem(column.Name, ColumnWords.Of(column.ReadAs), () => ColumnQuestion.Ask(desk, choices, columns, at, kind, said => Read(desk, said))))]));
    }

    private static IEnumerable<ListItem> Lines(string word, string says) =>
        Drawing.TextWidth.Wrap(OneLine.Of(says), 66).Select((line, i) => new ListItem((i == 0 ? word : "       ") + line));
}
