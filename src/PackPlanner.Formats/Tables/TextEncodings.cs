using System.Text;

namespace PackPlanner.Formats.Tables;

/// <summary>Finds the encoding of a text from its first bytes.</summary>
internal static class TextEncodings
{
    private static readonly Encoding Western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
    private static readonly Encoding Chinese = CodePagesEncodingProvider.Instance.GetEncoding(54936)!;

    /// <summary>The encoding that the bytes are most likely written in.</summary>
    /// <param name="head">The first bytes.</param>
    /// <returns>Null and "UTF-8" for UTF-8 and ASCII; else the encoding, its name, and the head as text without NUL characters.</returns>
    internal static (Encoding? Encoding, string Name, string Text) Guess(byte[] head)
    {
        if (head is [0xFF, 0xFE, ..])
            return (Encoding.Unicode, "UTF-16 LE", Clean(Encoding.Unicode.GetString(head)));
        if (head is [0xFE, 0xFF, ..])
            return (Encoding.BigEndianUnicode, "UTF-16 BE", Clean(Encoding.BigEndianUnicode.GetString(head)));
        if (WideWithoutMark(head) is { } wide)
            return (wide, wide == Encoding.Unicode ? "UTF-16 LE" : "UTF-16 BE", Clean(wide.GetString(head)));
        if (IsUtf8(head))
            return (null, "UTF-8", Clean(Encoding.UTF8.GetString(head)));
        return IsChinese(head)
            ? (Chinese, "GB 18030", Clean(Chinese.GetString(head)))
            : (Western, "Windows-1252", Clean(Western.GetString(head)));
    }

    /// <summary>Control characters make up more than a tenth of the text.</summary>
    internal static bool LooksBinary(string text)
    {
        int odd = 0;
        foreach (char letter in text)
            if (letter < ' ' && letter is not ('\t' or '\r' or '\n' or '\f' or '\u001A'))
                odd++;
        return odd * 10 > text.Length;
    }

    private static string Clean(string text) => text.Replace("\0", "", StringComparison.Ordinal).TrimStart('\uFEFF');

    // Latin text in UTF-16 has a zero in every other byte.
    private static Encoding? WideWithoutMark(byte[] head)
    {
        int pairs = Math.Min(head.Length, 4096) / 2;
        if (pairs < 4)
            return null;
        int even = 0;
        int odd = 0;
        for (int i = 0; i < pairs; i++)
        {
            even += head[2 * i] == 0 ? 1 : 0;
            odd += head[(2 * i) + 1] == 0 ? 1 : 0;
        }

        if (odd > pairs * 0.6 && even < pairs * 0.1)
            return Encoding.Unicode;
        return even > pairs * 0.6 && odd < pairs * 0.1 ? Encoding.BigEndianUnicode : null;
    }

    // The head may end in the middle of a letter, so up to three bytes at its end do not count.
    private static bool IsUtf8(ReadOnlySpan<byte> head)
    {
        for (int cut = 0; cut <= Math.Min(3, head.Length); cut++)
            if (System.Text.Unicode.Utf8.IsValid(head[..^cut]))
                return true;
        return false;
    }

    // In GB 18030 a Chinese character is two bytes above 0xA0, and words are several such; in Western text a letter
    // above 0x7F stands alone, or two together at most (the German "öß").
    private static bool IsChinese(ReadOnlySpan<byte> head)
    {
        int inWords = 0;
        int alone = 0;
        for (int i = 0; i < head.Length;)
        {
            int run = head[i..].IndexOfAnyExceptInRange((byte)0x80, (byte)0xFF);
            run = run < 0 ? head.Length - i : run;
            inWords += run >= 4 && run % 2 == 0 ? run : 0;
            alone += run is > 0 and < 4 ? run : 0;
            i += run + 1;
        }

        return inWords > alone;
    }
}
