using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Frame;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Reading;

namespace PackPlanner.Screens;

/// <summary>
/// Everything that the text screens know, without any part of the terminal in it: the open job, the eight steps, what
/// is laid over them, the work that runs aside. Takes keys, clicks and pasted text; gives pages.
/// </summary>
internal sealed class Desk
{
    private readonly List<IOverlay> overlays = [];
    private readonly Surroundings around;

    internal Desk(Surroundings around, Look look)
    {
        this.around = around;
        Look = look;
        Aside = new AsideWork(this, around);
        Store = new JobStore(this, around);
        Answers = new Answers(this);
        Steps = StepList.For(this);
        GeneralKeys = GeneralActions.For(this);
    }

    internal Look Look { get; set; }

    /// <summary>What was chosen to stay: options of one run are not among it.</summary>
    internal Look Lasting { get; set; } = new();

    internal JobStore Store { get; }

    /// <summary>Verdicts, groups and other answers that several steps share.</summary>
    internal Answers Answers { get; }

    internal Surroundings Around => around;

    /// <summary>Tables that were pasted.</summary>
    internal PastedFiles Pasted { get; } = new();

    /// <summary>The job on screen; null at first start.</summary>
    internal JobOnScreen? Open { get; private set; }

    internal Job? Job => Open?.Now;

    internal IReadOnlyList<IStep> Steps { get; private set; }

    /// <summary>Which step is on screen, from 0.</summary>
    internal int At { get; private set; }

    internal IStep Step => Steps[At];

    /// <summary>Keys that work on every screen.</summary>
    internal IReadOnlyList<KeyAction> GeneralKeys { get; }

    /// <summary>What lies on top; null when the step itself has the keys.</summary>
    internal IOverlay? Overlay => overlays.Count == 0 ? null : overlays[^1];

    /// <summary>Work that runs aside and has run long enough to tell, this step's own first; null when there is none.</summary>
    internal BackgroundWork? Work => Aside.WorthTelling(asker => asker == Step || Answers.IsAskedBy(Step, asker));

    /// <summary>Whether anything runs aside at all.</summary>
    internal bool IsWorking => Aside.IsWorking;

    /// <summary>What runs aside.</summary>
    internal AsideWork Aside { get; }

    /// <summary>One line about the last key; gone with the next one.</summary>
    internal string? Says { get; set; }

    /// <summary>Whether the user wants to leave.</summary>
    internal bool IsLeaving { get; private set; }

    internal DateTime Now() => around.Now();

    internal DateOnly Today => DateOnly.FromDateTime(around.Now());

    /// <summary>The title row.</summary>
    internal string Title => Titles.Of(this);

    internal string SavedWords => Titles.Saved(this);

    /// <summary>Cautions of all steps, gravest first.</summary>
    internal IReadOnlyList<Caution> AllCautions => Job is null ? [] : Caution.OfOneJob(Steps.SelectMany(step => step.Picture.Cautions));

    internal Page Draw(int width, int height)
    {
        Answers.EndWhatIsGone();
        return FramePainter.Paint(this, width, height);
    }

    internal void GoTo(int step)
    {
        overlays.Clear();
        At = Math.Clamp(step, 0, Steps.Count - 1);
        Answers.AskAgain();
        Store.RememberPlace();
    }

    internal void Show(IOverlay overlay) => overlays.Add(overlay);

    /// <summary>Shows things another way from now on, in later runs too.</summary>
    internal void ShowAs(Look chosen)
    {
        Lasting = new Look(
            chosen.Ascii == Look.Ascii ? Lasting.Ascii : chosen.Ascii,
            chosen.DecimalComma == Look.DecimalComma ? Lasting.DecimalComma : chosen.DecimalComma,
            chosen.UsUnits == Look.UsUnits ? Lasting.UsUnits : chosen.UsUnits);
        Look = chosen;
    }

    internal void Close()
    {
        if (overlays.Count > 0)
            overlays.RemoveAt(overlays.Count - 1);
    }

    /// <summary>Takes some of what lies over the step away, wherever it lies.</summary>
    internal void TakeAway(Predicate<IOverlay> away) => overlays.RemoveAll(away);

    internal void CloseAll() => overlays.Clear();

    internal void Leave() => IsLeaving = true;

    /// <summary>Puts a job on the screen.</summary>
    /// <param name="job">The job.</param>
    /// <param name="step">The step, from 0.</param>
    /// <param name="isCopy">True for a copy of the job on screen, where cursors, filters and views stay as they are; in another job they would mean nothing.</param>
    internal void Use(JobOnScreen job, int step, bool isCopy = false)
    {
        Aside.StopAll();
        if (!isCopy)
            Steps = StepList.For(this);
        Open = job;
        overlays.Clear();
        At = Math.Clamp(step, 0, Steps.Count - 1);
        Store.RememberPlace();
    }

    internal void Forget()
    {
        Aside.StopAll();
        Open = null;
        overlays.Clear();
        At = 0;
        Store.RememberPlace();
    }

    /// <summary>Makes a change, saves it at once, and says so when that failed.</summary>
    internal void Do(JobChange change)
    {
        if (Open is null)
            return;
        Open.Do(change);
        TellIfNotSaved();
    }

    internal void TellIfNotSaved()
    {
        if (Open?.NotSaved is { } why)
            Says = why.Code == "job-changed-elsewhere" ? "NOT SAVED: another program changed this job. : \"copy this job\" keeps yours; \"open a job\" takes the other's."
                : $"NOT SAVED: {why.Problem.Why}. {why.Problem.Remedy}";
    }

    internal void Press(string key)
    {
        Says = null;
        if (key == "Ctrl+C")
        {
            Leave();
            return;
        }

        if (key == "Esc")
        {
            if (Overlay is not null)
                Close();
            else if (Work is { } work)
                work.Stop();
            else
                Says = "Esc goes back or stops work; q leaves the program.";
            return;
        }

        if (Overlay is null)
            KeyPress.Take(this, key);
        else if (!Overlay.Press(key))
            KeyPress.Beside(this, key);
        Store.RememberPlace();
    }

    internal void Press(KeyAction action)
    {
        Says = null;
        if (action.WhyNot() is { } why)
            Says = $"{action.Entry.Key}: {why}";
        else
            action.Run();
        Store.RememberPlace();
    }

    internal void Paste(string text)
    {
        Says = null;
        if (Overlay is { } overlay)
            overlay.Paste(text);
        else
            Reading.ReadingStart.Pasted(this, text);
    }

    /// <summary>Clicks the page that was drawn last.</summary>
    internal void Click(Page page, int x, int y)
    {
        Says = null;
        page.TargetAt(x, y)?.Invoke();
        Store.RememberPlace();
    }
}
