using System.Text.Json;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>
/// What a fit case says of its cell's chemistry and volts, told to the job that takes it in, so that nobody is asked twice. What the job knows
/// already stays, unless only the case before said it. The shape is a choice of the case's own and is left there.
/// </summary>
internal static class GivensOfCase
{
    internal static JobChange With(JobChange add, JsonInput fitCase) => new(add.Name, job => add.Apply(job with { Givens = Told(job, fitCase) }));

    private static JobGivens Told(Job job, JsonInput fitCase)
    {
        // Problems of the case are told where it is searched; what cannot be read here is not taken.
        if (fitCase.Raw("cell") is not { ValueKind: JsonValueKind.Object } said)
            return job.Givens;
        JsonInput cell = JsonInput.Of(fitCase.File, said);
        if (Chemistries.Find(cell.Text("chemistry")) is not { } chemistry)
            return job.Givens;
        Origin origin = new(Path.GetFileName(fitCase.File), Standing.Measured);
        // Volts belong to the cell they were said with.
        bool IsFree(string key) => job.Givens.Known.GetValueOrDefault(key) is not { } known || known.From.From == job.FitCase?.Source.File;
        if (!IsFree("chemistry") && job.Givens.Chemistry != chemistry)
            return job.Givens;
        JobGivens told = job.Givens;
        if (IsFree("chemistry"))
            told = told.With("chemistry", new Given(new JobValue.Word(chemistry.Name), origin));
        foreach ((string key, double usual) in new[] { ("fullV", chemistry.FullV), ("nominalV", chemistry.NominalV) })
        {
            if (IsFree(key))
                told = told.With(key, cell.Number(key) is { } volts && volts != usual && TypedGiven.OutOfRange(GivenKind.Volts, volts) is null ? new Given(new JobValue.Number(volts), origin) : null);
        }

        return told;
    }
}
