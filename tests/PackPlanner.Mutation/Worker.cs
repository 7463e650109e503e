using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.Loader;

namespace PackPlanner.Mutation;

/// <summary>Runs tests of a changed build in this process, as it is told line by line, so that a program that hangs or dies takes no other with it.</summary>
internal static class Worker
{
    /// <summary>
    /// Understands <c>list BEGINNINGS</c>, <c>seen COUNT FROM</c> (runs each test from a number on unchanged, what is left of the class of the one before it not; says its milliseconds of processor time and the changes that it
    /// comes by) and <c>try CHANGE TEST…</c> (runs tests until one fails). Each answer is a line.
    /// </summary>
    internal static int Run(string folder, TextReader orders, TextWriter answers)
    {
        // What a test prints must not be taken for an answer.
        Console.SetOut(TextWriter.Null);
        AssemblyLoadContext.Default.Resolving += (context, name) =>
            Path.Combine(folder, name.Name + ".dll") is var file && File.Exists(file) ? context.LoadFromAssemblyPath(file) : null;
        Assembly core = AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(folder, "PackPlanner.Core.dll"));
        Assembly tests = AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(folder, "PackPlanner.Tests.dll"));
        AppContext.SetData("APP_CONTEXT_BASE_DIRECTORY", folder + Path.DirectorySeparatorChar);
        Type mutant = core.GetType("PackPlanner.Core.Mutant")!;
        FieldInfo active = mutant.GetField("Active")!, seen = mutant.GetField("Seen")!;
        // Whatever is worked out once is worked out before anything is changed.
        foreach (Type type in core.GetTypes().Where(type => !type.ContainsGenericParameters))
            RuntimeHelpers.RunClassConstructor(type.TypeHandle);
        List<TestCase> cases = [];
        while (orders.ReadLine() is { } order)
        {
            string[] words = order.Split(' ');
            switch (words[0])
            {
                case "list":
                    cases = TestCases.Of(tests, words[1..]);
                    Say(answers, $"listed {cases.Count}");
                    break;
                case "seen":
                    int from = int.Parse(words[2], CultureInfo.InvariantCulture), at = from;
                    for (; at > 0 && at < cases.Count && ClassOf(cases[at]) == ClassOf(cases[from - 1]); at++)
                        Say(answers, $"skipped {cases[at].Name}");
                    for (; at < cases.Count; at++)
                        Say(answers, Unchanged(cases[at], at, seen, int.Parse(words[1], CultureInfo.InvariantCulture)));
                    seen.SetValue(null, null);
                    Say(answers, "done");
                    break;
                case "try":
                    active.SetValue(null, int.Parse(words[1], CultureInfo.InvariantCulture));
                    Say(answers, Try(cases, words[2..], answers) is { } by ? $"killed {by}" : "survived");
                    active.SetValue(null, 0);
                    break;
            }
        }

        return 0;
    }

    private static string ClassOf(TestCase test) => test.Name[..test.Name.LastIndexOf('.')];

    private static string Unchanged(TestCase test, int index, FieldInfo seen, int changes)
    {
        bool[] hit = new bool[changes + 1];
        seen.SetValue(null, hit);
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        bool passes = test.Passes();
        double milliseconds = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
        string ids = string.Join(',', Enumerable.Range(1, changes).Where(id => hit[id]));
        return string.Create(CultureInfo.InvariantCulture, $"test {index} {passes} {milliseconds:F0} {test.Name} {ids}");
    }

    private static string? Try(List<TestCase> cases, string[] tests, TextWriter answers)
    {
        foreach (string test in tests)
        {
            TestCase one = cases[int.Parse(test, CultureInfo.InvariantCulture)];
            Say(answers, $"begun {test}");
            if (!one.Passes())
                return one.Name;
        }

        return null;
    }

    private static void Say(TextWriter answers, string line)
    {
        answers.Write(line + "\n");
        answers.Flush();
    }
}
