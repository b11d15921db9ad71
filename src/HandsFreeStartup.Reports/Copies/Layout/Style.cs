using HandsFreeStartup.Reports.Fonts;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>Size in points, weight and color of a text. Color never carries a meaning alone.</summary>
sealed class Style(double size, bool isBold, XColor color)
{
    public static XColor Ink { get; } = XColor.FromArgb(0x17, 0x1C, 0x22);

    public static XColor Quiet { get; } = XColor.FromArgb(0x57, 0x61, 0x6C);

    public static XColor Hair { get; } = XColor.FromArgb(0xC9, 0xD1, 0xD6);

    public static XColor Tint { get; } = XColor.FromArgb(0xEF, 0xF3, 0xF4);

    public static XColor Accent { get; } = XColor.FromArgb(0x0B, 0x54, 0x5E);

    public static XColor Alarm { get; } = XColor.FromArgb(0xB0, 0x1E, 0x12);

    public static Style Body { get; } = new(9, false, Ink);

    public static Style Strong { get; } = new(9, true, Ink);

    public static Style Small { get; } = new(7.4, false, Quiet);

    public static Style Heading { get; } = new(10.5, true, Accent);

    public double Size => size;

    public double LineHeight => size * 1.3;

    /// <summary>From the top of a line to the feet of its letters.</summary>
    public double Baseline => size;

    public XFont Font { get; } = Made(size, isBold);

    public XBrush Brush { get; } = new XSolidBrush(color);

    public Style In(XColor other) => new(size, isBold, other);

    public Style At(double other) => new(other, isBold, color);

    public Style AsBold() => new(size, true, color);

    static XFont Made(double size, bool isBold)
    {
        CopyFonts.Register();
        return new XFont(CopyFonts.Family, size, isBold ? XFontStyleEx.Bold : XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset));
    }
}
