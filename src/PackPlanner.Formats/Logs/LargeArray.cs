using System.Runtime.InteropServices;

namespace PackPlanner.Formats.Logs;

/// <summary>Makes the columns of a log.</summary>
/// <remarks>
/// Touching new memory four kilobytes at a time cost as much as parsing (a season of rows: 0.13 s of 0.27 s), so on
/// Linux the kernel is asked for large pages. It is a wish: where it is not granted the array is the same, only slower.
/// </remarks>
internal static class LargeArray
{
    private const int WishForLargePages = 14;
    private const int PageBytes = 4096;
    private const int WorthAsking = 1 << 20;

    // From here on the collector keeps an array apart and never moves it.
    private const int KeptApart = 85_000;
    private const int WorthKeepingApart = 4096;

    /// <summary>An array whose content is not set; for numbers only.</summary>
    internal static T[] Of<T>(int length)
        where T : unmanaged
    {
        long bytes = (long)length * Marshal.SizeOf<T>();
        // Ten thousand short columns would be copied twice as they grow old, and would need their room twice meanwhile.
        T[] array = GC.AllocateUninitializedArray<T>(length, pinned: bytes is >= WorthKeepingApart and < KeptApart);
        if (bytes >= WorthAsking && OperatingSystem.IsLinux())
            Ask(array, bytes);
        return array;
    }

    private static void Ask(Array array, long bytes)
    {
        GCHandle held = GCHandle.Alloc(array, GCHandleType.Pinned);
        try
        {
            long at = held.AddrOfPinnedObject();
            long from = (at + PageBytes - 1) / PageBytes * PageBytes;
            long whole = (at + bytes - from) / PageBytes * PageBytes;
            _ = Advise((nint)from, (nint)whole, WishForLargePages);
        }
        catch (Exception fault) when (fault is DllNotFoundException or EntryPointNotFoundException)
        {
            // A system without that call: the array is good as it is.
        }
        finally
        {
            held.Free();
        }
    }

    [DllImport("libc", EntryPoint = "madvise")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Advise(nint address, nint length, int advice);
}
