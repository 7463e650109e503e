using System.Reflection;
using System.Text.Json.Nodes;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats.JobFiles;

public class JobFileTests
{
    private static OpenJob Value(Outcome<OpenJob> outcome) => Assert.IsType<Outcome<OpenJob>.Given>(outcome).Value;

    private static string Code(Outcome<OpenJob> outcome) => Assert.IsType<Outcome<OpenJob>.Refused>(outcome).Why.Code;

    [Fact]
    public void A_job_comes_back_whole_with_every_change()
    {
        using Folder folder = new();
        JobHistory full = Jobs.Full();

        OpenJob saved = Value(JobFile.Create(folder.File("tray"), full));
        OpenJob read = Value(JobFile.Open(folder.File("tray")));

        Assert.EndsWith("tray.job.json", saved.Path, StringComparison.Ordinal);
        Assert.Equal(full.Done.Select(step => step.Name), read.History.Done.Select(step => step.Name));
        Assert.Equal(full.Undone.Select(step => step.Name), read.History.Undone.Select(step => step.Name));
        Assert.Equal(full.Revision, read.History.Revision);
        Assert.Equal(JobText.Write(full, UnknownFields.None), JobText.Write(read.History, UnknownFields.None));
    }

    [Fact]
    public void Each_state_that_undo_reaches_comes_back_as_it_was()
    {
        using Folder folder = new();
        JobHistory full = Jobs.Full();
        JobHistory read = Value(JobFile.Open(Value(JobFile.Create(folder.File("tray"), full)).Path)).History;
        full = full.Redo();
        read = read.Redo();

        while (full.UndoName is not null)
        {
            Assert.True(JsonNode.DeepEquals(JobParts.Write(full.Now), JobParts.Write(read.Now)), full.UndoName);
            full = full.Undo();
            read = read.Undo();
        }

        Assert.Null(read.UndoName);
        Assert.Equal("tray", read.Now.Title);
        Assert.Empty(read.Now.Tables);
    }

    // A new property of Job, of a row or of a log would be lost in silence if its line in the file were forgotten.
    [Fact]
    public void Every_property_of_a_job_a_row_and_a_log_is_in_the_file()
    {
        string[] computed = [nameof(Job.Rows), nameof(Job.NextSourceId), nameof(Job.Sources)];
        string[] properties = [.. typeof(Job).GetProperties(BindingFlags.Public | BindingFlags.Instance).Select(p => p.Name).Except(computed)];
        Assert.Equal(properties.Length, JobParts.All.Count);
        Assert.All(JobParts.All, part => Assert.NotNull(part.Write(Jobs.Full().Now)));

        using Folder folder = new();
        Job read = Value(JobFile.Open(Value(JobFile.Create(folder.File("tray"), Jobs.Full())).Path)).History.Now;
        Assert.All(typeof(CellRow).GetProperties(BindingFlags.Public | BindingFlags.Instance), property =>
        {
            Assert.NotNull(property.GetValue(Jobs.Row()));
            Assert.Equal(property.GetValue(Jobs.Row()), property.GetValue(read.Tables[0].Rows[0]));
        });
        Assert.All(typeof(RideLog).GetProperties(BindingFlags.Public | BindingFlags.Instance), property =>
            Assert.Equal(property.GetValue(Jobs.Log()), property.GetValue(read.Logs[0].Log)));
    }

    [Fact]
    public void The_same_job_is_the_same_bytes()
    {
        Assert.Equal(JobText.Write(Jobs.Full(), UnknownFields.None), JobText.Write(Jobs.Full(), UnknownFields.None));
    }

    [Fact]
    public void Fields_of_a_later_version_are_kept_where_they_stood()
    {
        using Folder folder = new();
        OpenJob job = Value(JobFile.Create(folder.File("tray"), Jobs.Full()));
        JsonObject tree = JsonNode.Parse(File.ReadAllText(job.Path))!.AsObject();
        tree["colour"] = new JsonArray(1, null);
        tree["state"]!["wheel"] = "rear";
        tree["state"]!["givens"]!["moonPhase"] = new JsonObject { ["value"] = 1 };
        tree["state"]!["givens"]!["series"]!["askedBy"] = "Ada";
        tree["state"]!["verdicts"]!["T042"]!["photo"] = "a.png";
        tree["sources"]!["s1"]!["licence"] = "CC0";
        File.WriteAllText(job.Path, tree.ToJsonString());

        OpenJob opened = Value(JobFile.Open(job.Path));
        OpenJob saved = Value(JobFile.Save(opened with { History = opened.History.Do(JobChanges.SetVerdict("T042", null)) }));
        JsonNode again = JsonNode.Parse(File.ReadAllText(saved.Path))!;

        Assert.Equal("[1,null]", again["colour"]!.ToJsonString());
        Assert.Equal("rear", (string?)again["state"]!["wheel"]);
        Assert.Equal(1, (int?)again["state"]!["givens"]!["moonPhase"]!["value"]);
        Assert.Equal("Ada", (string?)again["state"]!["givens"]!["series"]!["askedBy"]);
        Assert.Equal("CC0", (string?)again["sources"]!["s1"]!["licence"]);
        Assert.Null(again["state"]!["verdicts"]);
    }

    [Fact]
    public void A_job_that_another_program_changed_is_not_overwritten()
    {
        using Folder folder = new();
        OpenJob mine = Value(JobFile.Create(folder.File("tray"), Jobs.Full()));
        OpenJob theirs = Value(JobFile.Open(mine.Path));
        _ = Value(JobFile.Save(theirs with { History = theirs.History.Undo() }));
        byte[] before = File.ReadAllBytes(mine.Path);

        Assert.Equal("job-changed-elsewhere", Code(JobFile.Save(mine with { History = mine.History.Redo() })));
        Assert.Equal(before, File.ReadAllBytes(mine.Path));
        Assert.Equal("packplanner-copy.job.json", Path.GetFileName(Value(JobFile.Copy(mine, folder.File("packplanner-copy"))).Path));
    }

    [Fact]
    public void A_new_job_never_replaces_a_file()
    {
        using Folder folder = new();
        File.WriteAllText(folder.File("tray.job.json"), "mine");

        Assert.Equal("job-exists", Code(JobFile.Create(folder.File("tray"), Jobs.Full())));
        Assert.Equal("mine", File.ReadAllText(folder.File("tray.job.json")));
    }

    [Theory]
    [InlineData("", "job-not-json")]
    [InlineData("{\"schema\":\"packplanner/job\",\"version\":1,\"state\":{}", "job-not-json")]
    [InlineData("{\"a\":1,\"a\":2}", "job-not-json")]
    [InlineData("[]", "not-a-job")]
    [InlineData("{\"schema\":\"packplanner/match\",\"version\":1}", "not-a-job")]
    [InlineData("{\"schema\":\"packplanner/job\",\"version\":1}", "not-a-job")]
    [InlineData("{\"schema\":\"packplanner/job\",\"version\":2,\"state\":{}}", "job-too-new")]
    [InlineData("{\"schema\":\"packplanner/job\",\"version\":1,\"state\":{\"tables\":[\"s1\"]}}", "bad-field")]
    [InlineData("{\"schema\":\"packplanner/job\",\"version\":1,\"state\":{\"verdicts\":{\"T1\":{\"verdict\":\"7\"}}}}", "bad-field")]
    [InlineData("{\"schema\":\"packplanner/job\",\"version\":1,\"state\":{},\"history\":{\"done\":[{\"name\":\"x\"}]}}", "bad-field")]
    [InlineData("{\"schema\":\"packplanner/job\",\"version\":1,\"state\":{},\"sources\":{\"s1\":{\"kind\":\"pack-log\",\"log\":{\"rows\":3,\"timeS\":\"d3:AAAA\"}}}}", "bad-field")]
    public void A_file_that_is_no_job_is_refused_and_left_alone(string text, string code)
    {
        using Folder folder = new();
        File.WriteAllText(folder.File("x.job.json"), text);

        Assert.Equal(code, Code(JobFile.Open(folder.File("x.job.json"))));
        Assert.Equal(text, File.ReadAllText(folder.File("x.job.json")));
    }

    // Cutting the file anywhere, as a full disk or a bad copy does, is noticed and never taken for a smaller job.
    [Fact]
    public void A_file_cut_anywhere_is_refused()
    {
        using Folder folder = new();
        byte[] whole = JobText.Write(Jobs.Full(), UnknownFields.None);
        for (int length = 0; length < whole.Length - 2; length += 97)
        {
            File.WriteAllBytes(folder.File("cut.job.json"), whole[..length]);
            Assert.Equal("job-not-json", Code(JobFile.Open(folder.File("cut.job.json"))));
        }
    }

    // Version 1 as first written: however the program changes, this file must go on opening.
    [Fact]
    public void A_job_of_version_1_still_opens()
    {
        string file = Repository.Data("jobs", "version-1.job.json");
        JobHistory read = Value(JobFile.Open(file)).History;

        Assert.True(JsonNode.DeepEquals(JobParts.Write(Jobs.Full().Now with { Favour = GroupsFavour.EqualAh }), JobParts.Write(read.Now)));
        Assert.Equal(19, read.Done.Count);
        Assert.Equal("set cells in parallel", read.RedoName);
    }

    [Fact]
    public void Half_a_thousand_changes_add_little_to_the_file()
    {
        JobHistory few = Jobs.Full();
        JobHistory many = few;
        for (int i = 0; i < 500; i++)
            many = many.Do(JobChanges.Edit(new CellKey("T042", 1, CellField.LaterRestV), new CellEdit(new JobValue.Number(3 + (i / 1000.0)), Jobs.You)));

        int grown = JobText.Write(many, UnknownFields.None).Length - JobText.Write(few, UnknownFields.None).Length;

        Assert.InRange(grown, 500 * 50, 500 * 260);
        Assert.True(JobText.Read("x", JobText.Write(many, UnknownFields.None)).Is(out var read, out _));
        Assert.Equal(many.Done.Count, read.History.Done.Count);
    }

    // By the demo's own floor: a regular nest takes six in parallel, cells that lie freely take seven.
    [Fact]
    public void A_pack_that_no_regular_nest_takes_is_looked_for_freely()
    {
        Job job = Assert.IsType<Outcome<JobHistory>.Given>(PackPlanner.Formats.Demos.DemoJobs.Of("scooter")).Value.Now;
        Outcome<PackPlanner.Core.Fitting.FitAnswer> found = JobFit.Find(
            job with { Givens = job.Givens.With("parallel", new Given(new JobValue.Number(7), Origin.You(new DateOnly(2026, 11, 2)))) }, TestContext.Current.CancellationToken);

        PackPlanner.Core.Fitting.FitAnswer answer = Assert.IsType<Outcome<PackPlanner.Core.Fitting.FitAnswer>.Given>(found).Value;
        Assert.True(answer.Fits);
        Assert.Equal(7, answer.Parallel);
    }
}
