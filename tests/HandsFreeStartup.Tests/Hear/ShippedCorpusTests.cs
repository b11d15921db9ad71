using System.Collections.Immutable;
using HandsFreeStartup.Hear;
using HandsFreeStartup.Speech.Listening;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>The shipped recordings of synthetic speakers and noises: nothing wrong may be accepted in them. <c>Corpus/make_corpus.sh</c> makes them; a label is what the speaker was asked to say.</summary>
public sealed class ShippedCorpusTests(ITestOutputHelper output)
{
    static readonly string Manifest = Path.Combine(AppContext.BaseDirectory, "Hear", "Corpus", "corpus.tsv");

    [Fact]
    public void Nothing_wrong_is_accepted_and_most_of_what_is_said_is()
    {
        ImmutableArray<HearCase> cases = HearManifest.Read(Manifest);
        using HearBench bench = HearBench.Load(null, 2, TimeProvider.System);

        HearFigures figures = HearFigures.Of([.. cases.Select(measured => bench.Measure(measured, WavFile.Read(measured.Path), everyEar: false).Row)], bench.Needs());

        using StringWriter text = new();
        HearText.Print(figures, text);
        HearText.PrintConfusions(figures, text);
        output.WriteLine(text.ToString());
        Assert.Equal(68, figures.Cases);
        Assert.True(figures.WrongAccepted + figures.FalseAccepts == 0, text.ToString());

        // A recognizer that refuses everything would never be wrong; how much of it is right is measured elsewhere, on other recordings.
        Assert.True(figures.ConfirmedExact >= figures.Said * 2 / 3, text.ToString());
    }
}
