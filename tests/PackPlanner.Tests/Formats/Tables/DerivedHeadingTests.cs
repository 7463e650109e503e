using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>Headings that hold the word of a reading and are none: taken for one, 12 mV lost would be a cell that rests at 12 mV.</summary>
public class DerivedHeadingTests
{
    private static string Table(string heading) => $"cell;{heading};note\nK1;12;a\nK2;15;b\nK3;20;c\n";

    [Theory]
    [InlineData("capacity loss (mAh)")]
    [InlineData("Kapazitätsverlust mAh")]
    [InlineData("capacity fade (%)")]
    [InlineData("SoH loss %")]
    [InlineData("voltage drop (mV)")]
    [InlineData("voltage drift (mV)")]
    [InlineData("OCV drift (mV)")]
    [InlineData("resistance rise (mOhm)")]
    [InlineData("insulation resistance (MOhm)")]
    [InlineData("contact resistance (mOhm)")]
    [InlineData("weight loss (g)")]
    public void What_is_lost_or_off_is_no_reading(string heading)
    {
        CellTableReading reading = TableText.Read(Table(heading));

        Assert.All(reading.Rows, row => Assert.True(
            row is { CapacityAh: null, RestV: null, ResistanceMilliohm: null, MassG: null, SelfDischargeMillivoltPerDay: null }, row.ToString()));
        Assert.Contains(reading.Understood, line => line.Contains(heading, StringComparison.Ordinal) && line.StartsWith("Not used", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("self discharge [mAh per month]")]
    [InlineData("self-discharge mAh/month")]
    [InlineData("Selbstentladung mAh pro Monat")]
    public void Charge_lost_in_a_time_is_refused_and_no_capacity(string heading) =>
        Assert.Contains("self-discharge", TableText.Refused(Table(heading)).Problem.Why, StringComparison.Ordinal);

    [Theory]
    [InlineData("Ah (error 1%)", 12_000)]
    [InlineData("capacity after self discharge (mAh)", 12)]
    public void A_reading_with_such_a_word_beside_it_stays_one(string heading, double capacityMilliampereHours) =>
        Assert.Equal(capacityMilliampereHours, 1000 * TableText.Read(Table(heading)).Rows[0].CapacityAh!.Value, 1e-9);

    [Fact]
    public void Four_wires_measure_a_cell() =>
        Assert.Equal(12, TableText.Read(Table("4-wire resistance (mOhm)")).Rows[0].ResistanceMilliohm);
}
