using System.Text;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Tests.Formats.JobFiles;

/// <summary>What 4 Cavity and 5 Place ask about clamping and vents is what their cautions go by.</summary>
public class TicksOfTheSpaceTests
{
    private const string Case = """
        { "cavity": { "parts": [ { "box": [0, 0, 0, 200, 200, 250] } ] },
          "cell": { "name": "LFP 105", "shape": "box", "lengthMm": 130, "thicknessMm": 36, "heightMm": 200, "massG": 3100, "chemistry": "LFP" },
          "clearance": { "wallMm": 2, "plateMm": 2, "spacerMm": 0, "terminalMm": 20 },
          "pack": { "series": 4, "parallel": 1, "linkReachMm": 5 } }
        """;

    [Theory]
    [InlineData(null, null, true, true)]
    [InlineData(true, null, false, true)]
    [InlineData(null, true, true, false)]
    [InlineData(true, true, false, false)]
    [InlineData(false, false, true, true)]
    public void A_tick_takes_the_caution_away(bool? clamping, bool? vents, bool swells, bool noWayOut)
    {
        JobHistory job = Assert.IsType<Outcome<AddedFiles>.Given>(JobAdding.Add(JobHistory.Of(new Job { Title = "flat" }), "case.json", Encoding.UTF8.GetBytes(Case))).Value.History;
        foreach ((string key, bool? tick) in new[] { ("clamping", clamping), ("vents", vents) })
            if (tick is { } known)
                job = job.Do(JobChanges.Set(key, new Given(new JobValue.YesNo(known), Origin.You(new DateOnly(2026, 11, 2)))));

        FitAnswer answer = Assert.IsType<Outcome<FitAnswer>.Given>(JobFit.Find(job.Now, CancellationToken.None)).Value;

        Assert.Equal((swells, noWayOut), (answer.Cautions.Any(caution => caution.Code == "caution-25"), answer.Cautions.Any(caution => caution.Code == "caution-26")));
    }

    // Spacers and plates of 2 mm are room to swell, so the layout alone has nothing to say; the job has.
    [Theory]
    [InlineData(null, SignalWord.Notice)]
    [InlineData(false, SignalWord.Caution)]
    [InlineData(true, null)]
    public void With_room_to_swell_a_clamp_that_nobody_speaks_of_is_not_checked_and_a_no_is_a_no(bool? clamping, SignalWord? signal)
    {
        JobHistory job = Assert.IsType<Outcome<AddedFiles>.Given>(JobAdding.Add(JobHistory.Of(new Job { Title = "flat" }), "case.json", Encoding.UTF8.GetBytes(Case.Replace("\"spacerMm\": 0", "\"spacerMm\": 2", StringComparison.Ordinal)))).Value.History;
        if (clamping is { } known)
            job = job.Do(JobChanges.Set("clamping", new Given(new JobValue.YesNo(known), Origin.You(new DateOnly(2026, 11, 2)))));

        Assert.True(JobSummary.Whole(job, CancellationToken.None).Is(out IReadOnlyList<Caution>? told, out _));

        Caution? swells = told.SingleOrDefault(caution => caution.Code == "caution-25");
        Assert.Equal(signal, swells?.Signal);
        Assert.Equal(clamping is null, swells?.Saw.StartsWith(Caution.NotChecked, StringComparison.Ordinal) == true);
        // Whoever builds by the paper sees it there.
        Assert.True(SheetInput.Of(job, default, CancellationToken.None).Is(out SheetInput? input, out _));
        Assert.Equal(signal is not null, string.Concat(SheetCatalogue.All.Single(sheet => sheet.Name == "place").Pages(input).SelectMany(page => page.Blocks).Select(block => block.Body)).Contains("no room to swell", StringComparison.Ordinal));
    }
}
