using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Outside;

/// <summary>
/// The same networks solved by a general circuit simulator. Netlists and printed values stand in Data/ngspice;
/// rerun.sh there runs them again where it is installed. Source: [Ngspice39].
/// </summary>
public class CircuitSimulatorTests
{
    [Theory]
    [InlineData("same-end")]
    [InlineData("opposite-ends")]
    [InlineData("bad-weld")]
    [InlineData("no-load")]
    [InlineData("charging")]
    [InlineData("prismatic")]
    [InlineData("hundred-cells")]
    public void A_network_divides_its_load_as_the_simulator_says(string name)
    {
        (ParallelCells group, double loadA) = Netlist(name);
        Dictionary<string, double> printed = Printed(name);

        GroupShare share = CurrentSharing.AtFirstInstant(group, loadA);

        Assert.Equal(printed["terminal"], share.TerminalV, tolerance: 1e-9);
        for (int i = 0; i < group.Cells.Count; i++)
            Assert.Equal(printed[$"-i(vs{i + 1})"], share.CurrentA[i], tolerance: 1e-8 * Math.Max(1, Math.Abs(loadA)));
    }

    [Fact]
    public void Three_cells_discharge_in_parallel_as_in_a_transient_of_the_simulator()
    {
        double[] fraction = [.. Enumerable.Range(0, 401).Select(i => i / 400.0)];
        OpenCircuitCurve cubic = new(
            fraction, [.. fraction.Select(z => 3.0 + 1.6 * z - 1.2 * z * z + 0.8 * z * z * z)], Standing.Assumed, "by hand");
        CellBranch[] cells = [new("1", 4.2, 40, 2.5), new("2", 4.2, 30, 2.0), new("3", 4.2, 35, 2.2)];
        SharedCells state = new(ParallelCells.Alike(1, cells, linkMilliohm: 1, positiveAt: 1, negativeAt: 1), cubic);
        Dictionary<string, double> printed = Printed("discharge");

        for (int second = 0; second <= 3900; second += 10)
        {
            if (printed.TryGetValue($"term_{second}", out double terminalV))
            {
                GroupShare share = state.Share(6);
                Assert.Equal(terminalV, share.TerminalV, tolerance: 5e-5);
                for (int i = 0; i < 3; i++)
                    Assert.Equal(-printed[$"cell{i + 1}_{second}"], share.CurrentA[i], tolerance: 1e-3);
            }

            state.Step(10 / 3600.0, 6);
        }
    }

    // Reads back what was given to the simulator: sources Vs, cells Rc, bars Rp and Rn (a link of 0 ohm is a 0 V source), the load.
    private static (ParallelCells Group, double LoadA) Netlist(string name)
    {
        List<double> volts = [];
        List<double> milliohm = [];
        List<double> positive = [];
        List<double> negative = [];
        int positiveAt = 0;
        int negativeAt = 0;
        double loadA = 0;
        foreach (string line in File.ReadLines(Repository.Data("ngspice", name + ".cir")).TakeWhile(line => line != ".control"))
        {
            string[] words = line.Split(' ');
            double value = words.Length > 3 ? Number(words[^1]) : 0;
            switch (words[0][..Math.Min(2, words[0].Length)])
            {
                case "Vs": volts.Add(value); break;
                case "Rc": milliohm.Add(value * 1000); break;
                case "Rp" or "Vp": positive.Add(value * 1000); break;
                case "Rn" or "Vn": negative.Add(value * 1000); break;
                case "Il":
                    positiveAt = int.Parse(words[1][1..], CultureInfo.InvariantCulture);
                    negativeAt = int.Parse(words[2][1..], CultureInfo.InvariantCulture);
                    loadA = value;
                    break;
            }
        }

        CellBranch[] cells = [.. volts.Select((v, i) => new CellBranch($"{i + 1}", v, milliohm[i]))];
        return (new ParallelCells(1, cells, positive, negative, positiveAt, negativeAt), loadA);
    }

    private static Dictionary<string, double> Printed(string name) =>
        File.ReadLines(Repository.Data("ngspice", name + ".txt")).Skip(1)
            .Select(line => line.Split(' '))
            .ToDictionary(words => words[0], words => Number(words[1]));

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : 0;
}
