using System.Text.Json;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>
/// What a fit case says of its cell's chemistry and volts, and a vehicle's need of its controller and of Wh per km, told to the job that takes
/// it in, so that nobody is asked twice. What the job knows already stays, unless only the document before said it. The shape and what the
/// cells may weigh are choices of the case's own and are left there.
/// </summary>
internal static class GivensOfDocument
{
    // Part and field of a need, and the given that is the same figure in the same unit.
    private static readonly (string Part, string Field, string Key)[] OfANeed =
    [
        ("need", "whPerKm", "whPerKm"), ("need", "reserve", "reserve"), ("electrics", "controllerMinV", "controllerLowV"), ("electrics", "controllerMaxV", "controllerHighV"),
    ];

    internal static JobChange With(JobChange add, SourceKind kind, JsonInput document) => new(add.Name, job =>
    {
        string? before = (kind == SourceKind.FitCase ? job.FitCase : job.SizeNeed)?.Source.File;
        Known known = new(job.Givens, before, new Origin(Path.GetFileName(document.File), Standing.Measured));
        return add.Apply(job with { Givens = kind == SourceKind.FitCase ? OfCase(known, document) : OfNeed(known, document) });
    });

    private static JobGivens OfCase(Known known, JsonInput fitCase)
    {
        if (Part(fitCase, "cell") is not { } cell || Chemistries.Find(cell.Text("chemistry")) is not { } chemistry)
            return known.Givens;
        // Volts belong to the cell they were said with.
        if (!known.IsFree("chemistry") && known.Givens.Chemistry != chemistry)
            return known.Givens;
        JobGivens told = known.Tell(known.Givens, "chemistry", new JobValue.Word(chemistry.Name));
        foreach ((string key, double usual) in new[] { ("fullV", chemistry.FullV), ("nominalV", chemistry.NominalV) })
            told = known.Tell(told, key, cell.Number(key) is { } volts && volts != usual ? Number(key, volts) : null);
        return told;
    }

    private static JobGivens OfNeed(Known known, JsonInput need) => OfANeed.Aggregate(
        known.Givens, (told, one) => known.Tell(told, one.Key, Part(need, one.Part)?.Number(one.Field) is { } figure ? Number(one.Key, figure) : null));

    // A part read apart: its problems are told where the document is asked something, and what cannot be read here is not taken.
    private static JsonInput? Part(JsonInput document, string name) =>
        document.Raw(name) is { ValueKind: JsonValueKind.Object } said ? JsonInput.Of(document.File, said) : null;

    private static JobValue.Number? Number(string key, double figure) =>
        TypedGiven.OutOfRange(GivenCatalogue.Find(key)!.Kind, figure) is null ? new JobValue.Number(figure) : null;

    private sealed record Known(JobGivens Givens, string? Before, Origin Origin)
    {
        // Nobody said it, or only the document whose place is taken.
        internal bool IsFree(string key) => Givens.Known.GetValueOrDefault(key) is not { } given || given.From.From == Before;

        internal JobGivens Tell(JobGivens told, string key, JobValue? value) =>
            IsFree(key) ? told.With(key, value is null ? null : new Given(value, Origin)) : told;
    }
}
