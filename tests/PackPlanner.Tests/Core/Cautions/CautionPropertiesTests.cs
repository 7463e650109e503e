using CsCheck;
using PackPlanner.Core.Cautions;

namespace PackPlanner.Tests.Core.Cautions;

public class CautionPropertiesTests
{
    // A hold on group 1 must never fall on group 12, nor be missed because the words go on.
    [Fact]
    public void A_caution_names_its_own_group_and_no_other()
    {
        Gen.Select(Gen.Int[1, 200], Gen.Int[1, 200], Gen.OneOf(Gen.Const("group"), Gen.Const("cell")), Gen.OneOf(Gen.Const(""), Gen.Const(", at 3.65 V"), Gen.Const(" (tap 7)")))
            .Sample((named, asked, word, more) => Assert.Equal(named == asked, SafetyHolds.Names($"{word} {named}{more}", asked)), seed: "0000KIcCwDG2", iter: 3000);
    }

    [Fact]
    public void Each_caution_of_a_hold_is_in_the_catalogue_and_no_word_beside_the_codes_is_one()
    {
        Assert.Equal(6, CautionCatalogue.All.Count(entry => SafetyHolds.Include(entry.Code)));
        Assert.False(SafetyHolds.Include(null));
        Gen.String.Where(text => CautionCatalogue.All.All(entry => entry.Code != text))
            .Sample(text => Assert.False(SafetyHolds.Include(text)), seed: "0000KIcCwDG2", iter: 500);
    }

    [Fact]
    public void Gravest_first_then_by_code_then_group_2_before_group_10_whatever_order_they_came_in()
    {
        Caution[] ordered =
        [
            new("caution-09", SignalWord.Danger, "group 12", "a"),
            new("caution-07", SignalWord.Warning, "group 2", "b"),
            new("caution-07", SignalWord.Warning, "group 10", "c"),
            new("caution-18", SignalWord.Warning, "group 1", "d"),
            new("caution-18", SignalWord.Warning, "group 2, cell T9", "e"),
            new("caution-18", SignalWord.Warning, "group 2, cell T11", "f"),
        ];

        Gen.Shuffle(ordered).Sample(shuffled => Assert.Equal(ordered, Caution.InOrder([.. shuffled, shuffled[0]])), iter: 100);
    }
}
