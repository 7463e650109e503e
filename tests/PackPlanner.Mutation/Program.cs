using System.Globalization;
using PackPlanner.Mutation;

// mutation: changes one room of Core at one place at a time and sees which changes the tests notice.
switch (args)
{
    case ["worker", var folder]:
        return Worker.Run(folder, Console.In, Console.Out);
    case [var room, var sample, var seed]:
        return new MutationRun(room, Number(sample), Number(seed), []).Run();
    case [var room, var sample, var seed, "only", .. var ids]:
        return new MutationRun(room, Number(sample), Number(seed), [.. ids.Select(Number)]).Run();
    default:
        Console.Error.WriteLine("usage: PackPlanner.Mutation ROOM[,ROOM...] SAMPLE SEED [only ID...]   (after dotnet build -c Release; a sample of 0 takes all)");
        return 2;
}

static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
