using System.CommandLine;
using System.Globalization;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>sheet JOB [NAME...]: what goes to the bench, on paper.</summary>
internal static class SheetVerb
{
    private static readonly Argument<string> JobPath = new("JOB") { Description = "the job's file" };
    private static readonly Argument<string[]> Names = new("NAME") { Description = string.Join(", ", SheetCatalogue.All.Select(sheet => sheet.Name)) + "; none: all that can be made", Arity = ArgumentArity.ZeroOrMore };
    private static readonly Option<string?> Into = new("--into") { Description = "folder for the files (default: sheets, in a folder of the job's name beside it)" };
    private static readonly Option<string?> Date = new("--date") { Description = "day printed on the sheets, such as 2026-11-24 (default: today)" };

    internal static Verb Definition { get; } = new(
        "sheet",
        "prints what goes to the bench: labels, pick list, placement, links, taps, rejects and more",
        [
            ("packplanner sheet trike.job.json", "writes every sheet that the job has the data for"),
            ("packplanner sheet trike.job.json place taps --into paper", "two sheets into a folder of your choice"),
        ],
        [JobPath, Names],
        [Into, Date],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string[] asked = call.Value(Names) ?? [];
        if (asked.FirstOrDefault(name => SheetCatalogue.All.All(sheet => sheet.Name != name)) is { } stranger)
            return Refusal.CommandLine("unknown-sheet", stranger, $"there is no sheet \"{OneLine.Of(stranger)}\"",
                $"Did you mean {NearestName.Of(stranger, SheetCatalogue.All.Select(sheet => sheet.Name))}? There are {string.Join(", ", SheetCatalogue.All.Select(sheet => sheet.Name))}.");
        DateOnly day = Today.Date();
        if (call.Value(Date) is { } typed && !DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day))
            return Refusal.CommandLine("bad-option", "--date", $"\"{OneLine.Of(typed)}\" is not a day", "Write --date 2026-11-24.");
        if (!JobFile.Open(call.Value(JobPath)!).Is(out OpenJob? job, out Refusal? why)
            || !SheetInput.Of(job.History, day, call.Stopped).Is(out SheetInput? input, out why))
            return why;
        NotWrittenJson[] missing =
        [
            .. SheetCatalogue.All.Where(sheet => asked.Length == 0 || asked.Contains(sheet.Name))
                .Select(sheet => (sheet.Name, Why: sheet.WhyNot(input))).Where(sheet => sheet.Why is not null)
                .Select(sheet => new NotWrittenJson(sheet.Name, sheet.Why!)),
        ];
        if (asked.Length > 0 && missing.Length > 0)
            return Refusal.NoAnswer("sheet-not-possible", $"sheet {missing[0].Name}", missing[0].Why, "Add what is missing to the job. Nothing was written.");
        Sheet[] sheets = [.. SheetCatalogue.All.Where(sheet => (asked.Length == 0 || asked.Contains(sheet.Name)) && sheet.WhyNot(input) is null)];
        if (sheets.Length == 0)
            return Refusal.NoAnswer("no-sheets", job.Path, "no sheet can be made of this job yet", "Add cells, a cavity or groups by job add.");
        return Write(call, job, input, sheets, missing);
    }

    private static Outcome<Reply> Write(VerbCall call, OpenJob job, SheetInput input, Sheet[] sheets, NotWrittenJson[] missing)
    {
        IReadOnlyList<(string Sheet, string File, byte[] Bytes)> made = SheetFiles.Of(input, sheets, call.DecimalOut == "comma");
        string folder = call.Value(Into) ?? JobFolder.Of(job.Path, "sheets");
        if (!SheetFiles.Write(folder, made).Is(out IReadOnlyList<string>? paths, out Refusal? why))
            return why;
        SheetAnswer answer = new()
        {
            Title = input.Job.Title,
            Revision = input.Revision,
            Date = input.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Files = [.. made.Zip(paths, (file, path) => new WrittenFileJson(file.Sheet, path))],
            Missing = missing,
            Understood = input.Notes,
            Cautions = CautionJson.From(input.Cautions),
        };
        List<string> lines = [$"{answer.Title}, rev {answer.Revision}: {sheets.Length} sheets in {folder}"];
        lines.AddRange(answer.Files.Select(file => $"  {file.Name,-13} {file.File}"));
        lines.AddRange(missing.Select(sheet => $"  {sheet.Name,-13} not made: {sheet.Why}"));
        lines.AddRange(input.Notes);
        lines.Add("Next  Open the .html files in a browser and print them; each page says which job and revision it belongs to.");
        MainTable table = new(["sheet", "file"], [.. answer.Files.Select(file => new object?[] { file.Name, file.File })]);
        return Reply.Of(answer, SheetAnswerContext.Default.SheetAnswer, lines, table);
    }
}
