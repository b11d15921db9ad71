namespace HandsFreeStartup.Procedure.Events;

/// <summary>Where carbon monoxide was measured.</summary>
public enum MonoxidePlace
{
    /// <summary>In a room, ppm as read.</summary>
    Room,
    /// <summary>In the flue, ppm air-free.</summary>
    Flue,
}

/// <summary>What a concentration of carbon monoxide asks for.</summary>
public enum MonoxideAction
{
    /// <summary>Carry on.</summary>
    CarryOn,
    /// <summary>Look for the source before continuing.</summary>
    FindSource,
    /// <summary>Shut the furnace off.</summary>
    ShutOff,
    /// <summary>Everybody leaves.</summary>
    Evacuate,
}
