using System.CommandLine;

namespace HandsFreeStartup.Running;

/// <summary>The command <c>completion</c>: a script with which the shell completes commands and options; it asks the program itself.</summary>
static class CompletionCommand
{
    const string Bash = """
        # Put this line into ~/.bashrc: source <(HandsFreeStartup completion bash)
        _handsfree_startup() {
            local line="${COMP_LINE#* }"
            COMPREPLY=($("${COMP_WORDS[0]}" "[suggest:${#line}]" "$line" 2>/dev/null | grep -- "^${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -F _handsfree_startup -o default HandsFreeStartup handsfree-startup
        """;

    static readonly Argument<string> Shell = new("SHELL") { Description = "bash." };

    /// <summary>The command.</summary>
    public static Command Build()
    {
        Command command = new("completion", "A script with which the shell completes commands and options.") { Shell };
        Shell.AcceptOnlyFromAmong("bash");
        command.SetAction(parsed =>
        {
            // Line by line: the program's output marks whatever else would break a line.
            foreach (string line in Bash.Split('\n'))
            {
                parsed.InvocationConfiguration.Output.WriteLine(line);
            }
        });
        return command;
    }
}
