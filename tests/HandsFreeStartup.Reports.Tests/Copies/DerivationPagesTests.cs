using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Formulas;
using HandsFreeStartup.Reports.Tests.Support;
using UglyToad.PdfPig.Content;

namespace HandsFreeStartup.Reports.Tests.Copies;

/// <summary>The appendix of the copies that says how each result came about.</summary>
[Trait("Speed", "Fast")]
public sealed class DerivationPagesTests
{
    const string Title = "How each result came about";

    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    public void Customer_and_office_copy_carry_every_derivation_on_request_and_none_without_it(Paper paper)
    {
        CopySource source = CopiesTests.Whole();
        (string Scope, Derivation Derivation)[] expected = Derivations(source);
        Assert.NotEmpty(expected);

        foreach (byte[] copy in new[] { StartupCopies.Customer(source, paper, withDerivations: true), StartupCopies.Office(source, paper, withDerivations: true) })
        {
            using PdfPages pdf = new(copy);
            string text = pdf.Text[pdf.Text.IndexOf(Title, StringComparison.Ordinal)..];

            foreach ((_, Derivation derivation) in expected)
            {
                Assert.Contains(derivation.TextWithUncertainty, text, StringComparison.Ordinal);
                Assert.Contains(derivation.Head.Source[..20], text, StringComparison.Ordinal);
                Assert.All(derivation.Inputs, input => Assert.Contains(input.Text, text, StringComparison.Ordinal));
            }
        }
        Assert.All(CopiesTests.All(source, paper), copy =>
        {
            using PdfPages pdf = new(copy);
            Assert.DoesNotContain(Title, pdf.Text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void No_ink_leaves_the_margins_and_no_letter_is_too_small()
    {
        using PdfPages pdf = new(StartupCopies.Office(CopiesTests.Large(2, 3, 30), Paper.Letter, withDerivations: true));

        foreach (Page page in pdf.Pages)
        {
            Assert.All(page.Letters, letter =>
            {
                Assert.InRange(letter.BoundingBox.Left, 33, page.Width - 33);
                Assert.InRange(letter.BoundingBox.Right, 33, page.Width - 33);
                Assert.InRange(letter.BoundingBox.Bottom, 33, page.Height - 33);
                Assert.True(letter.PointSize >= 6.99, $"'{letter.Value}' has {letter.PointSize} pt");
            });
        }
    }

    [Theory]
    [InlineData("a", "a")]
    [InlineData("a + b × c", "[a +[b ×c]]")]
    [InlineData("CO × 20.9 / (20.9 − O2)", "{[CO ×20.9]|[20.9 −O2]}")]
    [InlineData("(−1.2) − b", "[([−1.2]) −b]")]
    [InlineData("Tsat(pw) / √(x + 1)", "{Tsat(pw)|√[x +1]}")]
    [InlineData("a / b × c / d", "{[{a|b} ×c]|d}")]
    public void A_printed_formula_is_read_as_it_is_evaluated(string text, string shape) => Assert.Equal(shape, Shape(FormulaParser.Read(text)!));

    [Theory]
    [InlineData("a +")]
    [InlineData("(a")]
    [InlineData("a b")]
    [InlineData("√a")]
    [InlineData("")]
    public void What_is_no_formula_is_not_set_as_one(string text) => Assert.Null(FormulaParser.Read(text));

    static (string, Derivation)[] Derivations(CopySource source)
    {
        StartupProcedure procedure = new(source.Plan);
        foreach (StartupEvent happened in source.Events)
        {
            procedure.Apply(happened);
        }

        return [.. procedure.Derivations()];
    }

    static string Shape(FormulaPart part) => part switch
    {
        FormulaPart.Name name => name.Text,
        FormulaPart.Row row => $"[{string.Join(' ', row.Parts.Select(one => one.Sign + Shape(one.Part)))}]",
        FormulaPart.Fraction fraction => $"{{{Shape(fraction.Above)}|{Shape(fraction.Below)}}}",
        FormulaPart.Root root => $"√{Shape(root.Of)}",
        FormulaPart.Group group => $"{group.Function}({Shape(group.Inside)})",
        _ => "?",
    };
}
