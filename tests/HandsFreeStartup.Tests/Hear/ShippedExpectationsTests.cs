using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Storage.UserFiles;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>
/// What may be said in every step of every shipped checklist: phrase to tokens, tokens through the trie to the meaning, and back. Where a field has many values, values spread
/// evenly over its range stand for all.
/// </summary>
public sealed class ShippedExpectationsTests(ITestOutputHelper output)
{
    const int ValuesOfAField = 60;

    static readonly ImmutableArray<AnswerWord> AllAnswers = [.. Enum.GetValues<AnswerWord>()];

    static Dictionary<string, Expectation> Expectations()
    {
        IEnumerable<Step> steps =
            from path in Directory.GetFiles(ShippedFiles.Checklists, "*.yaml").Order(StringComparer.Ordinal)
            where File.ReadLines(path).Any(line => line.StartsWith("sections:", StringComparison.Ordinal) || line.StartsWith("steps:", StringComparison.Ordinal))
            from step in UserFile.ReadChecklist(UserFile.Copy(path)).Steps
            select step;
        IEnumerable<Expectation> all =
            from step in steps
            let readings = step.Readings.Select(demand => Fields.Find(demand.FieldId)!)
                .Select(field => new ExpectedReading(field, [.. field.SpokenNames, .. step.Also.GetValueOrDefault(field.Id, [])]))
            select Expectation.Open with { Readings = [.. readings], Answers = AllAnswers };
        return all.DistinctBy(expectation => expectation.Key).ToDictionary(expectation => expectation.Key);
    }

    [Fact]
    public void Every_legal_phrase_of_every_step_becomes_tokens_that_lead_to_its_meaning_and_back_to_the_phrase()
    {
        using WhisperModel model = new(Path.Combine(ShippedFiles.Models, ModelFiles.Small), threads: 2);
        Dictionary<string, Expectation> expectations = Expectations();
        int phrases = 0;
        foreach (Expectation expectation in expectations.Values)
        {
            PhraseTrie trie = PhraseTrie.Of(expectation, model.Tokens);
            foreach ((string phrase, Meaning meaning) in Phrases(expectation))
            {
                int[] tokens = model.Tokens.Encode(phrase);
                PhraseTrie? at = trie;
                foreach (int token in tokens)
                {
                    at = at?.Children.FirstOrDefault(child => child.Token == token).Place;
                }

                Assert.True(at is not null && at.Endings.Any(ending => ending.Meaning.Equals(meaning)), $"\"{phrase}\" is not {meaning} in the trie of {expectation.Key}");
                Assert.Equal(phrase, model.Text(tokens));
                Assert.True(PhraseText.Read(phrase, expectation).Meanings.Contains(meaning), $"\"{phrase}\" is not {meaning} for the parser under {expectation.Key}");
                phrases++;
            }
        }

        output.WriteLine($"{expectations.Count} different expectations, {phrases} phrases");
        Assert.True(expectations.Count >= 5 && phrases >= 10_000, $"only {phrases} phrases of {expectations.Count} expectations");
    }

    [Fact]
    public void Whatever_grows_from_a_step_s_trie_is_read_as_the_same_meaning_by_the_parser()
    {
        using WhisperModel model = new(Path.Combine(ShippedFiles.Models, ModelFiles.Small), threads: 2);
        Random random = new(17);
        foreach (Expectation expectation in Expectations().Values)
        {
            PhraseTrie root = PhraseTrie.Of(expectation, model.Tokens);
            for (int i = 0; i < 200; i++)
            {
                List<int> tokens = [];
                PhraseTrie at = root;
                while (!at.Children.IsEmpty && (at.Endings.IsEmpty || random.Next(4) > 0))
                {
                    (int token, at) = at.Children[random.Next(at.Children.Length)];
                    tokens.Add(token);
                }

                string phrase = model.Text(tokens);
                ImmutableArray<Meaning> read = PhraseText.Read(phrase, expectation).Meanings;
                Assert.All(at.Endings, ending => Assert.True(read.Contains(ending.Meaning), $"\"{phrase}\" is {ending.Meaning} in the trie, [{string.Join(' ', read)}] for the parser"));
                Assert.NotEmpty(at.Endings);
            }
        }
    }

    static IEnumerable<(string Phrase, Meaning Meaning)> Phrases(Expectation expectation)
    {
        foreach (CommandWord word in expectation.Commands)
        {
            yield return (" " + Commands.Of(word).Id, new Meaning.Command(word));
        }

        foreach ((AnswerWord answer, string way) in expectation.Answers.SelectMany(answer => Answers.Of(answer).Ways.Select(way => (answer, way))))
        {
            yield return (" " + way, new Meaning.Answer(answer));
        }

        foreach (ExpectedReading reading in expectation.Readings)
        {
            foreach ((decimal value, int index) in Spread(reading.Field).Select((value, index) => (value, index)))
            {
                string name = reading.Names[index % reading.Names.Length];
                string unit = index % 2 == 0 ? "" : " " + reading.Field.Unit.Spoken[^1];
                foreach (string number in SpokenNumbers.AllSpellings(value, reading.Field))
                {
                    yield return ($" {name} {number}{unit}", new Meaning.Reading(reading.Field, value));
                }
            }
        }
    }

    static IEnumerable<decimal> Spread(Field field)
    {
        for (int decimals = field.FewestDecimals; decimals <= field.MostDecimals; decimals++)
        {
            decimal step = new(1, 0, 0, false, (byte)decimals);
            int count = (int)((field.Highest - field.Lowest) / step);
            int each = Math.Max(1, count / ValuesOfAField);
            for (int i = 0; i <= count; i += each)
            {
                yield return Math.Round(field.Lowest + i * step, decimals) + 0m * step;
            }
        }
    }
}
