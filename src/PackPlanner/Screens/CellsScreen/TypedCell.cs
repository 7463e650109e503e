using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>Reads a cell typed on one line: its label, then figures with their units.</summary>
internal static class TypedCell
{
    /// <returns>What is wrong with the line; null when nothing is.</returns>
    internal static string? Read(string typed, out CellRow? row)
    {
        row = null;
        string[] words = typed.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0)
            return "Begin with what is written on the cell.";
        CellRow read = new() { Label = words[0] };
        foreach (string word in words[1..])
        {
            string text = word.Replace(',', '.');
            if (TypedQuantity.TryRead(text, "a charge", "4.1Ah", out ElectricCharge charge, out _))
                read = read with { CapacityAh = charge.AmpereHours };
            else if (TypedQuantity.TryRead(text, "a resistance", "32mohm", out ElectricResistance resistance, out _))
                read = read with { ResistanceMilliohm = resistance.Milliohms };
            else if (TypedQuantity.TryRead(text, "volts", "3.61V", out ElectricPotential volts, out _))
                read = read with { RestV = volts.Volts };
            else
                return $"\"{word}\" is neither Ah, mohm nor V; write figures with their unit, such as 4.1Ah 32mohm 3.61V.";
        }

        if (read is { CapacityAh: < 0 } or { ResistanceMilliohm: < 0 })
            return "Ah and mohm cannot be below zero.";
        if (IsNone(CellField.CapacityAh, read.CapacityAh) || IsNone(CellField.ResistanceMilliohm, read.ResistanceMilliohm) || IsNone(CellField.RestV, read.RestV))
            return "No cell reads so: a point or a unit is missing. Write figures like 4.1Ah 32mohm 3.61V.";
        row = read;
        return null;
    }

    private static bool IsNone(CellField field, double? value) => value is { } figure && !TypedCellValue.IsOfOneCell(field, figure);
}
