namespace PackPlanner;

internal static class Program
{
    private static int Main()
    {
        Console.Error.WriteLine("packplanner: no verbs yet");
        return 2;
    }
}
