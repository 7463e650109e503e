using CsCheck;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

/// <summary>What holds or rejects a cell of a lot for safety, whatever its capacity.</summary>
public class LotSafetyTests
{
    private static readonly ScreeningRequest Rated5 = new() { RatedAh = 5, Chemistry = Chemistries.NickelManganeseCobalt };

    private static ScreenedCell Judge(CellRow cell, ScreeningRequest? request = null) =>
        LotScreening.Judge([.. Lots.Ten, cell], request ?? Rated5).Cells.Single(judged => judged.Label == cell.Label);

    private static string[] Codes(ScreenedCell cell) => [.. cell.Reasons.Select(reason => reason.Code)];

    [Theory]
    [InlineData(1.90, Verdict.Reject, "caution-01", SignalWord.Warning)]
    [InlineData(2.30, Verdict.Hold, "caution-01", SignalWord.Caution)]
    [InlineData(-0.2, Verdict.Reject, "caution-02", SignalWord.Danger)]
    [InlineData(4.27, Verdict.Hold, "caution-03", SignalWord.Warning)]
    [InlineData(4.40, Verdict.Reject, "caution-03", SignalWord.Warning)]
    public void Resting_volts_beyond_a_safety_limit_raise_their_caution(double volts, Verdict expected, string code, SignalWord signal)
    {
        ScreenedLot lot = LotScreening.Judge([.. Lots.Ten, Lots.Cell("X", 4.6, restV: volts)], Rated5);

        Assert.Equal(expected, lot.Cells[^1].Verdict);
        Assert.True(lot.Cells[^1].HeldForSafety);
        Assert.Contains(lot.Cautions, caution => caution.Code == code && caution.Signal == signal && caution.Where == "cell X");
    }

    [Fact]
    public void An_LTO_cell_at_1_8_volts_is_healthy_and_at_1_4_is_not()
    {
        ScreeningRequest lto = new() { Chemistry = Chemistries.Find("LTO") };
        CellRow[] lot = [.. Lots.Ten.Select(cell => cell with { RestV = 1.8 }), Lots.Cell("X", 4.6, restV: 1.4)];

        ScreenedLot judged = LotScreening.Judge(lot, lto);

        Assert.Equal(10, judged.Count(Verdict.Use));
        Assert.Equal(ReasonCodes.DeepDischarge, judged.Cells[^1].Reasons[0].Code);
    }

    [Fact]
    public void A_lot_that_rests_too_high_for_LTO_is_judged_as_graphite_when_nobody_names_the_chemistry()
    {
        ScreenedLot lot = LotScreening.Judge([.. Lots.Ten, Lots.Cell("X", 4.6, restV: 1.8)], new ScreeningRequest { RatedAh = 5 });

        Assert.True(lot.GraphiteByVolts);
        Assert.Equal(Verdict.Reject, lot.Cells[^1].Verdict);
    }

    [Fact]
    public void A_cell_that_was_once_deeply_discharged_stays_rejected_when_it_reads_normal()
    {
        CellRow then = Lots.Cell("X", null, restV: 1.2) with { Date = new DateTime(2026, 3, 1) };
        CellRow now = Lots.Cell("X", 4.6, restV: 3.6) with { Date = new DateTime(2026, 3, 9) };

        ScreenedLot lot = LotScreening.Judge([.. Lots.Ten, then, now], Rated5);

        Assert.Equal(Verdict.Reject, lot.Cells[^1].Verdict);
        Assert.Contains(lot.Cautions, caution => caution.Code == "caution-04");
    }

    [Theory]
    [InlineData("Swollen", true)]
    [InlineData("leicht aufgebläht", true)]
    [InlineData("rouillé", true)]
    [InlineData("no dents", false)]
    [InlineData("OK", false)]
    public void Noted_damage_rejects(string noted, bool rejects)
    {
        ScreenedCell judged = Judge(Lots.Cell("X", 4.6) with { Condition = noted });

        Assert.Equal(rejects ? Verdict.Reject : Verdict.Use, judged.Verdict);
        Assert.Equal(rejects, Codes(judged).Contains(ReasonCodes.Damaged));
    }

    [Fact]
    public void Two_chemistries_raise_caution_6_and_the_fewer_are_held()
    {
        CellRow[] mixed = [.. Lots.Ten.Select(cell => cell with { Chemistry = "NMC" }), Lots.Cell("X", 4.6, restV: 3.3) with { Chemistry = "LFP" }];

        ScreenedLot lot = LotScreening.Judge(mixed, new ScreeningRequest { RatedAh = 5 });

        Assert.Equal(["LFP", "NMC"], lot.Chemistries);
        Assert.Contains(lot.Cautions, caution => caution is { Code: "caution-06", Signal: SignalWord.Danger });
        Assert.Equal(Verdict.Hold, lot.Cells[^1].Verdict);
    }

    [Fact]
    public void A_verdict_by_hand_stands_but_never_lifts_a_safety_reason()
    {
        ScreeningRequest byHand = Rated5 with
        {
            ByHand = new Dictionary<string, HandVerdict>
            {
                ["weak"] = new(Verdict.Use, "for the lamp"),
                ["deep"] = new(Verdict.Use, "looks fine"),
            },
        };

        ScreenedLot lot = LotScreening.Judge([.. Lots.Ten, Lots.Cell("weak", 3.0), Lots.Cell("deep", 4.6, restV: 1.0)], byHand);

        Assert.Equal(Verdict.Use, lot.Cells.Single(cell => cell.Label == "weak").Verdict);
        Assert.Equal(Verdict.Reject, lot.Cells.Single(cell => cell.Label == "deep").Verdict);
    }

    [Fact]
    public void Judged_by_safety_only_a_weak_cell_passes_and_a_damaged_one_does_not()
    {
        ScreeningRequest all = Rated5 with { OnlySafety = true };

        Assert.Equal(Verdict.Use, Judge(Lots.Cell("X", 2.0, 200), all).Verdict);
        Assert.Equal(Verdict.Reject, Judge(Lots.Cell("X", 4.6) with { Condition = "dented" }, all).Verdict);
        Assert.Contains(LotScreening.Judge([.. Lots.Ten, Lots.Cell("X", 4.6) with { Condition = "dented" }], all).Cautions, caution => caution is { Code: "caution-05", Where: "cell X" });
        Assert.Equal(Verdict.Hold, Judge(Lots.Cell("X", null), all).Verdict);
    }
}
