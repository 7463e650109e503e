using PackPlanner.Formats.Words;

namespace PackPlanner.Screens;

/// <summary>Work that runs beside the screen, one for each asker; answers come back to the screen's own thread.</summary>
internal sealed class AsideWork(Desk desk, Surroundings around)
{
    private readonly Dictionary<object, BackgroundWork> works = [];

    /// <summary>Whether anything runs at all.</summary>
    internal bool IsWorking => works.Count > 0;

    /// <summary>Whether something runs for this asker.</summary>
    internal bool Works(object asker) => works.ContainsKey(asker);

    /// <summary>Work that has run long enough to tell, that of those who come first before others; null when there is none.</summary>
    internal BackgroundWork? WorthTelling(Func<object, bool> comesFirst) => works
        .Where(work => work.Value.IsWorthTelling(around.Now()))
        .OrderByDescending(work => comesFirst(work.Key))
        .Select(work => work.Value).FirstOrDefault();

    /// <summary>
    /// Runs something aside; a newer question of the same asker cancels the older one. The work returns what to do with
    /// its answer, and that is done on the screen's own thread.
    /// </summary>
    /// <param name="asker">Who asks: a step, or an answer that a step keeps.</param>
    /// <param name="doing">What is done, for the progress row.</param>
    /// <param name="work">Does it.</param>
    /// <param name="atOnce">For what is so short that the answer can be waited for.</param>
    internal void Start(object asker, string doing, Func<BackgroundWork, Action> work, bool atOnce = false)
    {
        Stop(asker);
        BackgroundWork mine = new(doing, around.Now());
        if (atOnce)
        {
            Answer(work, mine)();
            mine.Dispose();
            return;
        }

        works[asker] = mine;
        around.Aside(() =>
        {
            Action answer = Answer(work, mine);
            around.Back(() => Finish(asker, mine, answer));
        });
    }

    /// <summary>Ends the work of one asker; its answer is not wanted any more.</summary>
    internal void Stop(object asker)
    {
        if (works.Remove(asker, out BackgroundWork? older))
            older.Stop();
    }

    internal void StopAll()
    {
        foreach (object asker in works.Keys.ToArray())
            Stop(asker);
    }

    private Action Answer(Func<BackgroundWork, Action> work, BackgroundWork mine)
    {
        try
        {
            return work(mine);
        }
        catch (OperationCanceledException)
        {
            return () => { };
        }
        // Work aside has no other place to tell a fault of ours: the last catch of the program is on another thread.
        catch (Exception fault)
        {
            string remedy = FaultReport.Write(fault).Problem.Remedy;
            return () => desk.Says = OneLine.Of($"A fault in the program: {fault.Message.TrimEnd('.')}. {remedy}");
        }
    }

    private void Finish(object asker, BackgroundWork mine, Action answer)
    {
        if (works.TryGetValue(asker, out BackgroundWork? wanted) && wanted == mine)
        {
            works.Remove(asker);
            answer();
            // What reading or judging a season leaves behind would otherwise stay until something else needs room.
            if (works.Count == 0 && mine.IsLong(around.Now()))
                around.Tidy();
        }

        mine.Dispose();
        around.Redraw();
    }
}
