namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>One invented series group: its truth and its state while a log is made.</summary>
internal sealed class SimulatedGroup
{
    internal required Func<double, double> Curve { get; init; }

    internal required double CapacityAh { get; set; }

    internal required double R0 { get; set; }

    internal required double R1 { get; set; }

    internal required double R2 { get; set; }

    internal double JointOhm { get; set; }

    internal double LeakA { get; set; }

    internal double TapV { get; set; }

    internal double StartCharge { get; set; }

    internal double Charge { get; set; }

    internal double V1 { get; set; }

    internal double V2 { get; set; }

    internal double Hysteresis { get; set; }

    internal bool Bleeding { get; set; }

    /// <summary>Temperature above or below the pack's mean, kelvin.</summary>
    internal double HotterK { get; set; }

    internal List<string> Required { get; } = [];

    internal List<string> Allowed { get; } = [];
}
