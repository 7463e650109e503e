using CsCheck;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Formats.JobFiles;

public class PackedColumnTests
{
    [Fact]
    public void A_column_of_logger_decimals_takes_a_byte_or_two_a_row()
    {
        double[] volts = [.. Enumerable.Range(0, 5000).Select(i => (3341 - (i / 40) + (i * i * 7919 % 101 % 5)) / 1000.0)];

        string packed = PackedColumn.Pack(volts);

        Assert.StartsWith("d3:", packed, StringComparison.Ordinal);
        Assert.InRange(packed.Length, 100, 2 * volts.Length);
        Assert.Equal(volts, PackedColumn.Unpack(packed, volts.Length));
    }

    [Fact]
    public void Every_figure_comes_back_bit_for_bit()
    {
        Gen<double> any = Gen.Frequency((4, Gen.Double[-1e6, 1e6]), (4, Gen.Int[-100000, 100000].Select(i => i / 1000.0)), (1, Gen.Const(double.NaN)),
            (1, Gen.Const(-0.0)), (1, Gen.Const(double.MaxValue)), (1, Gen.Const(double.Epsilon)), (1, Gen.Const(double.PositiveInfinity)));
        any.Array[0, 60].Sample(column =>
        {
            double[] back = PackedColumn.Unpack(PackedColumn.Pack(column), column.Length)!;
            return column.Zip(back).All(pair => BitConverter.DoubleToInt64Bits(pair.First) == BitConverter.DoubleToInt64Bits(pair.Second)
                || (double.IsNaN(pair.First) && double.IsNaN(pair.Second)));
        }, seed: "0000KNxWiV5f", iter: 500);
    }

    [Theory]
    [InlineData("")]
    [InlineData("d3")]
    [InlineData("d3:")]
    [InlineData("x:AAAA")]
    [InlineData("r:####")]
    [InlineData("d3:AAAA")]
    public void A_damaged_column_is_noticed(string text) => Assert.Null(PackedColumn.Unpack(text, 3));

    [Fact]
    public void A_column_of_another_length_is_noticed()
    {
        Assert.Null(PackedColumn.Unpack(PackedColumn.Pack([1, 2, 3]), 2));
        Assert.Null(PackedColumn.Unpack(PackedColumn.Pack([1, 2, 3]), 4));
        Assert.Null(PackedColumn.Unpack(PackedColumn.Pack([1.0 / 3]), 2));
    }
}
