using PdfSharp.Drawing;

namespace HandsFreeStartup.Reports.Copies;

/// <summary>The paper of the copies.</summary>
public enum Paper
{
    /// <summary>210 mm by 297 mm (ISO 216).</summary>
    A4,
    /// <summary>8.5 in. by 11 in. (ANSI/ASME Y14.1, size A).</summary>
    Letter,
}

/// <summary>Where on a sheet there may be ink, in points from its upper left corner.</summary>
static class Sheet
{
    const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>No printer reaches the edge; 12 mm also leave room for a thumb.</summary>
    public const double Margin = 12 * PointsPerMillimetre;

    public static XSize Size(this Paper paper) => paper switch
    {
        Paper.Letter => new XSize(612, 792),
        _ => new XSize(210 * PointsPerMillimetre, 297 * PointsPerMillimetre),
    };

    public static double TextWidth(this Paper paper) => paper.Size().Width - 2 * Margin;
}
