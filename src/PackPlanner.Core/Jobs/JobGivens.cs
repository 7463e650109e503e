using System.Collections.Immutable;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Jobs;

/// <summary>What a job has been told. A key that is not there is unknown, and stays so until somebody says it.</summary>
public sealed record JobGivens
{
    /// <summary>Nothing known.</summary>
    public static JobGivens None { get; } = new();

    /// <summary>By key of <see cref="GivenCatalogue"/>.</summary>
    public ImmutableSortedDictionary<string, Given> Known { get; init; } =
        ImmutableSortedDictionary.Create<string, Given>(StringComparer.Ordinal);

    /// <summary>The chemistry, null when unknown.</summary>
    public Chemistry? Chemistry => Chemistries.Find(WordOf("chemistry"));

    /// <summary>Rated charge of one cell, ampere-hours.</summary>
    public double? RatedAh => NumberOf("ratedAh");

    /// <summary>Groups in series.</summary>
    public int? Series => CountOf("series");

    /// <summary>Cells in parallel.</summary>
    public int? Parallel => CountOf("parallel");

    /// <summary>Full volts of one cell: as given, else the chemistry's; null when neither is known.</summary>
    public double? FullV => NumberOf("fullV") ?? Chemistry?.FullV;

    /// <summary>Empty volts of one cell: as given, else the chemistry's; null when neither is known.</summary>
    public double? EmptyV => NumberOf("emptyV") ?? Chemistry?.CutoffV;

    /// <summary>Nominal volts of one cell: as given, else the chemistry's; null when neither is known.</summary>
    public double? NominalV => NumberOf("nominalV") ?? Chemistry?.NominalV;

    /// <summary>Steady load, amperes.</summary>
    public double? SteadyA => NumberOf("steadyA");

    /// <summary>Peak load, amperes.</summary>
    public double? PeakA => NumberOf("peakA");

    /// <summary>Resistance of one series link, milliohm.</summary>
    public double? LinkMilliohm => NumberOf("linkMilliohm");

    /// <summary>How well the user's tester repeats, as a fraction; null when he has not said.</summary>
    public double? RepeatabilityFraction => NumberOf("repeatability");

    /// <summary>A figure by its key.</summary>
    /// <param name="key">A key of <see cref="GivenCatalogue"/>.</param>
    /// <returns>The figure in the entry's unit; null when unknown.</returns>
    public double? NumberOf(string key) => Known.GetValueOrDefault(key)?.Value is JobValue.Number number ? number.Value : null;

    /// <summary>Words by their key.</summary>
    /// <param name="key">A key of <see cref="GivenCatalogue"/>.</param>
    /// <returns>The words; null when unknown.</returns>
    public string? WordOf(string key) => Known.GetValueOrDefault(key)?.Value is JobValue.Word word ? word.Value : null;

    /// <summary>A tick by its key.</summary>
    /// <param name="key">A key of <see cref="GivenCatalogue"/>.</param>
    /// <returns>Ticked or not; null when nobody said.</returns>
    public bool? TickOf(string key) => Known.GetValueOrDefault(key)?.Value is JobValue.YesNo tick ? tick.Value : null;

    /// <summary>The same givens with one more, or with one forgotten.</summary>
    /// <param name="key">A key of <see cref="GivenCatalogue"/>.</param>
    /// <param name="given">The value; null makes it unknown again.</param>
    /// <returns>The new givens.</returns>
    /// <exception cref="ArgumentException">The key is not in the catalogue.</exception>
    public JobGivens With(string key, Given? given)
    {
        string known = GivenCatalogue.Find(key)?.Key ?? throw new ArgumentException($"\"{key}\" is no given", nameof(key));
        return this with { Known = given is null ? Known.Remove(known) : Known.SetItem(known, given) };
    }

    private int? CountOf(string key) => NumberOf(key) is { } number ? (int)number : null;
}
