namespace PackPlanner.Formats.Tables;

/// <summary>What kind of quantity a column holds.</summary>
internal enum Dimension
{
    None,
    Charge,
    Voltage,
    Current,
    Resistance,
    Temperature,
    Energy,
    Power,
    Time,
    Mass,
    Share,
    VoltageRate,
}
