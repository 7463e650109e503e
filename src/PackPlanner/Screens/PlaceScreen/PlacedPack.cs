using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.CavityScreen;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The places of a cavity with the job's own groups and cells in them, by the same door as the sheets.</summary>
internal sealed class PlacedPack
{
    private readonly Dictionary<int, PlacedLabel> byPlace;
    private readonly Dictionary<string, ScreenedCell> cells;
    private readonly IReadOnlyList<JobGroup> inSeries;

    internal PlacedPack(FitAnswer answer, IReadOnlyList<JobGroup> groups, JobPlacement placement, JobGivens givens, double? nominalV)
    {
        Answer = answer;
        LeftOut = placement.LeftOutWithin(answer.Series ?? 0);
        Layers = FloorDrawing.Layers(answer);
        inSeries = groups.Count == answer.Series ? JobPlaces.InSeries(groups, placement) : [];
        byPlace = JobPlaces.Of(answer, inSeries.Count > 0 ? groups : [], placement).ToDictionary(place => place.Place.Cell);
        cells = inSeries.SelectMany(group => group.Cells).ToDictionary(cell => cell.Label, StringComparer.Ordinal);
        ExpectedV = [.. TapCheck.Expected([.. Enumerable.Range(1, Series).Select(seat => TapCheck.Group(GroupOf(seat)?.RestV ?? nominalV, null, null))]).Select(span => span.LowV)];
        Spans = TapCheck.Expected([.. Enumerable.Range(1, Series).Select(seat => TapCheck.Group(GroupOf(seat)?.RestV, givens.EmptyV, givens.FullV))]);
        Dictionary<int, bool?> up = byPlace.Values.Where(place => place.Position is not null).GroupBy(place => place.Position!.Value).ToDictionary(seat => seat.Key, seat => seat.First().PlusUp);
        Across = [.. Enumerable.Range(1, Math.Max(0, Series - 1)).Where(link => up.GetValueOrDefault(link) is { } plusUp && plusUp == up.GetValueOrDefault(link + 1))];
        IsNominal = Enumerable.Range(1, Series).All(seat => GroupOf(seat)?.RestV is null);
    }

    internal FitAnswer Answer { get; }

    /// <summary>What of the user's changes these groups do not allow; null where all apply.</summary>
    internal string? LeftOut { get; }

    internal bool HasGroups => inSeries.Count > 0;

    internal IReadOnlyList<IReadOnlyList<PlacedCell>> Layers { get; }

    internal int Series => Answer.Series ?? 0;

    /// <summary>Volts from pack minus at each tap; NaN where a group's are unknown.</summary>
    internal double[] ExpectedV { get; }

    /// <summary>Volts between which the reading at each tap must lie: a group without resting volts may stand anywhere from empty to full.</summary>
    internal VoltSpan[] Spans { get; }

    /// <summary>True where no group has resting volts, so that nominal ones stand in.</summary>
    internal bool IsNominal { get; }

    /// <summary>Links, from 1, whose plus lies on one side and whose minus on the other, because one of their groups was turned over.</summary>
    internal IReadOnlyList<int> Across { get; }

    /// <summary>Place in series of a cell, counted from pack minus; null for a spare place.</summary>
    internal int? SeatOf(PlacedCell cell) => byPlace[cell.Cell].Position;

    /// <summary>Whether plus looks up; null for a spare place and where one face holds both poles.</summary>
    internal bool? IsPlusUp(PlacedCell cell) => byPlace[cell.Cell].PlusUp;

    internal string? PlusToward(PlacedCell cell) => byPlace[cell.Cell].PlusToward;

    /// <summary>The groups from pack minus on; empty while there are none.</summary>
    internal IReadOnlyList<JobGroup> InSeries => inSeries;

    /// <summary>The matched group at a place in series; null while there are no groups.</summary>
    internal JobGroup? GroupOf(int seat) => seat >= 1 && seat <= inSeries.Count ? inSeries[seat - 1] : null;

    /// <summary>The cell that goes here; null while groups are not known.</summary>
    internal ScreenedCell? CellAt(PlacedCell place) => byPlace[place.Cell].Label is { } label ? cells[label] : null;
}
