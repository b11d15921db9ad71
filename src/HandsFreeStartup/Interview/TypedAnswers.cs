using HandsFreeStartup.Running;

namespace HandsFreeStartup.Interview;

/// <summary>Answers that are typed, line by line.</summary>
/// <param name="input">What is typed.</param>
/// <param name="output">What is asked.</param>
sealed class TypedAnswers(TypedLines input, TextWriter output) : IAnswers
{
    /// <inheritdoc/>
    public void Tell(string line) => output.WriteLine(line);

    /// <inheritdoc/>
    public void Reply(string line) => output.WriteLine(line);

    /// <inheritdoc/>
    public string? Next(Asked asked)
    {
        output.Write($"{asked.Prompt}: ");
        output.Flush();
        string? line = input.Next();
        output.Write(line is null || Console.IsInputRedirected ? "\n" : "");
        return line;
    }
}
