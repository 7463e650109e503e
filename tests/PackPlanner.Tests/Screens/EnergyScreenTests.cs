using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>Step 6: draws of the readings, what matters most, the charger.</summary>
public sealed class EnergyScreenTests : IDisposable
{
    private const int Energy = 5;

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Ten_thousand_draws_stand_below_the_figure_and_go_when_a_number_changes()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(10));
        bench.Desk.GoTo(Energy);

        bench.Press("h");

        Assert.Contains("10000 draws ", bench.Text(), StringComparison.Ordinal);
        Assert.Contains("nine in ten", bench.Text(), StringComparison.Ordinal);
        bench.Set("steadyA", new JobValue.Number(11));
        Assert.DoesNotContain("draws ", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void Miles_come_with_the_use_of_a_mile_and_nothing_that_was_stored_changes()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(10));
        bench.Set("whPerKm", new JobValue.Number(10));
        bench.Desk.GoTo(Energy);
        Assert.Contains("km at 10 Wh/km", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        Job before = bench.Desk.Job!;

        bench.Desk.Look = new Look(UsUnits: true, DecimalComma: true);

        Assert.Contains("miles at 16 Wh/mile", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        Assert.Contains("miles at 16 Wh/mile", bench.Text(), StringComparison.Ordinal);
        Assert.Same(before, bench.Desk.Job);
    }

    // As the words say it: amperes squared times milliohm, times the factor of the cold.
    [Fact]
    public void Heat_in_the_cells_can_be_done_again_by_hand()
    {
        bench.Desk.Store.Demo("trike");
        bench.Desk.GoTo(Energy);
        while (!bench.Text(120, 36).Contains("> heat in cells, riding", StringComparison.Ordinal))
            bench.Press("Down");

        bench.Press("=");

        string text = string.Join(' ', bench.Text(120, 36).Split('\n').Select(line => line.Trim()));
        Match told = Regex.Match(text, @"([\d.]+) W \(heat in cells, riding\).*reckoned +([\d.]+) A squared x ([\d.]+) mΩ.* x ([\d.]+) at 8 °C");
        Assert.True(told.Success, text);
        double[] figures = [.. told.Groups.Values.Skip(1).Select(group => double.Parse(group.Value, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(figures[0], figures[1] * figures[1] * figures[2] / 1000 * figures[3], figures[0] * 0.005);
    }

    [Fact]
    public void At_rest_says_what_is_taken_off_and_what_is_not()
    {
        bench.OpenLot();
        bench.Set("temperatureDegC", new JobValue.Number(8));
        bench.Set("reserve", new JobValue.Number(0.1));
        bench.Set("controllerLowV", new JobValue.Number(13));
        bench.Desk.GoTo(Energy);
        Assert.Contains("at rest less cold, controller and reserve (no load said)", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);

        bench.Set("steadyA", new JobValue.Number(10));

        Assert.Contains("at rest, before cold, controller and reserve.", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        bench.Set("temperatureDegC", null);
        bench.Set("reserve", null);
        bench.Set("controllerLowV", null);
        Assert.Contains("kWh at rest. ", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_that_nobody_means_is_answered_in_one_unit_and_in_whole_figures()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(99999));
        bench.Desk.GoTo(Energy);

        Assert.StartsWith("0 Wh at 99999 A", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        string text = bench.Text(120, 60);
        Assert.Matches(@"heat in cells, riding .* \d+ MW", text);
        Assert.DoesNotContain('…', string.Join('\n', text.Split('\n').Where(line => line.Contains("heat", StringComparison.Ordinal))));
    }

    [Fact]
    public void What_a_change_is_called_is_never_cut()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(10));
        bench.Desk.GoTo(Energy);

        Assert.Matches(@"resistance of every group 10 % +[+-]?\d+ Wh", bench.Text(120, 36));
        Assert.Matches(@"│ lower *\n", bench.Text(120, 36));
        bench.Press("r");
        Assert.Matches(@"Wh +balance all to full", bench.Text(120, 36));
        Assert.Matches(@"Wh +resistance of every group 10 % lower", bench.Text());
    }

    [Fact]
    public void Cautions_that_all_groups_raise_alike_are_one_line_which_Enter_opens()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(10));
        bench.Set("cellDischargeA", new JobValue.Number(2));
        bench.Desk.GoTo(Energy);
        int revision = bench.Desk.Open!.History.Revision;

        Assert.Contains("! WARNING 2  pack: not stated", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("!");
        string list = bench.Text(120, 36);
        while (!list.Contains("> WARNING  4 groups", StringComparison.Ordinal))
        {
            bench.Press("Down");
            list = bench.Text(120, 36);
        }

        Assert.Matches(@"> WARNING  4 groups: its hardest-worked cell carries [\d.]+ to [\d.]+ A; its aged rating is", list);
        Assert.DoesNotContain("group 2", list, StringComparison.Ordinal);
        bench.Press(" ");
        Assert.Contains("(read) 4 groups", bench.Text(120, 36), StringComparison.Ordinal);
        Assert.Equal(4, bench.Desk.Job!.CautionsRead.Count);
        Assert.Equal(revision, bench.Desk.Open.History.Revision);
        bench.Press("Enter");
        Assert.Matches(@"group 2 +its hardest-worked cell carries [\d.]+ A", bench.Text(120, 36));
    }

    [Fact]
    public void Nothing_that_has_no_room_beside_its_figure_is_cut()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(10));
        bench.Desk.GoTo(Energy);

        string text = bench.Text(120, 60);

        Assert.Contains("resistance is known", text, StringComparison.Ordinal);
        Assert.DoesNotContain('…', string.Join('\n', text.Split('\n').Select(line => line.Split('│')[0])));
    }

    [Fact]
    public void Draws_tell_how_far_they_are_and_Esc_keeps_those_that_were_done()
    {
        List<string> shown = [];
        bench.OpenLot();
        Desk desk = bench.SlowDesk(Energy, desk =>
        {
            if (!desk.IsWorking)
                return;
            shown.Add(desk.Draw(80, 24).ToText());
            desk.Press("Esc");
        });

        desk.Press("h");

        Assert.Contains("100 of 10000", Assert.Single(shown), StringComparison.Ordinal);
        Assert.Contains("100 draws, stopped", desk.Draw(80, 24).ToText(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_matters_most_stands_beside_the_remedies_on_a_narrow_screen_too()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(10));
        bench.Desk.GoTo(Energy);

        bench.Press("r");

        string text = bench.Text();
        Assert.Contains("what matters most", text, StringComparison.Ordinal);
        Assert.Contains("load 10 % lower", text, StringComparison.Ordinal);
        Assert.Contains("resistance of every group 10 % lower", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_charger_is_set_to_the_volts_of_all_groups_and_what_the_cold_allows()
    {
        bench.OpenLot();
        bench.Set("chargerA", new JobValue.Number(2));
        bench.Set("chargeTemperatureDegC", new JobValue.Number(3));
        bench.Desk.GoTo(Energy);
        bench.Press("End");

        // 4 groups of 4.2 V; at 3 °C a tenth of the smallest group's ampere-hours for each hour; 2 A into about 9 Ah and half an hour.
        string text = bench.Text(120, 30);
        Assert.Matches(@"charger set to +4 x 4\.20 V +16\.8 V", text);
        Assert.Matches(@"charging current +ABOVE 0\.\d A at 3 °C +2\.0 A", text);
        Assert.Matches(@"charge ends below .* 0\.1\d A", text);
        Assert.Matches(@"hours from empty .* \d\.\d h", text);
    }
}
