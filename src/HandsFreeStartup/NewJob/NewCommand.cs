using System.CommandLine;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.NewJob;

/// <summary>The command <c>new</c>: asks for what a job needs, keeps the answers for the next one, and starts.</summary>
static class NewCommand
{
    static readonly Option<string?> Photo = new("--photo") { Description = "A photo of the rating plate; it is asked for where it is left out.", HelpName = "FILE" };

    /// <summary>The command with its own.</summary>
    public static Command Build()
    {
        Command job = new("job", "Answer a few questions and start: instruments (once), place, furnace. Earlier answers are offered.") { Photo };
        StartCommand.AddTo(job);
        job.SetAction((parsed, _) => Run(parsed));
        Command instruments = new("instruments", "Your own set of instruments, with dates of calibration and uncertainties.");
        instruments.SetAction(parsed =>
        {
            Conversation conversation = new(new TypedAnswers(StandardStreams.Input, parsed.InvocationConfiguration.Output, OpenJob.LanguageOf(new StartOptions { Data = DataFolder.Of(parsed) })));
            JobQuestions.AskInstruments(conversation, new KeptFiles(DataFolder.Of(parsed)), TimeProvider.System);
            return ExitCode.Done;
        });
        return new Command("new", "What a job needs, asked question by question and kept for the next one.") { job, instruments };
    }

    /// <summary>The devices of the questions are given back before those of the start-up are opened.</summary>
    static async Task<int> Run(ParseResult parsed)
    {
        StartOptions options = StartCommand.Read(parsed);
        (TextWriter output, TextWriter error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
        LanguagesInUse languages = await LanguagesInUse.Of(OpenJob.LanguageOf(options), options.Sound.Mute || options.Sound.Keys, TimeProvider.System, error.WriteLine);
        StartOptions? asked;
        await using (MicrophoneListener? listener = MicrophoneListener.Open(options, output, error.WriteLine, languages.Said))
        {
            IAnswers answers = listener is null ? new TypedAnswers(StandardStreams.Input, output, languages.Shown) : new SpokenAnswers(listener, output, languages);
            asked = new JobQuestions(new Conversation(answers), new KeptFiles(DataFolder.Of(parsed)), DataFolder.Of(parsed), TimeProvider.System).Ask(options, parsed.GetValue(Photo));
        }

        return asked is null ? ExitCode.Done : await new Composition(asked, output, error, TimeProvider.System).Run();
    }
}
