using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>What a technician can order by voice or key.</summary>
public enum CommandWord
{
    /// <summary>The action of the step is carried out.</summary>
    Done,
    /// <summary>Go on to the next step.</summary>
    Next,
    /// <summary>Return to the step before.</summary>
    GoBack,
    /// <summary>Say the last message again.</summary>
    /// <remarks>The record keeps the word that it had in the first versions; names in the log never change.</remarks>
    [JsonStringEnumMemberName("repeat-that")]
    SayAgain,
    /// <summary>Undo the last entry.</summary>
    Disregard,
    /// <summary>Leave the step undone; a spoken reason follows.</summary>
    SkipStep,
    /// <summary>A free dictation follows.</summary>
    Note,
    /// <summary>How long the running timer still takes.</summary>
    HowLong,
    /// <summary>Start, or restart, the timer of the step.</summary>
    StartTimer,
    /// <summary>Read the entries of the step back.</summary>
    ReadBack,
    /// <summary>Hear nothing but <see cref="GoAhead"/> and the safety phrases.</summary>
    StandBy,
    /// <summary>End a pause of listening.</summary>
    GoAhead,
    /// <summary>End what the tool is saying.</summary>
    StopTalking,
    /// <summary>Which things are open.</summary>
    WhatIsOpen,
    /// <summary>Say the whole prompt of the step, with its caution, its reason and the limits of what was measured.</summary>
    TellMore,
    /// <summary>Say how the last result or verdict comes about.</summary>
    Explain,
    /// <summary>Say of each step in short what to do and what to say.</summary>
    ShortPrompts,
    /// <summary>Say each prompt in full.</summary>
    FullPrompts,
    /// <summary>What can be said now.</summary>
    Help,
    /// <summary>End the start-up.</summary>
    Finish,
    /// <summary>Safety phrase: stop everything.</summary>
    EmergencyStop,
    /// <summary>Safety phrase: gas is smelled.</summary>
    GasSmell,
}

/// <summary>A command with the words and the key that give it.</summary>
/// <param name="Word">Which command.</param>
/// <param name="Id">Stable name in logs and manifests, equal to its first spoken form.</param>
/// <param name="Key">Name of the key on the console.</param>
/// <param name="Does">One line for the help.</param>
public sealed record Command(CommandWord Word, string Id, string Key, string Does)
{
    /// <summary>Whether it is legal in every phase and at every level of certainty that is not silence, noise or music.</summary>
    public bool IsSafetyPhrase => Word is CommandWord.EmergencyStop or CommandWord.GasSmell;
}

/// <summary>All commands. A new command is one entry here.</summary>
/// <remarks>
/// Where international radiotelephony has a word it is used, because it was chosen to be understood in noise: say again, disregard, stand by, go ahead, read back (ICAO Doc 9432,
/// Manual of Radiotelephony, section 2.6; Annex 10 volume II, 5.2.1.5.8). The others are plain English.
/// </remarks>
public static class Commands
{
    /// <summary>Every command, in the order of the help.</summary>
    public static ImmutableArray<Command> All { get; } =
    [
        new(CommandWord.Done, "done", "F2", "the work of this step is done"),
        new(CommandWord.Next, "next", "F3", "go on"),
        new(CommandWord.GoBack, "go back", "F4", "return to the step before"),
        new(CommandWord.SayAgain, "say again", "F5", "say the last message again"),
        new(CommandWord.Disregard, "disregard", "F6", "undo the last entry"),
        new(CommandWord.SkipStep, "skip step", "Ctrl+K", "leave this step undone; a reason is asked"),
        new(CommandWord.Note, "note", "Ctrl+N", "dictate a note"),
        new(CommandWord.HowLong, "how long", "Ctrl+L", "time left on the timer"),
        new(CommandWord.StartTimer, "start timer", "Ctrl+T", "start or restart the timer"),
        new(CommandWord.ReadBack, "read back", "Ctrl+R", "read the entries of this step back"),
        new(CommandWord.StandBy, "stand by", "F7", "hear only 'go ahead' and the safety phrases"),
        new(CommandWord.GoAhead, "go ahead", "F8", "end the pause"),
        new(CommandWord.StopTalking, "stop talking", "F10", "end what is being said; it stays on the screen"),
        new(CommandWord.WhatIsOpen, "what is open", "Ctrl+O", "list what is still open"),
        new(CommandWord.TellMore, "tell me more", "Ctrl+W", "the whole prompt, with caution, reason and limits"),
        new(CommandWord.Explain, "explain that", "Ctrl+E", "how the last result comes about: formula, numbers, doubt, limit"),
        new(CommandWord.ShortPrompts, "short prompts", "Ctrl+P", "say in short what to do; the rest is on the screen"),
        new(CommandWord.FullPrompts, "full prompts", "Ctrl+F", "say every prompt in full"),
        new(CommandWord.Help, "help", "F1", "what can be said now"),
        new(CommandWord.Finish, "finish", "F9", "end the start-up"),
        new(CommandWord.EmergencyStop, "emergency stop", "F12", "stop everything"),
        new(CommandWord.GasSmell, "gas smell", "F11", "gas is smelled: stop and leave"),
    ];

    /// <summary>The entry of <paramref name="word"/>.</summary>
    public static Command Of(CommandWord word) => All.First(command => command.Word == word);

    /// <summary>The command of that id, or null.</summary>
    public static Command? Find(string id) => All.FirstOrDefault(command => command.Id == id);
}

/// <summary>An answer, legal only while the tool has asked something.</summary>
public enum AnswerWord
{
    /// <summary>What was read back is right.</summary>
    Confirm,
    /// <summary>Yes.</summary>
    Yes,
    /// <summary>No.</summary>
    No,
}

/// <summary>An answer with the words that give it.</summary>
/// <param name="Word">Which answer.</param>
/// <param name="Ways">The ways to say it; the first is its stable name in manifests.</param>
public sealed record Answer(AnswerWord Word, ImmutableArray<string> Ways);

/// <summary>All answers. Another way to give one is one word here.</summary>
/// <remarks>"Affirm" and "negative" are the words of radiotelephony (ICAO Doc 9432, section 2.6); "affirmative" is that of the FAA's Pilot/Controller Glossary.</remarks>
public static class Answers
{
    /// <summary>Every answer.</summary>
    public static ImmutableArray<Answer> All { get; } =
    [
        new(AnswerWord.Confirm, ["confirm"]),
        new(AnswerWord.Yes, ["yes", "affirm", "affirmative"]),
        new(AnswerWord.No, ["no", "negative"]),
    ];

    /// <summary>The entry of <paramref name="word"/>.</summary>
    public static Answer Of(AnswerWord word) => All.First(answer => answer.Word == word);

    /// <summary>The answer of that stable name, or null.</summary>
    public static Answer? Find(string id) => All.FirstOrDefault(answer => answer.Ways[0] == id);
}
