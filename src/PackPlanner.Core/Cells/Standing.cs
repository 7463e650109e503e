namespace PackPlanner.Core.Cells;

/// <summary>How far a figure may be trusted.</summary>
public enum Standing
{
    /// <summary>Read from an instrument, or typed by the user as a reading.</summary>
    Measured,

    /// <summary>Taken from the maker's data sheet or another published source.</summary>
    DataSheet,

    /// <summary>A default of ours that nobody measured; the user can replace it.</summary>
    Assumed,
}
