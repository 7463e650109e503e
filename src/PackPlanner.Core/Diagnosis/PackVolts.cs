namespace PackPlanner.Core.Diagnosis;

/// <summary>The model of a pack: volts of a group at a piece of the log for some parameters, and their derivatives.</summary>
internal sealed class PackVolts
{
    private readonly PackModel model;
    private readonly double[] tapSign;
    private readonly int[] tapOf;
    private readonly double[] warm;
    private double[] bentV = [];

    internal PackVolts(PackModel model)
    {
        this.model = model;
        warm = [.. model.Slices.Pieces.Select(p => model.Shape.Warm(p.TemperatureDegC))];
        (tapSign, tapOf) = (new double[model.Groups], new int[model.Groups]);
        for (int t = 0; t < model.Taps.Count; t++)
        {
            (tapSign[model.Taps[t].A], tapOf[model.Taps[t].A]) = (1, t);
            if (model.Taps[t].B >= 0)
                (tapSign[model.Taps[t].B], tapOf[model.Taps[t].B]) = (-1, t);
        }
    }

    /// <summary>Bends the shared curve as the parameters say; to be called whenever its weights change.</summary>
    internal void TakeCurve(double[] x) => bentV = model.Curve.Bent(x.AsSpan(0, model.Curve.Shapes));

    /// <summary>Volts of a group at a state of charge under a steady current, all slow parts grown out, tap error left out.</summary>
    /// <param name="x">The parameters.</param>
    /// <param name="group">Which group.</param>
    /// <param name="charge">State of charge.</param>
    /// <param name="currentA">Amperes, discharge positive; 0 for rest.</param>
    /// <param name="temperatureDegC">Degrees Celsius; NaN for the log's mean.</param>
    /// <param name="joint">Multiplies what the group's joint adds; 0 for a mended one.</param>
    internal double SteadyVolts(double[] x, int group, double charge, double currentA, double temperatureDegC, double joint = 1)
    {
        int at = model.GroupAt(group);
        ChargeSlices.Piece still = new()
        {
            CurrentA = 0,
            TemperatureDegC = temperatureDegC,
            SlowA = new double[SlowCurrents.TauS.Length],
            Hysteresis = new double[2 * ChargeSlices.Memory.Length],
            TopH = new double[model.Tops],
        };
        double[] moved = (double[])x.Clone();
        moved[at + PackParameters.Charge] = charge;
        double rest = At(moved, still, group, out Local local);
        if (tapSign[group] != 0)
            rest -= 0.01 * tapSign[group] * x[model.TapAt + tapOf[group]];
        double slow = 1;
        for (int j = 0; j < SlowCurrents.TauS.Length; j++)
            slow += x[model.SlowAt + j];
        double ohm = model.UnitOhm * ((x[at + PackParameters.Cells] * local.Factor * Math.Max(1, slow)) + (joint * x[at + PackParameters.Joint]));
        return rest - (currentA * ohm);
    }

    /// <summary>State of charge of a group at a piece.</summary>
    internal double ChargeAt(double[] x, ChargeSlices.Piece p, int group)
    {
        int at = model.GroupAt(group);
        return x[at + PackParameters.Charge] - (Lost(x, p, at) / CapacityAh(x, at));
    }

    private double CapacityAh(double[] x, int at) => model.RatedAh * Math.Exp(x[at + PackParameters.LogCapacity]);

    private double Lost(double[] x, ChargeSlices.Piece p, int at)
    {
        double lost = p.DrawnAh - (0.001 * model.RatedAh * x[model.OffsetAt] * p.LoadH);
        if (!model.Leaks)
            return lost;
        double unitA = PackParameters.LeakUnitA(model.RatedAh);
        lost += x[at + PackParameters.Leak] * unitA * p.TimeS / 3600;
        for (int e = 0; e < model.Tops; e++)
            lost += x[at + PackParameters.Bleed + e] * unitA * p.TopH[e];
        return lost;
    }

    /// <summary>The modelled volts, and what their derivatives need.</summary>
    internal double At(double[] x, ChargeSlices.Piece p, int group, out Local local)
    {
        int at = model.GroupAt(group);
        double capacityAh = CapacityAh(x, at), lostAh = Lost(x, p, at);
        double z = x[at + PackParameters.Charge] - (lostAh / capacityAh), stretched = z, stretch = 1, bend = 0;
        (double sin, double cos) = (0, 0);
        if (z is > 0 and < 1)
        {
            // sin(jz) and cos(jz) by going round, which is far cheaper than asking for each.
            (sin, cos) = Math.SinCos(Math.PI * z);
            (double s, double c) = (sin, cos);
            for (int j = 1; j <= PackParameters.Warps; j++)
            {
                double size = 0.01 * x[at + PackParameters.Warp + j - 1] / j;
                stretched += size * s;
                stretch += size * Math.PI * j * c;
                if (j <= PackParameters.Bends)
                    bend += 0.001 * x[at + PackParameters.Bend + j - 1] * s;
                (s, c) = ((s * cos) + (c * sin), (c * cos) - (s * sin));
            }
        }
        double v = model.Curve.Volts(stretched, bentV, out double curveSlopeV) + bend;
        double warmth = p.Place >= 0 ? warm[p.Place] : model.Shape.Warm(p.TemperatureDegC);
        double factor = warmth * model.Shape.AtCharge(z, out double factorSlope);
        double drive = p.CurrentA;
        for (int j = 0; j < p.SlowA.Length; j++)
            drive += x[model.SlowAt + j] * p.SlowA[j];
        double cells = x[at + PackParameters.Cells] * model.UnitOhm;
        v -= (factor * cells * drive) + (x[at + PackParameters.Joint] * model.UnitOhm * p.CurrentA);
        for (int m = 0; m < p.Hysteresis.Length; m++)
            v -= x[model.HysteresisAt + m] * model.HysteresisSdV * p.Hysteresis[m];
        if (tapSign[group] != 0)
            v += 0.01 * tapSign[group] * x[model.TapAt + tapOf[group]];
        double slopeV = (curveSlopeV * Math.Max(0.2, stretch)) - (factorSlope * warmth * cells * drive);
        local = new Local(stretched, curveSlopeV, slopeV, factor, drive, sin, cos, capacityAh, lostAh);
        return v;
    }

    /// <summary>What the derivatives need of the point where the volts were modelled.</summary>
    internal readonly record struct Local(
        double Stretched, double CurveSlopeV, double SlopeV, double Factor, double DriveA, double Sin, double Cos, double CapacityAh, double LostAh);

    /// <summary>Derivatives of the modelled volts by the common parameters and then the group's own.</summary>
    internal void FillRow(double[] x, ChargeSlices.Piece p, int k, in Local local, Span<double> row)
    {
        double cells = x[model.GroupAt(k) + PackParameters.Cells] * model.UnitOhm * local.Factor;
        model.Curve.ShapesAt(local.Stretched, row[..model.Curve.Shapes]);
        for (int j = 0; j < p.SlowA.Length; j++)
            row[model.SlowAt + j] = -cells * p.SlowA[j];
        for (int m = 0; m < p.Hysteresis.Length; m++)
            row[model.HysteresisAt + m] = -model.HysteresisSdV * p.Hysteresis[m];
        row[model.OffsetAt] = local.SlopeV * 0.001 * model.RatedAh * p.LoadH / local.CapacityAh;
        row.Slice(model.TapAt, model.Taps.Count).Clear();
        if (tapSign[k] != 0)
            row[model.TapAt + tapOf[k]] = 0.01 * tapSign[k];
        FillOwn(p, local, row[model.Shared..]);
    }

    /// <summary>Derivatives of the modelled volts by the group's own parameters.</summary>
    internal void FillOwn(ChargeSlices.Piece p, in Local local, Span<double> row)
    {
        row[PackParameters.LogCapacity] = local.SlopeV * local.LostAh / local.CapacityAh;
        row[PackParameters.Charge] = local.SlopeV;
        row[PackParameters.Cells] = -model.UnitOhm * local.Factor * local.DriveA;
        row[PackParameters.Joint] = -model.UnitOhm * p.CurrentA;
        (double s, double c) = (local.Sin, local.Cos);
        for (int j = 1; j <= PackParameters.Warps; j++)
        {
            row[PackParameters.Warp + j - 1] = 0.01 * local.CurveSlopeV * s / j;
            if (j <= PackParameters.Bends)
                row[PackParameters.Bend + j - 1] = 0.001 * s;
            (s, c) = ((s * local.Cos) + (c * local.Sin), (c * local.Cos) - (s * local.Sin));
        }
        if (!model.Leaks)
            return;
        double unitA = PackParameters.LeakUnitA(model.RatedAh);
        row[PackParameters.Leak] = -local.SlopeV * unitA * p.TimeS / 3600 / local.CapacityAh;
        for (int e = 0; e < model.Tops; e++)
            row[PackParameters.Bleed + e] = -local.SlopeV * unitA * p.TopH[e] / local.CapacityAh;
    }
}
