using System.Text.Json;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Which failures the bytes of a stranger's record explain. Whoever wrote it could write anything, so nothing that is read from it is a defect of the program.</summary>
public static class Damage
{
    /// <summary>Whether it can come from what a record holds.</summary>
    public static bool Explains(Exception error) => error is JsonException or InvalidOperationException or InvalidCastException or FormatException or ArithmeticException
        or ArgumentException or KeyNotFoundException or IndexOutOfRangeException or NullReferenceException or NotSupportedException or OutOfMemoryException;

    /// <summary>One sentence for a record that is not what it says it is.</summary>
    public static LogException In(string path, Exception error) => new($"{path} is damaged or no record of this program. Keep the file as it is and run verify on it.", error);
}
