using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.CavityScreen;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The places of a cavity with the job's own groups and cells in them.</summary>
internal sealed class PlacedPack
{
    private readonly Dictionary<int, ScreenedCell> byPlace = [];
    private readonly JobPlacement placement;

    internal PlacedPack(FitCase fitCase, FitAnswer answer, IReadOnlyList<JobGroup> groups, JobPlacement placement, double? nominalV)
    {
        Case = fitCase;
        Answer = answer;
        Groups = groups;
        this.placement = placement;
        Layers = FloorDrawing.Layers(answer);
        foreach (IGrouping<int, PlacedCell> group in answer.Cells.Where(cell => cell.Group is not null).GroupBy(cell => cell.Group!.Value))
            Seat([.. group.OrderByDescending(cell => cell.Centre.Y).ThenBy(cell => cell.Centre.X)]);
        ExpectedV = TapCheck.Expected([.. Enumerable.Range(1, Series).Select(seat => GroupOf(seat)?.RestV ?? nominalV ?? double.NaN)]);
        IsNominal = Enumerable.Range(1, Series).All(seat => GroupOf(seat)?.RestV is null);
    }

    internal FitCase Case { get; }

    internal FitAnswer Answer { get; }

    internal IReadOnlyList<JobGroup> Groups { get; }

    internal IReadOnlyList<IReadOnlyList<PlacedCell>> Layers { get; }

    internal int Series => Answer.Series ?? 0;

    /// <summary>Volts from pack minus at each tap; NaN where a group's are unknown.</summary>
    internal double[] ExpectedV { get; }

    /// <summary>True where no group has resting volts, so that nominal ones stand in.</summary>
    internal bool IsNominal { get; }

    /// <summary>Place in series of a cell, counted from pack minus; null for a spare place.</summary>
    internal int? SeatOf(PlacedCell cell) => cell.Group is { } group ? (placement.EndsSwapped ? Series + 1 - group : group) : null;

    /// <summary>Whether plus looks up; the other way round when the ends are swapped.</summary>
    internal bool? IsPlusUp(PlacedCell cell) => cell.Plus switch
    {
        "+z" => !placement.EndsSwapped,
        "-z" => placement.EndsSwapped,
        _ => null,
    };

    /// <summary>The matched group at a place in series.</summary>
    internal JobGroup? GroupOf(int seat)
    {
        int number = placement.Exchanged.GetValueOrDefault(seat, seat);
        return Groups.FirstOrDefault(group => group.Number == number);
    }

    /// <summary>The cell that goes here; null while groups are not known.</summary>
    internal ScreenedCell? CellAt(PlacedCell place) => byPlace.GetValueOrDefault(place.Cell);

    private void Seat(IReadOnlyList<PlacedCell> places)
    {
        if (SeatOf(places[0]) is not { } seat || GroupOf(seat) is not { } matched)
            return;
        for (int i = 0; i < places.Count && i < matched.Cells.Count; i++)
            byPlace[places[i].Cell] = matched.Cells[i];
    }
}
