using System.CommandLine;
using PackPlanner.Formats;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Pictures;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>picture JOB [NAME...]: a job's pictures as PNG and SVG.</summary>
internal static class PictureVerb
{
    private static readonly Argument<string> JobPath = new("JOB") { Description = "the job's file" };
    private static readonly Argument<string[]> Names = new("NAME") { Description = string.Join(", ", PictureCatalogue.All.Select(picture => picture.Name)) + "; none: all that can be drawn", Arity = ArgumentArity.ZeroOrMore };
    private static readonly Option<string?> Into = new("--into") { Description = "folder for the files (default: pictures, in a folder of the job's name beside it)" };

    internal static Verb Definition { get; } = new(
        "picture",
        "draws the lot, groups, layout, log, losses and remedies as PNG and SVG",
        [
            ("packplanner picture trike.job.json", "every picture that the job has the data for"),
            ("packplanner picture trike.job.json losses layout --into talk", "two pictures into a folder of your choice"),
        ],
        [JobPath, Names],
        [Into],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string[] asked = call.Value(Names) ?? [];
        if (asked.FirstOrDefault(name => PictureCatalogue.All.All(picture => picture.Name != name)) is { } stranger)
            return Refusal.CommandLine("unknown-picture", stranger, $"there is no picture \"{OneLine.Of(stranger)}\"",
                $"Did you mean {NearestName.Of(stranger, PictureCatalogue.All.Select(picture => picture.Name))}? There are {string.Join(", ", PictureCatalogue.All.Select(picture => picture.Name))}.");
        if (!JobFile.Open(call.Value(JobPath)!).Is(out OpenJob? job, out Refusal? why)
            || !SheetInput.Of(job.History, Today.Date(), call.Stopped).Is(out SheetInput? input, out why))
            return why;
        Picture[] wanted = [.. PictureCatalogue.All.Where(picture => asked.Length == 0 || asked.Contains(picture.Name))];
        NotWrittenJson[] missing = [.. wanted.Where(picture => picture.WhyNot(input) is not null).Select(picture => new NotWrittenJson(picture.Name, picture.WhyNot(input)!))];
        if (asked.Length > 0 && missing.Length > 0)
            return Refusal.NoAnswer("picture-not-possible", $"picture {missing[0].Name}", missing[0].Why, "Add what is missing to the job. Nothing was written.");
        if (missing.Length == wanted.Length)
            return Refusal.NoAnswer("no-pictures", job.Path, "no picture can be drawn of this job yet", "Add cells, a log or a cavity by job add.");
        return Write(call, job, input, [.. wanted.Where(picture => picture.WhyNot(input) is null)], missing);
    }

    private static Outcome<Reply> Write(VerbCall call, OpenJob job, SheetInput input, Picture[] pictures, NotWrittenJson[] missing)
    {
        IReadOnlyList<(string Picture, string File, byte[] Bytes)> drawn = PictureFiles.Of(input, pictures);
        string folder = call.Value(Into) ?? JobFolder.Of(job.Path, "pictures");
        if (!FolderFiles.Write(folder, [.. drawn.Select(file => (file.File, file.Bytes))]).Is(out IReadOnlyList<string>? paths, out Refusal? why))
            return why;
        PictureAnswer answer = new()
        {
            Title = input.Job.Title,
            Revision = input.Revision,
            Files = [.. drawn.Zip(paths, (file, path) => new WrittenFileJson(file.Picture, path))],
            Missing = missing,
            Cautions = CautionJson.From(input.Cautions),
        };
        List<string> lines = [$"{answer.Title}, rev {answer.Revision}: {pictures.Length} pictures in {folder}"];
        lines.AddRange(answer.Files.Select(file => $"  {file.Name,-9} {file.File}"));
        lines.AddRange(missing.Select(picture => $"  {picture.Name,-9} not drawn: {picture.Why}"));
        MainTable table = new(["picture", "file"], [.. answer.Files.Select(file => new object?[] { file.Name, file.File })]);
        return Reply.Of(answer, PictureAnswerContext.Default.PictureAnswer, lines, table);
    }
}
