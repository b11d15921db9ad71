using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Free speech: heard, read back, kept. What is typed stands as it was typed and is not read back.</summary>
sealed class Dictating(StartupState state, Now now)
{
    /// <summary>A reason of fewer letters tells nobody anything.</summary>
    const int FewestLetters = 3;

    public IReadOnlyList<StartupEvent> WhileDictating(Phrase phrase)
    {
        if (phrase is Phrase.Command { Word: CommandWord.Disregard })
        {
            return [new DictationCancelled(now)];
        }

        string text = phrase.Evidence.Words.Trim();
        return phrase is not Phrase.Dictation || text.Length == 0 ? []
            : state.Purpose != DictationPurpose.Note && text.Count(char.IsLetter) < FewestLetters ? [new CommandRefused(now, text, "That is no reason: say it in words.")]
            : phrase.Evidence.Channel == Channel.Keys ? Kept(text, phrase.Evidence)
            : [new DictationHeard(now, text, phrase.Evidence)];
    }

    public IReadOnlyList<StartupEvent> WhileReadingBack(Phrase phrase) => phrase switch
    {
        Phrase.Answer { Word: AnswerWord.No } => [new DictationAsked(now, state.Purpose)],
        Phrase.Command { Word: CommandWord.Disregard } => [new DictationCancelled(now)],
        Phrase.Answer => Kept(state.Heard!.Text.Shown, state.Heard.Evidence),
        Phrase.Command { Word: CommandWord.SayAgain or CommandWord.Help } command => [new QuestionAsked(now, command.Word)],
        Phrase.Command command => [new CommandRefused(now, Commands.Of(command.Word).Id, "First say confirm, or no to say it again.")],
        _ => [],
    };

    IReadOnlyList<StartupEvent> Kept(string text, Evidence evidence) => state.Purpose switch
    {
        DictationPurpose.Note => [new NoteTaken(now, state.Step.Id, text, evidence)],
        DictationPurpose.SkipReason => [new StepSkipped(now, state.Step.Id, text, evidence), .. new Route(state, now).Skip()],
        DictationPurpose.ResumeReason => new Halt(state, now).Resume(text),
        DictationPurpose.LimitReason =>
        [
            .. new Route(state, now).Unexcused().Select(subject => new ExceptionMade(now, state.Step.Id, DictationPurpose.LimitReason, subject, text, evidence)),
            .. new Route(state, now).Leave(evidence),
        ],
        DictationPurpose.AnswerReason =>
        [
            new ExceptionMade(now, state.Step.Id, DictationPurpose.AnswerReason, state.Step.Question!.Text, text, evidence),
            .. new Route(state, now).Leave(evidence),
        ],
        _ => new Ending(state, now).Because(text),
    };
}
