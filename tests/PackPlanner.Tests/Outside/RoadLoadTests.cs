using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Tests.Outside;

public class RoadLoadTests
{
    // Source: [RoadLoadExercise] air of 1.2 kg/m3; drag coefficient x area at 30 and 80 km/h.
    [Theory]
    [InlineData(0.9 * 0.6, 30, 22.5)]
    [InlineData(0.9 * 0.6, 80, 160)]
    [InlineData(0.45 * 1.6, 30, 30)]
    [InlineData(0.45 * 1.6, 80, 213.33)]
    [InlineData(0.3 * 2.5, 30, 31.25)]
    [InlineData(0.3 * 2.5, 80, 222.22)]
    public void Air_force_agrees_with_the_published_exercise(double dragAreaM2, double speedKmh, double newtons) =>
        Assert.Equal(newtons, new RoadLoad(100, dragAreaM2, 0.01, 0, 1.2).AirN(speedKmh), 0.005);

    // Source: [RoadLoadExercise] 8 degrees, rolling 0.015, g = 9.81 (ours is 9.80665: 0.03 % apart).
    [Theory]
    [InlineData(600, 819.17, 87.43)]
    [InlineData(1500, 2047.93, 218.57)]
    public void Slope_and_tyres_agree_with_the_published_exercise(double massKg, double gradeN, double rollingN)
    {
        RoadLoad road = new(massKg, 0.6, 0.015, Math.Tan(8 * Math.PI / 180));

        Assert.Equal(gradeN * 9.80665 / 9.81, road.GradeN, 0.05);
        Assert.Equal(rollingN * 9.80665 / 9.81, road.RollingN, 0.02);
    }

    // By hand from the formula (arithmetic only, no published result): mass, Crr, CdA, km/h, efficiency, accessories.
    [Theory]
    [InlineData(105, 0.008, 0.55, 25, 0.75, 0, 8.9452)]
    [InlineData(180, 0.015, 0.60, 45, 0.80, 20, 29.1694)]
    [InlineData(280, 0.018, 0.50, 100, 0.85, 0, 91.7997)]
    [InlineData(350, 0.012, 0.70, 40, 0.80, 30, 33.0555)]
    public void Energy_for_a_kilometre_is_force_over_efficiency(
        double massKg, double rolling, double dragAreaM2, double speedKmh, double efficiency, double accessoryW, double whPerKm) =>
        Assert.Equal(whPerKm, new RoadLoad(massKg, dragAreaM2, rolling, 0, 1.2).WhPerKm(speedKmh, efficiency, accessoryW), 5e-5);

    // By hand: head wind of 5 m/s on the first line above.
    [Fact]
    public void Head_wind_multiplies_the_air_force() =>
        Assert.Equal(20.488, new RoadLoad(105, 0.55, 0.008, 0, 1.2, 5).WhPerKm(25, 0.75, 0), 5e-4);

    [Fact]
    public void The_speed_for_a_power_is_the_inverse_of_the_power_for_a_speed()
    {
        foreach (double grade in new[] { -0.04, 0, 0.05 })
        {
            RoadLoad road = new(190, 0.6, 0.014, grade);
            double speed = road.SpeedKmh(4920)!.Value;
            Assert.Equal(4920, road.WheelW(speed), 1e-6);
        }
    }

    // By hand: 100 kg at 6 % down pull 58.7 N, tyres and air at 20 km/h hold 9.8 + 9.5 N; 20 W of lamps at 20 km/h are 1 Wh/km.
    [Fact]
    public void Downhill_only_the_accessories_are_paid_for() =>
        Assert.Equal(1, new RoadLoad(100, 0.5, 0.01, -0.06).WhPerKm(20, 0.8, accessoryW: 20), tolerance: 1e-9);
}
