using System.Collections;
using System.Globalization;
using System.Reflection;

namespace PackPlanner.Mutation;

/// <summary>A test with its arguments, called without a test runner.</summary>
internal sealed class TestCase(string name, MethodInfo method, object?[] arguments)
{
    internal string Name => name;

    /// <summary>Runs it.</summary>
    /// <returns>True where it passes.</returns>
    internal bool Passes()
    {
        try
        {
            object? instance = method.IsStatic ? null : Activator.CreateInstance(method.DeclaringType!);
            try
            {
                if (method.Invoke(instance, arguments) is Task task)
                    task.GetAwaiter().GetResult();
                return true;
            }
            finally
            {
                (instance as IDisposable)?.Dispose();
            }
        }
        catch (Exception)
        {
            return false;
        }
    }
}

/// <summary>Finds the tests of an assembly: those of the classes whose full name begins with one of some words.</summary>
internal static class TestCases
{
    internal static List<TestCase> Of(Assembly assembly, string[] beginnings)
    {
        List<TestCase> cases = [];
        foreach (string beginning in beginnings)
        {
            foreach (Type type in assembly.GetTypes().Where(type => type is { IsClass: true, IsAbstract: false } && type.FullName!.StartsWith(beginning, StringComparison.Ordinal)).OrderBy(type => type.FullName, StringComparer.Ordinal))
            {
                if (type.GetConstructor(Type.EmptyTypes) is null)
                    continue;
                foreach (MethodInfo method in type.GetMethods().Where(IsTest).OrderBy(method => method.Name, StringComparer.Ordinal))
                    cases.AddRange(Rows(method).Select((row, i) => new TestCase($"{type.FullName}.{method.Name}#{i}", method, row)));
            }
        }

        return cases;
    }

    private static bool IsTest(MethodInfo method) => method.GetCustomAttributes().Any(a =>
        a.GetType().Name is "FactAttribute" or "TheoryAttribute" && a.GetType().GetProperty("Skip")?.GetValue(a) is null);

    private static IEnumerable<object?[]> Rows(MethodInfo method)
    {
        if (method.GetParameters().Length == 0)
            return [[]];
        List<object?[]> rows = [];
        foreach (Attribute data in method.GetCustomAttributes())
        {
            if (data.GetType().Name == "InlineDataAttribute")
                rows.Add((object?[])data.GetType().GetProperty("Data")!.GetValue(data)!);
            else if (data.GetType().Name == "MemberDataAttribute")
                rows.AddRange(Member(method.DeclaringType!, data));
        }

        return rows.Select(row => method.GetParameters().Select((parameter, i) => i < row.Length ? Fit(row[i], parameter.ParameterType) : parameter.DefaultValue).ToArray());
    }

    private static IEnumerable<object?[]> Member(Type own, Attribute data)
    {
        Type type = (Type?)data.GetType().GetProperty("MemberType")?.GetValue(data) ?? own;
        string name = (string)data.GetType().GetProperty("MemberName")!.GetValue(data)!;
        const BindingFlags any = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.FlattenHierarchy;
        object? values = type.GetProperty(name, any)?.GetValue(null) ?? type.GetField(name, any)?.GetValue(null)
            ?? type.GetMethod(name, any)?.Invoke(null, (object?[]?)data.GetType().GetProperty("Arguments")?.GetValue(data));
        foreach (object row in (IEnumerable)values!)
            yield return row as object?[] ?? (object?[])row.GetType().GetInterface("ITheoryDataRow")!.GetMethod("GetData")!.Invoke(row, null)!;
    }

    private static object? Fit(object? value, Type wanted)
    {
        Type plain = Nullable.GetUnderlyingType(wanted) ?? wanted;
        return value is IConvertible && plain != value.GetType() && plain.IsPrimitive && !plain.IsEnum ? Convert.ChangeType(value, plain, CultureInfo.InvariantCulture) : value;
    }
}
