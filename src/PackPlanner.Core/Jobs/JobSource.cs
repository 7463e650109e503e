namespace PackPlanner.Core.Jobs;

/// <summary>A file that was taken into a job. What it held is in the job; the file itself is not needed again.</summary>
/// <param name="Id">Short name inside the job: s1, s2 and so on.</param>
/// <param name="File">The file's name without its folder.</param>
/// <param name="Sha256">Checksum of the bytes that were read, 64 hexadecimal digits.</param>
/// <param name="Kind">What it was read as.</param>
/// <param name="Understood">What was understood and assumed while reading, one sentence each.</param>
public sealed record JobSource(string Id, string File, string Sha256, SourceKind Kind, IReadOnlyList<string> Understood);
