using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Interview;

/// <summary>Answers that are typed, line by line.</summary>
/// <param name="input">What is typed.</param>
/// <param name="output">What is asked.</param>
/// <param name="language">In which it is asked; null for English. What is answered and kept is the same in each.</param>
sealed class TypedAnswers(TypedLines input, TextWriter output, Language? language = null) : IAnswers
{
    readonly Language _language = language ?? Language.English;
    readonly CallForHelp _help = new();

    /// <inheritdoc/>
    public void Tell(string line) => output.WriteLine(_language.Recorded(line));

    /// <inheritdoc/>
    public void Reply(string line) => Tell(line);

    /// <inheritdoc/>
    public string? Next(Asked asked)
    {
        while (true)
        {
            output.Write($"{_language.Recorded(asked.Prompt)}: ");
            output.Flush();
            string? line = input.Next();
            output.Write(line is null || Console.IsInputRedirected ? "\n" : "");
            if (line is null || _help.Answering(line) is not { IsEmpty: false } told)
            {
                return line;
            }

            output.WriteLine($"  !! {string.Join(' ', told.Select(sentence => _language.Text(sentence)))}");
        }
    }
}
