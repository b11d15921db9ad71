using System.Globalization;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Copies.Formulas;
using HandsFreeStartup.Reports.Copies.Layout;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>The appendix that says how each result came about: formula, numbers, where they came from, what the uncertainty is made of, and the limit.</summary>
sealed class DerivationPages(Ruler ruler, CopyFacts copy, double width)
{
    const double Margin = 10;

    static readonly Style Title = Style.Strong.At(9.6);
    static readonly Style Formula = Style.Body.At(9.2);
    static readonly Style Quiet = Style.Body.At(8).In(Style.Quiet);

    readonly FormulaSetter _setter = new(ruler, Formula);

    public IEnumerable<Strip> Pages()
    {
        (string Scope, Derivation Derivation)[] all = [.. copy.Derivations()];
        return
        [
            .. Texts.Heading(ruler, copy.T("How each result came about"), width),
            .. Texts.Paragraph(ruler, copy.T(all.Length == 0 ? "No result stands that a formula explains." :
                "Worked out once more from the readings of this record by the calculation that made the results. Numbers on the way have seven digits; ± is the expanded uncertainty (k = 2), for about 95 % of cases. Where a limit judges a result, the bar is full where it is proven and half as high within the guard band; the stroke is the limit, the black mark the value."), Style.Small, width),
            .. all.SelectMany(one => Of(one.Scope, one.Derivation)),
        ];
    }

    IEnumerable<Strip> Of(string scope, Derivation derivation) =>
    [
        Strip.Space(9) with { KeepsWithNext = true },
        .. Kept(Texts.Paragraph(ruler, $"{copy.Language.Name($"{ResultKind.Find(derivation.Head.Id)?.Label ?? derivation.Head.Id}{Labels.In(scope)}")}: {copy.Told(Message.Of(derivation.ToldResult))}", Title, width)),
        .. Kept(Texts.Paragraph(ruler, Upper(copy.Told($"{Message.Recorded(derivation.Head.What)}. Source: {Message.Recorded(derivation.Head.Source)}.")), Quiet, width)),
        .. Kept(Equation(derivation.Head.Symbol, derivation.Formula, "")),
        .. Kept(Equation("", derivation.Numbers, $"= {copy.Told(Message.Of(derivation.ToldResult))}")),
        .. derivation.Steps.IsEmpty ? [] : Kept(Texts.Paragraph(ruler, copy.T("with"), Quiet, width)),
        .. derivation.Steps.SelectMany(step => Equation(step.Symbol, step.Formula, "").Concat(Equation("", step.Numbers, $"= {Measured(step.Text, step.Unit)}"))),
        Strip.Space(4) with { KeepsWithNext = true },
        .. Inset(new Table(ruler, width - Margin, new("", 9), new(copy.T("put in"), 21), new(copy.T("what it is"), 38), new(copy.T("where it came from"), 32)).Rows(derivation.Inputs.Select(Row))),
        .. Inset(Budget(derivation)),
        .. Inset(Limit(derivation)),
    ];

    IEnumerable<Strip> Equation(string left, string formula, string right) => Inset(_setter.Lines(left, formula, right, width - Margin));

    Cell[] Row(DerivationInput input) =>
    [
        input.Symbol, $"{Measured(input.Text, input.Unit)}{input.Spread}", R(input.Name), R(input.Origin),
    ];

    IEnumerable<Strip> Budget(Derivation derivation)
    {
        BudgetShare[] parts = [.. derivation.Budget.Where(part => Math.Abs(part.Share) >= 0.005)];
        if (parts.Length == 0)
        {
            return [];
        }
        double bar = width - Margin - 120;
        return
        [
            Strip.Space(3),
            .. Kept(Texts.Paragraph(ruler, copy.T("What the uncertainty is made of (shares of u²):"), Quiet, width)),
            .. parts.Select(part => new Strip(Quiet.LineHeight, (pen, x, y) =>
            {
                pen.Text(string.Create(CultureInfo.InvariantCulture, $"{part.Name} {100 * part.Share:0} %"), Quiet, x, y);
                pen.Fill(x + 110, y + 2, Math.Clamp(Math.Abs(part.Share), 0, 1) * bar, Quiet.LineHeight - 5, Style.Hair);
            }) { KeepsWithNext = true }),
            Strip.Space(1),
        ];
    }

    IEnumerable<Strip> Limit(Derivation derivation) => derivation.Limit is null ? [] :
    [
        .. derivation.Bar.Length == 0 ? Array.Empty<Strip>() : [new Strip(13, (pen, x, y) => Bar(pen, derivation.Bar, x, y + 2)) { KeepsWithNext = true }],
        .. Texts.Paragraph(ruler, copy.Told(Message.Of(derivation.LimitLine)), Style.Body, width - Margin),
    ];

    /// <summary>The bar of text as a drawing: full where the limit is proven, half where the guard band lies, a line outside; a stroke is a limit, the black mark the value.</summary>
    static void Bar(Pen pen, string bar, double x, double y)
    {
        const double cell = 7, height = 8;
        foreach (char sign in bar.Trim('[', ']'))
        {
            switch (sign)
            {
                case '=': pen.Fill(x, y, cell, height, Style.Accent); break;
                case '~': pen.Fill(x, y + height / 2, cell, height / 2, Style.Accent); break;
                case '|': pen.Fill(x + cell / 2 - 0.6, y - 2, 1.2, height + 2, Style.Alarm); break;
                case 'X': pen.Fill(x + cell / 2 - 1.6, y - 2, 3.2, height + 2, Style.Ink); break;
            }
            pen.Rule(x, y + height, cell, Style.Quiet, 0.6);
            x += cell;
        }
    }

    static IEnumerable<Strip> Inset(IEnumerable<Strip> strips) => strips.Select(strip => strip with
    {
        Draw = (pen, x, y) => strip.Draw(pen, x + Margin, y),
        Head = strip.Head is { } head ? head with { Draw = (pen, x, y) => head.Draw(pen, x + Margin, y) } : null,
    });

    static IEnumerable<Strip> Kept(IEnumerable<Strip> strips) => strips.Select(strip => strip with { KeepsWithNext = true });

    static string Measured(string number, string unit) => unit.Length > 0 ? $"{number} {unit}" : number;

    /// <summary>What the calculation says of itself, in the language of the copy.</summary>
    string R(string finished) => copy.Language.Recorded(finished);

    static string Upper(string text) => $"{char.ToUpperInvariant(text[0])}{text[1..]}";
}
