using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Interview;

/// <summary>Questions and answers. Whoever asks does not know whether they are typed or spoken: an answer is a line either way, and is checked in one place.</summary>
/// <param name="answers">Where the answers come from.</param>
sealed class Conversation(IAnswers answers)
{
    /// <summary>Tells something.</summary>
    public void Tell(string line) => answers.Tell(line);

    /// <summary>Tells something in answer to what was answered: why it is asked, or what is wrong.</summary>
    public void Reply(string line) => answers.Reply(line);

    /// <summary>Asks.</summary>
    /// <returns>The answer as a line without space around it; null where the answers are over.</returns>
    public string? Line(Asked asked)
    {
        while (answers.Next(asked) is { } line)
        {
            string answer = asked.LineOf(line.Replace('\t', ' '));
            if (VisibleText.IsVisible(answer))
            {
                return answer;
            }

            Reply("Some keys were no letters, perhaps an arrow: type it again.");
        }

        return null;
    }

    /// <summary>Asks for yes or no; the end of the answers is no.</summary>
    public bool Agrees(Message question)
    {
        while (true)
        {
            switch (Line(new Asked($"{question.Shown} (yes, no)", new AnswerForm.YesOrNo()) { Says = question })?.Trim().ToLowerInvariant())
            {
                case "yes" or "y":
                    return true;
                case "no" or "n" or null:
                    return false;
                default:
                    Reply("Type yes or no.");
                    break;
            }
        }
    }

    /// <summary>Asks for one of several things, or for a new one.</summary>
    /// <returns>The index; null for a new one.</returns>
    /// <exception cref="WrongUseException">The answers are over.</exception>
    public int? Choose(string what, IReadOnlyList<string> known)
    {
        for (int i = 0; i < known.Count; i++)
        {
            Tell(FormattableString.Invariant($"  {i + 1}  {known[i]}"));
        }

        while (known.Count > 0)
        {
            string line = (Line(Choice(what, known.Count)) ?? throw Over()).Trim();
            if (line.Length == 0)
            {
                return null;
            }

            if (int.TryParse(line, out int number) && number >= 1 && number <= known.Count)
            {
                return number - 1;
            }

            Reply(FormattableString.Invariant($"Type a number from 1 to {known.Count}, or nothing."));
        }

        return null;
    }

    static Asked Choice(string what, int count) =>
        new($"{what}: its number, or nothing for a new one", new AnswerForm.OneOf([.. Enumerable.Range(1, count).Select(number => new SpokenChoice($"{number}", $"number {number}"))])) { Says = $"{what}? Its number, or skip.", Skips = "" };

    /// <summary>The answers ended before everything was known.</summary>
    public static WrongUseException Over() => new("The answers ended before everything was asked. What was answered so far was not kept.");
}
