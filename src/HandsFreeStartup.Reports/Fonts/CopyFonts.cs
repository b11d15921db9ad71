using PdfSharp.Fonts;

namespace HandsFreeStartup.Reports.Fonts;

/// <summary>The typeface of the copies, out of this assembly: no font of the machine is ever looked for.</summary>
sealed class CopyFonts : IFontResolver
{
    /// <summary>Name of the only family.</summary>
    public const string Family = "Copies";

    const string Regular = "NotoSans-SemiCondensed";
    const string Bold = "NotoSans-SemiCondensedBold";

    static readonly Lock Gate = new();

    /// <summary>Hands the typeface to the PDF library, whose font settings are one for the whole process.</summary>
    public static void Register()
    {
        lock (Gate)
        {
            GlobalFontSettings.FontResolver ??= new CopyFonts();
        }
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        familyName == Family ? new FontResolverInfo(isBold ? Bold : Regular) : null;

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName)
    {
        using Stream file = typeof(CopyFonts).Assembly.GetManifestResourceStream(faceName)
            ?? throw new InvalidOperationException($"The typeface {faceName} is missing in the program.");
        using MemoryStream bytes = new();
        file.CopyTo(bytes);
        return bytes.ToArray();
    }
}
