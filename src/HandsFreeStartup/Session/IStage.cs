using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Session;

/// <summary>Hands that are moved by words. Only a rehearsal has them; what they are told is no word to the procedure.</summary>
public interface IHands
{
    /// <summary>What may be said now, the words of the hands among it where they are free to move.</summary>
    Expectation With(Expectation expectation);

    /// <summary>Whether a phrase is meant for them.</summary>
    bool AreMeant(Phrase phrase);

    /// <summary>Does what a phrase asks of them.</summary>
    /// <returns>What was done, as one sentence.</returns>
    Message Do(Phrase phrase);
}

/// <summary>Stands between a session and its devices, where the furnace is none of this world.</summary>
public interface IStage : IHands
{
    /// <summary>The time of the session.</summary>
    TimeProvider Clock { get; }

    /// <summary>Ends when the stage has seen all that it was made for; the session ends with it. Never for a rehearsal.</summary>
    Task Over { get; }

    /// <summary>The record, watched.</summary>
    IEventLog Watch(IEventLog log);

    /// <summary>The display, with the instruments beside it.</summary>
    /// <param name="display">Shows.</param>
    /// <param name="asLines">Whether the instruments are told as lines, where something new is to be read; else they stand among the results.</param>
    IDisplay Beside(IDisplay display, bool asLines);

    /// <summary>Takes a line if it is meant for the hands.</summary>
    /// <returns>Whether it was.</returns>
    bool Take(string line);
}
