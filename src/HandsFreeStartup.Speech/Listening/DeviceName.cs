namespace HandsFreeStartup.Speech.Listening;

/// <summary>A microphone or speaker cannot be used; the message is one sentence with the remedy.</summary>
/// <param name="message">The sentence.</param>
public sealed class SoundDeviceException(string message) : Exception(message);

/// <summary>Which device is meant by a name.</summary>
static class DeviceName
{
    /// <summary>The place of the device in the list: the one of that name, else the only one whose name holds it. Capital letters do not matter.</summary>
    /// <param name="wanted">What was asked for.</param>
    /// <param name="names">Of all devices.</param>
    /// <param name="kind">What a device is called: "microphone".</param>
    /// <exception cref="SoundDeviceException">There is none, or more than one; the sentence names those that are there.</exception>
    public static int Place(string wanted, IReadOnlyList<string> names, string kind)
    {
        wanted = wanted.Trim();
        int[] meant = [.. Where(name => name.Equals(wanted, StringComparison.Ordinal)), .. Where(name => name.Equals(wanted, StringComparison.OrdinalIgnoreCase))];
        int[] near = meant.Length > 0 || wanted.Length == 0 ? meant : [.. Where(name => name.Contains(wanted, StringComparison.OrdinalIgnoreCase))];
        string there = string.Join(", ", names.Select(name => $"\"{name}\""));
        return near switch
        {
            [var only] => only,
            [var first, ..] when meant.Length > 0 => first,
            [] when names.Count == 0 => throw new SoundDeviceException($"There is no {kind}: plug one in and try again."),
            [] => throw new SoundDeviceException($"There is no {kind} \"{wanted}\": name one of {there}."),
            _ => throw new SoundDeviceException($"More than one {kind} is called \"{wanted}\": name one of {there}."),
        };

        IEnumerable<int> Where(Func<string, bool> isIt) => Enumerable.Range(0, names.Count).Where(i => isIt(names[i]));
    }
}
