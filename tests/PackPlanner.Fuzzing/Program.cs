using System.Globalization;
using PackPlanner.Fuzzing;

// spoil HOW-MANY FIRST-SEED FOLDER: inputs spoiled by seed, those that fail kept in the folder.
// costs: what each whole input costs, to share a long run out.
return args switch
{
    ["spoil", var count, var first, var folder] => SpoiledRun.Run(Number(count), Number(first), folder),
    ["costs"] => InputCosts.Run(),
    _ => Usage(),
};

static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);

static int Usage()
{
    Console.Error.WriteLine("fuzzing: spoil HOW-MANY FIRST-SEED FOLDER | costs");
    return 2;
}
