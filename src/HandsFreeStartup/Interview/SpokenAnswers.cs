using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Session;

namespace HandsFreeStartup.Interview;

/// <summary>What reached a question.</summary>
abstract record Heard
{
    Heard()
    {
    }

    /// <summary>A line from the keyboard; null where no more will come.</summary>
    public sealed record Typed(string? Line) : Heard;

    /// <summary>An utterance.</summary>
    public sealed record Said(Phrase Phrase) : Heard;
}

/// <summary>Hears and speaks.</summary>
interface IListener
{
    /// <summary>Forgets what was said before.</summary>
    void Forget();

    /// <summary>Waits for the next utterance or line.</summary>
    /// <param name="expectation">What may be said.</param>
    /// <param name="words">Words that are looked for before free speech is heard; null where no free speech may be said.</param>
    Heard Next(Expectation expectation, Expectation? words);

    /// <summary>Says words.</summary>
    /// <param name="words">What is said.</param>
    /// <param name="breaksOff">Whether what is being said breaks off; else they wait for it.</param>
    void Say(Message words, bool breaksOff);

    /// <summary>Says what to do in danger, sentence by sentence: at once, and no speech breaks it off.</summary>
    void Warn(ImmutableArray<Message> sentences);
}

/// <summary>Answers that are spoken or typed: at every moment a key is taken, and what is typed is an answer at once.</summary>
/// <param name="listener">Hears and speaks.</param>
/// <param name="output">What is asked, heard and told.</param>
/// <param name="languages">In which it is shown and said; null for English. What can be said to it is English in each.</param>
sealed class SpokenAnswers(IListener listener, TextWriter output, LanguagesInUse? languages = null) : IAnswers
{
    readonly Language _language = (languages ?? LanguagesInUse.English).Shown;
    readonly Language _said = (languages ?? LanguagesInUse.English).Said;
    readonly CallForHelp _help = new();

    /// <inheritdoc/>
    public void Tell(string line) => output.WriteLine(_language.Recorded(line));

    /// <inheritdoc/>
    public void Reply(string line)
    {
        Tell(line);
        listener.Say(Message.Recorded(line.Trim()), breaksOff: false);
    }

    /// <inheritdoc/>
    public string? Next(Asked asked)
    {
        listener.Forget();
        SpokenTurn turn = new(asked, _said);
        Show($"{_language.Recorded(asked.Prompt)}:", turn);
        listener.Say(asked.Question, breaksOff: false);
        while (true)
        {
            Heard heard = listener.Next(turn.Expectation, turn.Known);
            ImmutableArray<string> help = heard is Heard.Said { Phrase: var said } ? CallForHelp.Answering(said) : _help.Answering(((Heard.Typed)heard).Line ?? "");
            if (!help.IsEmpty)
            {
                output.WriteLine($"  !! {string.Join(' ', help.Select(sentence => _language.Text(sentence)))}");
                listener.Warn([.. help.Select(Message.Recorded)]);
                continue;
            }

            if (heard is Heard.Typed typed)
            {
                listener.Say("", breaksOff: true);
                return typed.Line;
            }

            Phrase phrase = ((Heard.Said)heard).Phrase;
            output.WriteLine($"  heard: \"{phrase.Evidence.Words}\"{(phrase is Phrase.NotUnderstood ? $" {phrase.Evidence.Why}" : "")}");
            (turn, Message says, string? line) = turn.Take(phrase);
            if (line is not null)
            {
                return line;
            }

            Show($"  > {_language.Shown(says)}", turn);
            listener.Say(says, breaksOff: true);
        }
    }

    void Show(string line, SpokenTurn turn)
    {
        output.WriteLine(line);
        output.WriteLine($"  say: {string.Join(" | ", turn.Forms)}");
        output.Flush();
    }
}
