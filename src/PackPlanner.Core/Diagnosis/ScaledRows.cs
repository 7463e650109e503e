using System.Numerics;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Sums of rows of numbers.</summary>
internal static class ScaledRows
{
    /// <summary>Adds a multiple of a row, several numbers at a time; each sum is the same as one at a time.</summary>
    internal static void Add(Span<double> into, ReadOnlySpan<double> row, double factor)
    {
        int wide = Vector<double>.Count, i = 0;
        Vector<double> factors = new(factor);
        for (; i <= into.Length - wide; i += wide)
            (new Vector<double>(into[i..]) + (factors * new Vector<double>(row[i..]))).CopyTo(into[i..]);
        for (; i < into.Length; i++)
            into[i] += factor * row[i];
    }
}
