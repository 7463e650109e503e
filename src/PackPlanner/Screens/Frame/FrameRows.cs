namespace PackPlanner.Screens.Frame;

/// <summary>
/// Which row holds what. With few rows the progress row goes first, then the second answer line, then the evidence
/// shrinks.
/// </summary>
internal sealed record FrameRows(
    int Question, int Answer, int AnswerRows, int UpperRule, int Body, int BodyHeight, int LowerRule, int Next, int Caution, int? Progress, int Hints)
{
    internal static FrameRows Of(int height)
    {
        bool hasProgress = height >= 24;
        int answerRows = height >= 23 ? 2 : 1;
        int upperRule = 3 + answerRows;
        int hints = height - 2;
        int? progress = hasProgress ? hints - 1 : null;
        int caution = (progress ?? hints) - 1;
        int lowerRule = caution - 2;
        return new(2, 3, answerRows, upperRule, upperRule + 1, lowerRule - upperRule - 1, lowerRule, caution - 1, caution, progress, hints);
    }
}
