using System.Text;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Formats.JobFiles;

/// <summary>A job that takes in a fit case or a vehicle's need knows what they say of cell and controller, so that no step calls them unknown.</summary>
public class GivensOfDocumentTests
{
    [Fact]
    public void A_case_tells_the_job_its_cells_chemistry_and_volts_where_they_differ_from_the_usual_and_undo_forgets_them()
    {
        JobHistory job = Added(JobHistory.Of(new Job { Title = "space" }), "floor.json", "\"chemistry\": \"nmc\", \"fullV\": 4.15, \"nominalV\": 3.6");

        Assert.Equal(("NMC", "floor.json"), (job.Now.Givens.Chemistry?.Name, job.Now.Givens.Known["chemistry"].From.From));
        Assert.Equal(4.15, job.Now.Givens.FullV);
        Assert.False(job.Now.Givens.Known.ContainsKey("nominalV"));
        Assert.Empty(job.Undo().Now.Givens.Known);
    }

    [Fact]
    public void What_the_job_was_told_stays_and_volts_of_another_chemistry_are_not_taken()
    {
        JobHistory told = JobHistory.Of(new Job { Title = "space" }).Do(JobChanges.Set("chemistry", new Given(new JobValue.Word("LFP"), Origin.You(null))));

        JobGivens givens = Added(told, "floor.json", "\"chemistry\": \"NMC\", \"fullV\": 4.15").Now.Givens;

        Assert.Equal(("LFP", 3.65), (givens.Chemistry?.Name, givens.FullV));
    }

    [Fact]
    public void Another_case_takes_the_place_of_what_the_one_before_it_said_and_of_nothing_else()
    {
        JobHistory first = Added(JobHistory.Of(new Job { Title = "space" }), "one.json", "\"chemistry\": \"NMC\", \"fullV\": 4.15");

        JobGivens second = Added(first, "two.json", "\"chemistry\": \"LFP\"").Now.Givens;
        JobGivens silent = Added(first, "two.json", "\"massG\": 70").Now.Givens;

        Assert.Equal(("LFP", 3.65), (second.Chemistry?.Name, second.FullV));
        Assert.Equal(("NMC", 4.15), (silent.Chemistry?.Name, silent.FullV));
    }

    [Fact]
    public void A_need_tells_the_job_its_controller_and_what_a_km_takes_and_a_figure_out_of_range_is_not_taken()
    {
        JobHistory job = JobHistory.Of(new Job { Title = "scooter" }).Do(JobChanges.Set("whPerKm", new Given(new JobValue.Number(31), Origin.You(null))));

        JobGivens givens = Assert.IsType<Outcome<AddedFiles>.Given>(JobAdding.Add(job, "need.json", Encoding.UTF8.GetBytes(
            """{ "need": { "whPerKm": 28, "reserve": 10 }, "electrics": { "controllerMinV": 39, "controllerMaxV": 60 } }"""))).Value.History.Now.Givens;

        Assert.Equal((31, 39, 60), (givens.NumberOf("whPerKm"), givens.NumberOf("controllerLowV"), givens.NumberOf("controllerHighV")));
        Assert.Null(givens.NumberOf("reserve"));
    }

    private static JobHistory Added(JobHistory history, string name, string ofCell) => Assert.IsType<Outcome<AddedFiles>.Given>(JobAdding.Add(history, name, Encoding.UTF8.GetBytes(
        $$"""
        { "cavity": { "parts": [ { "box": [0, 0, 0, 100, 100, 80] } ] },
          "cell": { "name": "21700", "shape": "cylinder", "diameterMm": 21.4, "lengthMm": 70.6, {{ofCell}} } }
        """))).Value.History;
}
