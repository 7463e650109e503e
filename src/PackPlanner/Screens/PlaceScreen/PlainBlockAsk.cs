using PackPlanner.Core.Jobs;
using PackPlanner.Screens.CavityScreen;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>Asks what a plain block needs where no space is described: the size of a cell.</summary>
internal static class PlainBlockAsk
{
    private static readonly string[] Sizes = ["cellDiameterMm", "cellLengthMm", "cellThicknessMm", "cellHeightMm"];

    internal static KeyAction Key(Desk desk) => new(
        KeyBook.Add, "size of a cell", "asks the size of a cell in mm; the groups then stand side by side in a plain block",
        JobCommands.InJob(desk, KeyBook.Add, () => Ask(desk)));

    private static void Ask(Desk desk) => desk.Show(new FieldOverlay(
        desk, "one cell, mm", "Round: diameter x length, such as 21.2 x 70.2. Flat: length x thickness x height.", "",
        text => TypedCase.Sizes(text, [2, 3], out double[] mm) ?? (mm.Contains(0) ? "A cell has no side of 0 mm." : null),
        text =>
        {
            TypedCase.Sizes(text, [2, 3], out double[] mm);
            (string Key, double Mm)[] known = mm.Length == 2
                ? [("cellDiameterMm", mm[0]), ("cellLengthMm", mm[1])]
                : [("cellLengthMm", mm[0]), ("cellThicknessMm", mm[1]), ("cellHeightMm", mm[2])];
            Origin you = Origin.You(desk.Today);
            desk.Do(new JobChange("say the size of a cell", job => job with
            {
                Givens = Sizes.Aggregate(job.Givens, (givens, key) => givens.With(
                    key, known.Any(size => size.Key == key) ? new Given(new JobValue.Number(known.First(size => size.Key == key).Mm), you) : null)),
            }));
        }));
}
