using System.Globalization;
using PackPlanner.Fuzzing;

// spoil HOW-MANY FIRST-SEED FOLDER: inputs spoiled by seed, those that fail kept in the folder.
// misread HOW-MANY FIRST-SEED: real tables and logs written in other ways that mean the same.
// costs: what each whole input costs, to share a long run out.
return args switch
{
    ["spoil", var count, var first, var folder] => SpoiledRun.Run(Number(count), Number(first), folder),
    ["misread", var count, var first] => MisreadingRun.Run(Number(count), Number(first)),
    ["costs"] => InputCosts.Run(),
    _ => Usage(),
};

static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);

static int Usage()
{
    Console.Error.WriteLine("fuzzing: spoil HOW-MANY FIRST-SEED FOLDER | misread HOW-MANY FIRST-SEED | costs");
    return 2;
}
