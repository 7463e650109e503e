namespace PackPlanner.Screens.Reading;

/// <summary>What the user said about how a file is to be read.</summary>
/// <param name="Path">The file.</param>
/// <param name="Shown">What it is called in the job; a pasted table has no file of its own.</param>
/// <param name="Decimal">auto, point or comma.</param>
/// <param name="CurrentSign">auto, discharge or charge.</param>
internal sealed record FileChoices(string Path, string Shown, string Decimal = "auto", string CurrentSign = "auto");
