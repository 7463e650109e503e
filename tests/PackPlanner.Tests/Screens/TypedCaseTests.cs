using PackPlanner.Screens.CavityScreen;

namespace PackPlanner.Tests.Screens;

/// <summary>Lengths of a space as people type them.</summary>
public class TypedCaseTests
{
    [Theory]
    [InlineData("310 x 190 x 95", 310, 190, 95)]
    [InlineData("12.2 x 7.5 x 3.75 in", 309.88, 190.5, 95.25)]
    [InlineData("310mm*190mm*95mm", 310, 190, 95)]
    [InlineData("310,5 190 95", 310.5, 190, 95)]
    public void Lengths_are_read_as_people_type_them(string typed, double length, double width, double height)
    {
        Assert.Null(TypedCase.Sizes(typed, [3], out double[] mm));
        Assert.Equal([length, width, height], mm);
    }

    [Theory]
    [InlineData("310 x 190", "3 figures")]
    [InlineData("310 x -190 x 95", "below zero")]
    [InlineData("310 x NaN x 95", "not a length")]
    [InlineData("wide", "not a length")]
    public void Lengths_that_make_no_sense_are_refused(string typed, string why) => Assert.Contains(why, TypedCase.Sizes(typed, [3], out _));
}
