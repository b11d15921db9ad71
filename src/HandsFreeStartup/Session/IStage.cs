namespace HandsFreeStartup.Session;

/// <summary>Stands between a session and its devices, where the furnace is none of this world.</summary>
public interface IStage
{
    /// <summary>The time of the session.</summary>
    TimeProvider Clock { get; }

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
