using System.CommandLine;
using HandsFreeStartup.Compute;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Forget;
using HandsFreeStartup.Publish;
using HandsFreeStartup.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Sound;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Verify;

namespace HandsFreeStartup;

/// <summary>The program from the outside: its commands, its messages and its exit codes.</summary>
/// <remarks>0 done, 1 found something, 2 wrong use or file, 3 internal failure. Data goes to standard output, messages to standard error.</remarks>
public static class CommandLine
{
    /// <summary>A word that begins with @ is a word, and no file of further words: names and remarks begin with it, and such a file can name itself.</summary>
    static readonly ParserConfiguration Words = new() { ResponseFileTokenReplacer = null };
    static readonly Lock Parsing = new();

    /// <summary>Every command under its root. A new command is one entry here.</summary>
    public static RootCommand Build()
    {
        RootCommand root = Commands();
        root.Options.OfType<VersionOption>().Single().Action = new TellVersion();
        return root;
    }

    sealed class TellVersion : System.CommandLine.Invocation.SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parsed)
        {
            foreach (string line in ProgramVersion.Lines())
            {
                parsed.InvocationConfiguration.Output.WriteLine(line);
            }

            return ExitCode.Done;
        }
    }

    static RootCommand Commands() => new(
        """
        Leads a technician hands-free through the start-up of a gas furnace: says each step, hears the readings, keeps the record.
        It helps you forget nothing; local codes, the maker's instructions and licensed practice decide.


        Examples:
          start --demo                                   a whole start-up from recordings
          tour                                           try the words, without furnace and record
          new job                                        questions, then the start-up
          start --appliance F.yaml --site S.yaml --keys  typed instead of spoken
          review FOLDER                                  what the lead must look at

        Exit codes: 0 done, 1 something must be looked at, 2 wrong use or file, 3 failure of the program.
        """)
    {
        StartCommand.Build(),
        NewJob.NewCommand.Build(),
        Tour.TourCommand.Build(),
        Rehearse.RehearseCommand.Build(),
        ComputeCommand.Build(),
        Hear.HearCommand.Build(),
        ReviewCommand.Build(),
        VerifyCommand.Build(),
        Copies.CopiesCommand.Build(),
        ForgetCommand.Build(),
        PublishCommand.Build(),
        FleetCommand.Build(),
        Checklist(),
        SoundCommand.Build(),
        CompletionCommand.Build(),
        DataFolder.Option,
    };

    static Command Checklist()
    {
        Command checklist = ChecklistCommand.ChecklistCommand.Build();
        checklist.Add(NewAppliance.NewApplianceCommand.Build());
        return checklist;
    }

    /// <summary>Runs one command.</summary>
    /// <param name="arguments">As given by the shell.</param>
    /// <param name="output">For data.</param>
    /// <param name="error">For messages.</param>
    /// <returns>The exit code.</returns>
    public static async Task<int> Run(string[] arguments, TextWriter output, TextWriter error)
    {
        (output, error) = (new VisibleWriter(output), new VisibleWriter(error));
        ParseResult parsed = Parsed(arguments);
        if (parsed.Errors.Count > 0)
        {
            error.WriteLine($"{OneLine(parsed.Errors[0].Message)}{Meant(parsed)} Add --help to see what can be given.");
            return ExitCode.WrongUse;
        }

        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration
            {
                Output = output,
                Error = error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            });
        }
        catch (Exception e) when (Sentence(e) is { } sentence)
        {
            error.Write($"{TroubleInLanguage.Shown(parsed, sentence)}\n");
            return ExitCode.WrongUse;
        }
        catch (Exception e)
        {
            error.WriteLine($"Something failed inside the program: {OneLine(e.Message)} {KeepDetails(parsed, e)}");
            return ExitCode.InternalFailure;
        }
    }

    /// <summary>The options are the same objects in every tree of commands: two that are built and parsed at once find one another's halfway.</summary>
    static ParseResult Parsed(string[] arguments)
    {
        lock (Parsing)
        {
            return Build().Parse(arguments, Words);
        }
    }

    /// <summary>What a person can do about it, place and remedy included; null where it is a defect of the program.</summary>
    static string? Sentence(Exception failure) => failure switch
    {
        WrongUseException or ChecklistFileException or SoundFileException or SoundDeviceException or LogException or ModelFileException or OutputGoneException or FleetException => failure.Message,
        OperationCanceledException => "It was stopped before its end. Run it again.",
        ArgumentException and not ArgumentOutOfRangeException when FileTrouble.Is(failure) => FileTrouble.Sentence(failure, "A file that was named cannot be used", "look at the names that were given"),
        _ when FileTrouble.Is(failure) => FileTrouble.Sentence(failure, OneLine(failure.Message).TrimEnd('.'), "look at the place and its disk, and try again"),
        _ => null,
    };

    static string KeepDetails(ParseResult parsed, Exception failure)
    {
        try
        {
            return DataFolder.Of(parsed).KeepDetails(failure);
        }
        catch (WrongUseException)
        {
            return "The details are lost, because the data folder cannot be used.";
        }
    }

    /// <summary>What a word that is not known may have been meant to be.</summary>
    static string Meant(ParseResult parsed)
    {
        IEnumerable<string> known = parsed.CommandResult.Command.Subcommands.Select(command => command.Name)
            .Concat(parsed.CommandResult.Command.Options.Select(option => option.Name)).Append(DataFolder.Option.Name);
        return parsed.UnmatchedTokens.Select(word => Nearest.To(word, known)).OfType<string>().FirstOrDefault() is { } near ? $" Did you mean {near}?" : "";
    }

    static string OneLine(string message)
    {
        string line = string.Join(' ', message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.EndsWith('.') ? line : $"{line}.";
    }
}
