using HandsFreeStartup.Reports.Copies.Layout;

namespace HandsFreeStartup.Reports.Copies.Formulas;

/// <summary>A piece of a formula with its size; drawn with its base line at the given height.</summary>
sealed record FormulaBox(double Width, double Above, double Below, Action<Pen, double, double> Draw);

/// <summary>Sets formulas as on paper: fractions with a bar, roots with a roof, the digits of O2 below the line.</summary>
sealed class FormulaSetter(Ruler ruler, Style style)
{
    const double Thin = 1.2;

    readonly Style _small = style.At(Math.Max(7, style.Size * 0.78));

    double Ascent => 0.82 * style.Size;

    double Descent => 0.26 * style.Size;

    /// <summary>Height of the bar of a fraction over the base line.</summary>
    double Axis => 0.3 * style.Size;

    /// <summary>The lines of an equation, broken before a sign where it is wider than <paramref name="width"/>; as plain text where no line would hold a piece of it.</summary>
    /// <param name="left">The symbol that it makes, or empty.</param>
    /// <param name="formula">As a derivation prints it.</param>
    /// <param name="right">What stands behind it.</param>
    /// <param name="width">Room.</param>
    public IEnumerable<Strip> Lines(string left, string formula, string right, double width)
    {
        FormulaBox[]? pieces = FormulaParser.Read(formula) is { } part ? [left.Length > 0 ? Side([Text(left), Text("=")], Gap) : Text("="), .. Pieces(part), .. right.Length > 0 ? [Text(right)] : Array.Empty<FormulaBox>()] : null;
        return pieces is null || pieces.Any(piece => piece.Width > width - Indent)
            ? Texts.Paragraph(ruler, Minus($"{left} = {formula} {right}").Trim(), style, width)
            : Broken(pieces, width);
    }

    const double Indent = 14;

    IEnumerable<Strip> Broken(FormulaBox[] pieces, double width)
    {
        List<FormulaBox> line = [];
        double indent = 0;
        foreach (FormulaBox piece in pieces)
        {
            if (line.Count > 0 && indent + line.Sum(one => one.Width + Gap) + piece.Width > width)
            {
                yield return Strip(line, indent) with { KeepsWithNext = true };
                (line, indent) = ([], Indent);
            }
            line.Add(piece);
        }
        yield return Strip(line, indent);
    }

    double Gap => 0.3 * style.Size;

    Strip Strip(List<FormulaBox> line, double indent)
    {
        FormulaBox row = Side([.. line], Gap);
        return new Strip(row.Above + row.Below + 3, (pen, x, y) => row.Draw(pen, x + indent, y + row.Above + 1.5));
    }

    /// <summary>The terms of a sum, which may stand on several lines, or the whole.</summary>
    IEnumerable<FormulaBox> Pieces(FormulaPart part) => part is FormulaPart.Row row
        ? row.Parts.Select(one => one.Sign.Length > 0 ? Side([Text(Minus(one.Sign)), Of(one.Part)], Gap) : Of(one.Part)) : [Of(part)];

    FormulaBox Of(FormulaPart part) => part switch
    {
        FormulaPart.Name name => Text(name.Text),
        FormulaPart.Row row => Side([.. row.Parts.SelectMany(one => one.Sign.Length > 0 ? new[] { Text(Minus(one.Sign)), Of(one.Part) } : [Of(one.Part)])], Gap),
        FormulaPart.Fraction fraction => Over(Of(fraction.Above), Of(fraction.Below)),
        FormulaPart.Root root => Roofed(Of(root.Of)),
        FormulaPart.Group group => Side([Text($"{group.Function}("), Of(group.Inside), Text(")")], 0.5),
        _ => throw new InvalidOperationException($"No way to set {part}."),
    };

    static string Minus(string text) => text.Replace('−', '–');

    /// <summary>A name or number; digits behind a letter stand below the line.</summary>
    FormulaBox Text(string text)
    {
        int letters = text.Length;
        while (letters > 0 && char.IsAsciiDigit(text[letters - 1]))
        {
            letters--;
        }
        bool isSubscript = letters > 0 && letters < text.Length && char.IsLetter(text[letters - 1]);
        (string main, string low) = isSubscript ? (text[..letters], text[letters..]) : (text, "");
        double width = ruler.Width(main, style);
        return new(width + (low.Length > 0 ? ruler.Width(low, _small) : 0), Ascent, Descent + (low.Length > 0 ? 1.5 : 0), (pen, x, y) =>
        {
            pen.Text(main, style, x, y - style.Baseline);
            pen.Text(low, _small, x + width, y + 1.8 - _small.Baseline);
        });
    }

    static FormulaBox Side(FormulaBox[] boxes, double gap) => new(
        boxes.Sum(box => box.Width) + gap * (boxes.Length - 1), boxes.Max(box => box.Above), boxes.Max(box => box.Below), (pen, x, y) =>
        {
            foreach (FormulaBox box in boxes)
            {
                box.Draw(pen, x, y);
                x += box.Width + gap;
            }
        });

    FormulaBox Over(FormulaBox above, FormulaBox below)
    {
        double width = Math.Max(above.Width, below.Width) + 4;
        return new(width + 2, Axis + Thin + above.Below + above.Above, below.Above + below.Below + Thin - Axis, (pen, x, y) =>
        {
            above.Draw(pen, x + 1 + (width - above.Width) / 2, y - Axis - Thin - above.Below);
            below.Draw(pen, x + 1 + (width - below.Width) / 2, y - Axis + Thin + below.Above);
            pen.Rule(x + 1, y - Axis, width, Style.Ink, 0.6);
        });
    }

    FormulaBox Roofed(FormulaBox inside)
    {
        const double foot = 6;
        return new(inside.Width + foot + 3, inside.Above + 2.5, inside.Below, (pen, x, y) =>
        {
            double top = y - inside.Above - 1.5, bottom = y + inside.Below;
            pen.Line(x, y - Axis, x + foot / 2, bottom);
            pen.Line(x + foot / 2, bottom, x + foot, top);
            pen.Rule(x + foot, top, inside.Width + 2, Style.Ink, 0.6);
            inside.Draw(pen, x + foot + 1, y);
        });
    }
}
