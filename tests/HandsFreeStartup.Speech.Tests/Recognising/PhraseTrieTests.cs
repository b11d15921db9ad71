using System.Diagnostics;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Speech.Tests.Recognising;

public sealed class PhraseTrieTests(SmallModel small, ITestOutputHelper output) : IClassFixture<SmallModel>
{
    static readonly Expectation Everything = Expectation.Open with { Readings = [.. Fields.All.Select(ExpectedReading.Of)], Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] };

    [Theory]
    [InlineData(" monoxide", 2)]
    [InlineData(" oxygen", 1)]
    [InlineData(" seven point six", 3)]
    [InlineData(" 7.6", 3)]
    public void Words_become_the_pieces_the_model_writes(string text, int pieces)
    {
        // Counts of the .en vocabulary as measured for this product with the model's own output.
        int[] tokens = small.Model.Tokens.Encode(text);
        Assert.Equal(pieces, tokens.Length);
        Assert.Equal(text, small.Model.Text(tokens));
    }

    public static TheoryData<string> FieldIds => [.. Fields.All.Select(each => each.Id)];

    [Theory]
    [MemberData(nameof(FieldIds))]
    public void Every_spelling_of_every_value_is_found_in_the_trie_with_its_meaning(string id)
    {
        Field field = Fields.Find(id)!;
        PhraseTrie trie = PhraseTrie.Of(Everything, small.Model.Tokens);
        int seen = 0;
        foreach (decimal value in FieldValues.All(field))
        {
            string name = field.SpokenNames[seen % field.SpokenNames.Length];
            foreach (string number in SpokenNumbers.AllSpellings(value, field))
            {
                string unit = seen % 2 == 0 ? "" : " " + field.Unit.Spoken[^1];
                string phrase = $" {name} {number}{unit}";
                Assert.True(Endings(trie, phrase).Any(ending => ending.Meaning == new Meaning.Reading(field, value)), phrase);
                seen++;
            }
        }

        Assert.True(seen > 400, $"only {seen} phrases");
    }

    [Fact]
    public void Every_command_and_answer_is_found_with_its_meaning()
    {
        PhraseTrie trie = PhraseTrie.Of(Everything, small.Model.Tokens);
        foreach (Command command in Commands.All)
        {
            Assert.Equal(new Meaning.Command(command.Word), Assert.Single(Endings(trie, " " + command.Id)).Meaning);
        }

        foreach (Answer answer in Answers.All)
        {
            Assert.All(answer.Ways, way => Assert.Equal(new Meaning.Answer(answer.Word), Assert.Single(Endings(trie, " " + way)).Meaning));
        }

        foreach (SafetyWay way in SafetyWords.Ways)
        {
            Meaning[] expected = way.IsLookedFor ? [new Meaning.Command(way.Word) { IsFire = way.IsFire }] : [];
            Assert.Equal(expected, Endings(trie, " " + way.Words).Select(ending => ending.Meaning));
        }
    }

    [Theory]
    [InlineData(" oxygen seven")]
    [InlineData(" oxygen 7.6")]
    [InlineData(" oxygen twenty one point zero")]
    [InlineData(" oxygen minus one point zero")]
    [InlineData(" draft point two")]
    [InlineData(" flue temperature twelve")]
    [InlineData(" seven point six")]
    [InlineData(" oxygen")]
    [InlineData(" banana")]
    public void What_is_not_legal_has_no_ending(string phrase) =>
        Assert.Empty(Endings(PhraseTrie.Of(Everything, small.Model.Tokens), phrase));

    [Fact]
    public void Every_phrase_grown_from_the_trie_is_read_back_by_the_text_parser_as_the_same_meaning()
    {
        PhraseTrie root = PhraseTrie.Of(Everything, small.Model.Tokens);
        Random random = new(11);
        int read = 0;
        for (int i = 0; i < 3000; i++)
        {
            List<int> tokens = [];
            PhraseTrie at = root;
            while (!at.Children.IsEmpty && (at.Endings.IsEmpty || random.Next(4) > 0))
            {
                (int token, at) = at.Children[random.Next(at.Children.Length)];
                tokens.Add(token);
            }

            string phrase = small.Model.Text(tokens);
            Assert.False(at.Endings.IsEmpty, $"\"{phrase}\" leads nowhere");
            TextMeaning text = PhraseText.Read(phrase, Everything);
            foreach (Ending ending in at.Endings)
            {
                Assert.True(text.Meanings.Contains(ending.Meaning), $"\"{phrase}\" is {ending.Meaning} in the trie, but [{string.Join(' ', text.Meanings)}] for the parser");
                read++;
            }
        }

        Assert.True(read >= 3000, $"only {read} meanings");
    }

    [Fact]
    public void Growing_the_trie_of_the_widest_expectation_takes_little_time()
    {
        BytePairs fresh = small.Model.Tokens;
        long start = Stopwatch.GetTimestamp();
        PhraseTrie trie = PhraseTrie.Of(Everything, fresh);
        foreach (Field field in Fields.All)
        {
            _ = Walk(trie, " " + field.SpokenNames[0])!.Children;
        }

        output.WriteLine($"{Stopwatch.GetElapsedTime(start).TotalMilliseconds:0} ms for the first level of all numbers");
        Assert.All(Fields.All, field => Assert.NotEmpty(Walk(trie, " " + field.SpokenNames[0])!.Children));
    }

    IEnumerable<Ending> Endings(PhraseTrie trie, string phrase) => Walk(trie, phrase) is { } place ? place.Endings : [];

    PhraseTrie? Walk(PhraseTrie trie, string phrase)
    {
        PhraseTrie? at = trie;
        foreach (int token in small.Model.Tokens.Encode(phrase))
        {
            at = at?.Children.FirstOrDefault(child => child.Token == token).Place;
        }

        return at;
    }
}
