using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens;

/// <summary>One of the eight steps: state, answer, evidence and keys, without any part of the terminal in it.</summary>
internal interface IStep
{
    /// <summary>The word on the steps row.</summary>
    public string Name { get; }

    /// <summary>Whether the job has something for this step.</summary>
    public bool IsFilled { get; }

    /// <summary>What the step says now.</summary>
    public StepPicture Picture { get; }

    /// <summary>The keys of this step in its present state, most useful first; keys of every screen are not among them.</summary>
    public IReadOnlyList<KeyAction> Keys { get; }

    /// <summary>Draws the evidence.</summary>
    public void Paint(Area body);

    /// <summary>Takes a key that moves the cursor within the evidence.</summary>
    /// <returns>False when the key has no use here.</returns>
    public bool Move(string key);

    /// <summary>Where the figure under the cursor comes from; null when there is none.</summary>
    public WhereFrom? WhereFrom();

    /// <summary>The row under the cursor in words, for copying; null when there is none.</summary>
    public string? CopyText();

    /// <summary>The evidence as a table, for writing it to a file.</summary>
    public MainTable Table();

    /// <summary>Where the cursor stands, so that a later start finds it again.</summary>
    public string Place { get; set; }
}
