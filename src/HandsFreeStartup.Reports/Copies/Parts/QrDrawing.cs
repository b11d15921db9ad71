using System.Collections;
using HandsFreeStartup.Reports.Copies.Layout;
using QRCoder;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>A QR code (ISO/IEC 18004) as filled squares, sharp at any size.</summary>
static class QrDrawing
{
    /// <summary>Draws it with its quiet zone inside of the square.</summary>
    public static void Draw(Pen pen, string text, double x, double y, double size)
    {
        using QRCodeData code = new QRCodeGenerator().CreateQrCode(text, QRCodeGenerator.ECCLevel.M);
        double module = size / code.ModuleMatrix.Count;
        for (int row = 0; row < code.ModuleMatrix.Count; row++)
        {
            foreach ((int start, int length) in Runs(code.ModuleMatrix[row]))
            {
                // A little overlap, or viewers show hairlines between rows.
                pen.Fill(x + start * module, y + row * module, length * module, module * 1.02, Style.Ink);
            }
        }
    }

    static IEnumerable<(int Start, int Length)> Runs(BitArray row)
    {
        int start = -1;
        for (int i = 0; i <= row.Count; i++)
        {
            bool isDark = i < row.Count && row[i];
            if (isDark && start < 0)
            {
                start = i;
            }
            else if (!isDark && start >= 0)
            {
                yield return (start, i - start);
                start = -1;
            }
        }
    }
}
