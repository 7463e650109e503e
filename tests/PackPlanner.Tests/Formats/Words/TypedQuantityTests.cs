using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Tests.Formats.Words;

public class TypedQuantityTests
{
    [Theory]
    [InlineData("40A", 40)]
    [InlineData("1.5 kA", 1500)]
    [InlineData("500mA", 0.5)]
    [InlineData("2e1A", 20)]
    public void Currents_are_read_as_people_type_them(string typed, double amperes)
    {
        Assert.True(TypedQuantity.TryRead(typed, "a current", "40A", out ElectricCurrent current, out _));
        Assert.Equal(amperes, current.Amperes, 1e-9);
    }

    [Theory]
    [InlineData("40", "no unit")]
    [InlineData("1,5A", "a number and a unit")]
    [InlineData("NaNA", "a number and a unit")]
    [InlineData("40V", "not a current")]
    [InlineData("", "a number and a unit")]
    public void What_is_not_a_current_is_refused_with_the_reason(string typed, string reason)
    {
        Assert.False(TypedQuantity.TryRead(typed, "a current", "40A", out ElectricCurrent _, out string why));
        Assert.Contains(reason, why, StringComparison.Ordinal);
    }
}
