using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>What is typed on the screens: fields, lists that narrow, decimal marks, and what leaves.</summary>
public class DeskTypingTests
{
    [Fact]
    public void Who_types_a_comma_is_told_where_the_decimal_mark_is_chosen()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("Down", "Enter");

        bench.Type(",5");
        bench.Press("Enter");

        Assert.Contains("(or : decimal mark)", bench.Desk.Says);
    }

    [Fact]
    public void A_digit_typed_into_a_list_of_choices_does_not_throw_the_choice_away()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("3", "e", "4");

        Assert.Equal(2, bench.Desk.At);
        Assert.NotNull(bench.Desk.Overlay);
        Assert.Contains("4 has no use here; Esc goes back", bench.Desk.Says);
    }

    [Fact]
    public void A_list_that_is_narrowed_by_typing_takes_digits_and_letters_itself()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Press(":", "3", "q");

        Assert.Equal(0, bench.Desk.At);
        Assert.False(bench.Desk.IsLeaving);
        Assert.Contains("nothing like this", bench.Text());
    }

    [Fact]
    public void A_value_stands_in_its_field_with_the_decimal_mark_that_is_shown_and_comes_back_the_same()
    {
        using Bench bench = new(new Look(DecimalComma: true));
        bench.OpenLot();
        bench.Set("linkMilliohm", new JobValue.Number(0.25));
        bench.Press("Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Enter");
        Assert.Contains("one series link", bench.Text());
        Assert.Contains("0,25", bench.Text());

        bench.Press("Enter");

        Assert.Equal(0.25, bench.Desk.Job!.Givens.NumberOf("linkMilliohm"));
    }

    [Fact]
    public void Escape_never_leaves_and_q_does()
    {
        using Bench bench = new();

        bench.Press("Esc", "Esc", "Esc");
        Assert.False(bench.Desk.IsLeaving);

        bench.Press("q");
        Assert.True(bench.Desk.IsLeaving);
    }

    [Fact]
    public void Letters_and_digits_type_while_a_field_is_open()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("Down", "Enter");

        bench.Type("q35");

        Assert.False(bench.Desk.IsLeaving);
        Assert.Equal(0, bench.Desk.At);
        Assert.Contains("q35", bench.Text());
    }

    [Fact]
    public void A_value_that_cannot_be_taken_is_refused_with_the_reason_and_the_old_one_stays()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("Down", "Enter", "End", "Backspace");
        bench.Type("seven");

        bench.Press("Enter");

        Assert.Contains("is not a number", bench.Text());
        Assert.Equal(5.0, bench.Desk.Job!.Givens.RatedAh);
    }
}
