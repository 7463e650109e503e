namespace PackPlanner.Core.Cells;

/// <summary>What resistances of several cells are good for together.</summary>
public static class ResistanceKinds
{
    /// <summary>True where resistances are known and all of them are 1 kHz ones: they tell the first instant of a short circuit, not the current that lasts.</summary>
    /// <param name="readings">Milliohm and kind of each cell.</param>
    /// <returns>False too where nothing is known.</returns>
    public static bool TellOnlyFirstInstant(IEnumerable<(double? Milliohm, ResistanceKind Kind)> readings)
    {
        bool any = false;
        foreach ((_, ResistanceKind kind) in readings.Where(reading => reading.Milliohm is not null))
        {
            if (kind != ResistanceKind.Ac1Khz)
                return false;
            any = true;
        }

        return any;
    }
}
