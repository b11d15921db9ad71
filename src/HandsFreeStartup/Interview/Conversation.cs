using HandsFreeStartup.Running;

namespace HandsFreeStartup.NewAppliance;

/// <summary>Questions and answers, line by line.</summary>
/// <param name="input">What is typed.</param>
/// <param name="output">What is asked.</param>
sealed class Conversation(TypedLines input, TextWriter output)
{
    /// <summary>Tells something.</summary>
    public void Tell(string line) => output.WriteLine(line);

    /// <summary>Asks.</summary>
    /// <returns>The answer as typed; null where the answers are over.</returns>
    public string? Line(string prompt)
    {
        output.Write($"{prompt}: ");
        output.Flush();
        string? line = input.Next();
        output.Write(line is null || Console.IsInputRedirected ? "\n" : "");
        return line;
    }

    /// <summary>Asks for yes or no; the end of the answers is no.</summary>
    public bool Agrees(string question)
    {
        while (true)
        {
            switch (Line($"{question} (yes, no)")?.Trim().ToLowerInvariant())
            {
                case "yes" or "y":
                    return true;
                case "no" or "n" or null:
                    return false;
                default:
                    output.WriteLine("Type yes or no.");
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
            string line = (Line($"{what}: its number, or nothing for a new one") ?? throw Over()).Trim();
            if (line.Length == 0)
            {
                return null;
            }

            if (int.TryParse(line, out int number) && number >= 1 && number <= known.Count)
            {
                return number - 1;
            }

            Tell(FormattableString.Invariant($"Type a number from 1 to {known.Count}, or nothing."));
        }

        return null;
    }

    /// <summary>The answers ended before everything was known.</summary>
    public static WrongUseException Over() => new("The answers ended before everything was asked. What was answered so far was not kept.");
}
