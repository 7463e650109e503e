namespace PackPlanner.Screens;

/// <summary>An answer that a step keeps until what it was computed from changes.</summary>
/// <typeparam name="TInput">What it is computed from; compared by equality, so a record of immutable parts.</typeparam>
/// <typeparam name="TAnswer">The answer.</typeparam>
internal sealed class Derived<TInput, TAnswer>(
    Desk desk, string doing, Func<TInput, BackgroundWork, TAnswer> compute, Func<TInput, bool> isShort)
    where TInput : class
    where TAnswer : class
{
    private TInput? computedFrom;

    /// <summary>The last answer, which may belong to an older question; null before the first.</summary>
    internal TAnswer? Last { get; private set; }

    /// <summary>Whether the answer is still on its way.</summary>
    internal bool IsWorking { get; private set; }

    /// <summary>Whether the user stopped it before there was an answer.</summary>
    internal bool WasStopped { get; private set; }

    /// <summary>The answer is worked out anew at the next look.</summary>
    internal void Forget() => (computedFrom, Last, WasStopped) = (null, null, false);

    /// <summary>What was stopped is asked again at the next look.</summary>
    internal void AskAgain()
    {
        if (WasStopped)
            (computedFrom, WasStopped) = (null, false);
    }

    /// <summary>The answer; null while it is on its way, or when the question cannot be asked yet.</summary>
    internal TAnswer? Of(TInput? input)
    {
        if (input is null)
        {
            computedFrom = null;
            Last = null;
            IsWorking = false;
            desk.Aside.Stop(this);
            return null;
        }

        // Another job on the screen stops all work: who comes back to the same question then is not left waiting.
        if (!input.Equals(computedFrom) || (IsWorking && !desk.Aside.Works(this)))
        {
            computedFrom = input;
            Last = null;
            WasStopped = false;
            IsWorking = true;
            desk.Aside.Start(this, doing, work => Compute(input, work), isShort(input));
        }

        return Last;
    }

    private Action Compute(TInput input, BackgroundWork work)
    {
        TAnswer answer;
        try
        {
            answer = compute(input, work);
        }
        catch (OperationCanceledException)
        {
            // Done only where nobody has asked anew since.
            return () => (IsWorking, WasStopped) = (false, true);
        }
        catch
        {
            IsWorking = false;
            throw;
        }

        return () =>
        {
            Last = answer;
            IsWorking = false;
        };
    }
}
