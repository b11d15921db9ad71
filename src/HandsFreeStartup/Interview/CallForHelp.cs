using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Interview;

/// <summary>A call for help among the answers. No record has begun and nothing is decided: whoever calls out is told what to do, and the call is never an answer.</summary>
sealed class CallForHelp
{
    const string Leave = "Touch no switch, leave the house with everybody in it, and call for help from outside.";
    const string MakeSafe = "Shut the burner and the gas off now, and step back.";
    const string NotRecorded = "Nothing is recorded yet.";
    const string OnceMore = "If these words are the answer, type them again.";

    static readonly Expectation FreeSpeech = new([], [], [], Dictation: true), Nothing = new([], [], []);

    string _told = "";

    /// <summary>What is to be done, sentence by sentence; empty where nobody calls.</summary>
    public static ImmutableArray<string> Answering(Phrase phrase) => phrase switch
    {
        Phrase.Command { Word: CommandWord.EmergencyStop, IsFire: false } => [MakeSafe, NotRecorded],
        Phrase.Command { IsSafetyPhrase: true } or Phrase.Reading { Field.Id: FieldId.RoomCo } => [Leave, NotRecorded],
        _ => [],
    };

    /// <summary>The same for a typed line. Who calls among other words may tell of a firm's name: typed again at once, that is an answer.</summary>
    public ImmutableArray<string> Answering(string line)
    {
        string words = line.Trim();
        bool isRepeated = words == _told;
        _told = "";
        if (Answering(PhraseText.Typed(words, FreeSpeech)) is { IsEmpty: false } call)
        {
            return call;
        }

        if (isRepeated || Answering(PhraseText.Typed(words, Nothing)) is not { IsEmpty: false } doubtful)
        {
            return [];
        }

        _told = words;
        return [.. doubtful, OnceMore];
    }
}
