using PackPlanner.Screens.Overlays;

namespace PackPlanner.Tests.Screens;

/// <summary>What a page says beyond the edge of the screen goes on below.</summary>
public class PageOverlayTests
{
    [Fact]
    public void A_sentence_goes_on_in_the_next_row_and_a_last_column_under_itself()
    {
        Assert.Equal(["Number: the group.", "Sign: the end that", "faces you."], PageOverlay.Within("Number: the group. Sign: the end that faces you.", 18));
        Assert.Equal(["T001  0.001 under", "      4.00 Ah"], PageOverlay.Within("T001  0.001 under 4.00 Ah", 18));
        Assert.Equal(["T001  3.999"], PageOverlay.Within("T001  3.999", 18));
    }

    [Fact]
    public void Many_columns_without_room_for_the_last_are_cut_with_a_mark()
    {
        string row = Assert.Single(PageOverlay.Within("T001  3.999  31.2  3.61 hold and repeat", 18));

        Assert.EndsWith("…", row);
        Assert.True(row.Length <= 18);
    }
}
